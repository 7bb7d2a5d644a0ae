#include "app/handout/handout_place.h"

namespace steelyard::app {

HandoutPlace::HandoutPlace(Surroundings& around) {
    screen_.tools = around.tools;
    screen_.places.own = own_blueprint_folder();
    screen_.places.shipped = around.library.data_folder() / "assets" / "blueprints";
    stock_shelf(screen_);
    make_first_choices(screen_);
    follow_units(around.units);
}

void HandoutPlace::follow_units(setup::UnitSystem units) {
    if (units == followed_)
        return;
    followed_ = units;
    screen_.choices.us_units = units == setup::UnitSystem::us;
}

/// Whoever writes a blueprint goes back and forth between its file and this place.
void HandoutPlace::enter(Surroundings& /*around*/) {
    stock_shelf(screen_);
}

void HandoutPlace::open(const OpenedFile& file, Surroundings& /*around*/) {
    open_blueprint(screen_, std::get<BlueprintFile>(file).path);
}

PlaceFrame HandoutPlace::run(const PlaceInput& input) {
    follow_units(input.around.units);
    run_handout(input.style, input.layout, input.frame, input.around.library.bank(), screen_);
    return {};
}

} // namespace steelyard::app
