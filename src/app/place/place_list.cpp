#include "app/place/place_list.h"

#include "app/bench/bench_place.h"
#include "app/body/body_place.h"
#include "app/handout/handout_place.h"
#include "app/platform/key.h"
#include "app/practice/practice_place.h"
#include "app/side_by_side/side_by_side_place.h"
#include "app/start/start_place.h"
#include "app/workshop/workshop_place.h"

#include <algorithm>
#include <array>
#include <cassert>

namespace steelyard::app {

namespace {

template <typename Made> std::unique_ptr<Place> make(Surroundings& around) {
    return std::make_unique<Made>(around);
}

template <typename Kind> bool is_setup_of(const OpenedFile& file) {
    const auto* setup = std::get_if<setup::Setup>(&file);
    return setup != nullptr && std::holds_alternative<Kind>(*setup);
}
template <typename Kind> bool is(const OpenedFile& file) {
    return std::holds_alternative<Kind>(file);
}

constexpr std::array<PlaceEntry, kPlaces> kList{{
    {PlaceName::start, "Start", make<StartPlace>},
    {PlaceName::bench, "Bench", make<BenchPlace>, key::kB, is_setup_of<setup::LeverSetup>},
    {PlaceName::body, "Body", make<BodyPlace>, key::kB, is_setup_of<setup::BodySetup>},
    {PlaceName::side_by_side, "Side by side", make<SideBySidePlace>},
    {PlaceName::practice, "Study", make<PracticePlace>, 0, is<RecordFile>},
    {PlaceName::workshop, "Workshop", make<WorkshopPlace>, key::kW, is<LessonFile>},
    {PlaceName::handout, "Handout", make<HandoutPlace>, 0, is<BlueprintFile>},
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

PlaceName place_for(const OpenedFile& file) {
    const auto* found = std::find_if(kList.begin(), kList.end(), [&](const PlaceEntry& entry) {
        return entry.opens != nullptr && entry.opens(file);
    });
    assert(found != kList.end()); // every kind of file has its place
    return found->name;
}

std::optional<PlaceName> place_at_key(int key, PlaceName present) {
    if (key >= key::kF2 && key < key::kF2 + static_cast<int>(kPlaces))
        return kList[static_cast<std::size_t>(key - key::kF2)].name;
    for (std::size_t step = 1; step <= kPlaces; ++step) {
        const PlaceEntry& entry = kList[(index_of(present) + step) % kPlaces];
        if (entry.letter == key && key != 0)
            return entry.name;
    }
    return std::nullopt;
}

} // namespace steelyard::app
