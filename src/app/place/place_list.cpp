#include "app/place/place_list.h"

#include "app/place/bench_place.h"
#include "app/place/body_place.h"

#include <GLFW/glfw3.h>

namespace steelyard::app {

namespace {

template <typename Made> std::unique_ptr<Place> make(Surroundings& around) {
    return std::make_unique<Made>(around);
}

constexpr PlaceEntry kList[] = {
    {PlaceName::bench, "Bench", GLFW_KEY_F2, make<BenchPlace>},
    {PlaceName::body, "Body", GLFW_KEY_F3, make<BodyPlace>},
};

} // namespace

std::span<const PlaceEntry> place_list() {
    return kList;
}

PlaceName place_of(const setup::Setup& setup) {
    return std::holds_alternative<setup::LeverSetup>(setup) ? PlaceName::bench : PlaceName::body;
}

} // namespace steelyard::app
