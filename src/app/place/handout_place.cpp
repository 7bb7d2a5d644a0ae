#include "app/place/handout_place.h"

namespace steelyard::app {

HandoutPlace::HandoutPlace(Surroundings& around) {
    open_handout(screen_, around.library.data_folder() / "assets" / "blueprints");
}

PlaceFrame HandoutPlace::run(const PlaceInput& input) {
    run_handout(input.style, input.layout, input.frame, input.around.library.bank(), screen_);
    return {};
}

} // namespace steelyard::app
