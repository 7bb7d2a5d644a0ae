#include "app/place/place_list.h"

#include "app/bench/bench_place.h"
#include "app/body/body_place.h"
#include "app/handout/handout_place.h"
#include "app/practice/practice_place.h"
#include "app/side_by_side/side_by_side_place.h"
#include "app/start/start_place.h"
#include "app/workshop/workshop_place.h"

#include <algorithm>
#include <array>

namespace steelyard::app {

namespace {

template <typename Made> std::unique_ptr<Place> make(Surroundings& around) {
    return std::make_unique<Made>(around);
}

constexpr std::array<PlaceEntry, kPlaces> kList{{
    {PlaceName::start, "Start", make<StartPlace>},
    {PlaceName::bench, "Bench", make<BenchPlace>},
    {PlaceName::body, "Body", make<BodyPlace>},
    {PlaceName::side_by_side, "Side by side", make<SideBySidePlace>},
    {PlaceName::practice, "Practice", make<PracticePlace>},
    {PlaceName::workshop, "Workshop", make<WorkshopPlace>},
    {PlaceName::handout, "Handout", make<HandoutPlace>},
}};

constexpr std::size_t index_of(PlaceName name) {
    return static_cast<std::size_t>(name);
}

/// Every place has its line, at its turn.
constexpr bool is_in_order() {
    for (std::size_t i = 0; i < kList.size(); ++i)
        if (index_of(kList[i].name) != i)
            return false;
    return true;
}
static_assert(is_in_order());

} // namespace

std::span<const PlaceEntry> place_list() {
    return kList;
}

const PlaceEntry& entry_of(PlaceName name) {
    return kList[index_of(name)];
}

PlaceName place_named(std::string_view word) {
    const auto* found = std::find_if(
        kList.begin(), kList.end(), [word](const PlaceEntry& entry) { return entry.word == word; });
    return found != kList.end() ? found->name : PlaceName::start;
}

PlaceName place_of(const setup::Setup& setup) {
    return std::holds_alternative<setup::LeverSetup>(setup) ? PlaceName::bench : PlaceName::body;
}

} // namespace steelyard::app
