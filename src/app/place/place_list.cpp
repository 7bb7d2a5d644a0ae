#include "app/place/place_list.h"

#include "app/place/bench_place.h"
#include "app/place/body_place.h"
#include "app/place/handout_place.h"
#include "app/place/practice_place.h"
#include "app/place/side_by_side_place.h"
#include "app/place/start_place.h"
#include "app/workshop/workshop_place.h"

#include <algorithm>
#include <cassert>

namespace steelyard::app {

namespace {

template <typename Made> std::unique_ptr<Place> make(Surroundings& around) {
    return std::make_unique<Made>(around);
}

constexpr PlaceEntry kList[] = {
    {PlaceName::start, "Start", make<StartPlace>},
    {PlaceName::bench, "Bench", make<BenchPlace>},
    {PlaceName::body, "Body", make<BodyPlace>},
    {PlaceName::side_by_side, "Side by side", make<SideBySidePlace>},
    {PlaceName::practice, "Practice", make<PracticePlace>},
    {PlaceName::workshop, "Workshop", make<WorkshopPlace>},
    {PlaceName::handout, "Handout", make<HandoutPlace>},
};

} // namespace

std::span<const PlaceEntry> place_list() {
    return kList;
}

const PlaceEntry& entry_of(PlaceName name) {
    const auto* found =
        std::find_if(std::begin(kList), std::end(kList),
                     [name](const PlaceEntry& entry) { return entry.name == name; });
    assert(found != std::end(kList));
    return *found;
}

PlaceName place_named(std::string_view word) {
    const auto* found =
        std::find_if(std::begin(kList), std::end(kList),
                     [word](const PlaceEntry& entry) { return entry.word == word; });
    return found != std::end(kList) ? found->name : PlaceName::start;
}

PlaceName place_of(const setup::Setup& setup) {
    return std::holds_alternative<setup::LeverSetup>(setup) ? PlaceName::bench : PlaceName::body;
}

} // namespace steelyard::app
