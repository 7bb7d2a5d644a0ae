#include "app/place/start_place.h"

#include "app/place/place_list.h"
#include "app/shelf/shelf_cards.h"

#include <algorithm>

namespace steelyard::app {

namespace {

/// Ways through the doors, in their order.
struct DoorWay {
    std::size_t door;
    const char* word;
    PlaceName place;
    const char* part;
};
constexpr DoorWay kDoorWays[] = {
    {0, "Bench", PlaceName::bench, ""},
    {0, "Body", PlaceName::body, ""},
    {0, "Side by side", PlaceName::side_by_side, ""},
    {1, "Quick quiz", PlaceName::practice, "quick"},
    {1, "Practice", PlaceName::practice, "session"},
    {1, "Mock exam", PlaceName::practice, "exam"},
    {1, "Progress", PlaceName::practice, "progress"},
    {2, "Workshop", PlaceName::workshop, ""},
    {2, "Handout", PlaceName::handout, ""},
};

struct DoorWords {
    const char* title;
    const char* sentence;
    const char* pictured; ///< name of the setup on the door
};
constexpr DoorWords kDoors[] = {
    {"Try", "Drag axis, effort and load, a hand or a pulley; every number follows.",
     "Side raise, arms straight"},
    {"Practise", "Questions that know why an answer is wrong. Five of them take three minutes.",
     "Wheelbarrow"},
    {"Teach", "Let a room predict, then reveal. Hand out worksheets with their keys.", "Seesaw"},
};

bool is_there(PlaceName name) {
    const auto places = place_list();
    return std::any_of(places.begin(), places.end(),
                       [name](const PlaceEntry& entry) { return entry.name == name; });
}

/// The picture of a shipped setup, a lever or an exercise; an empty sheet where there is none.
scene::Drawing picture_of(Library& library, const std::string& name, const scene::Point& size_px) {
    const auto is_it = [&](const auto& setup) { return setup.head.name == name; };
    Shelf only;
    const std::vector<setup::LeverSetup>& levers = library.levers().levers;
    std::copy_if(levers.begin(), levers.end(), std::back_inserter(only.levers), is_it);
    const std::vector<setup::BodySetup>& bodies = library.exercises().bodies;
    std::copy_if(bodies.begin(), bodies.end(), std::back_inserter(only.bodies), is_it);
    if (!only.levers.empty())
        return lever_cards(only, size_px).front().picture;
    if (!only.bodies.empty())
        return body_cards(only, size_px).front().picture;
    return {};
}

} // namespace

void StartPlace::enter(Surroundings& around) {
    ways_.clear();
    for (const DoorWay& way : kDoorWays)
        ways_.push_back({way.word, GoTo{way.place, way.part}});
    if (const auto body = around.saved.load_body())
        ways_.push_back({"Go on: " + body->setup.head.name, GoTo{PlaceName::body, ""}});
    if (const auto bench = around.saved.load_bench())
        ways_.push_back({"Go on: " + bench->setup.head.name, GoTo{PlaceName::bench, ""}});
    ways_.push_back({"Show me around", LookAround{}});
}

/// The ways of a stretch of ways_ that lead somewhere.
std::vector<StartWay> StartPlace::ways(std::size_t first, std::size_t count) const {
    std::vector<StartWay> found;
    for (std::size_t i = first; i < first + count; ++i) {
        const auto* go = std::get_if<GoTo>(&ways_[i].errand);
        if (go == nullptr || is_there(go->place))
            found.push_back({ways_[i].word, i});
    }
    return found;
}

StartContent StartPlace::content(Library& library) const {
    StartContent content;
    std::size_t first = 0;
    for (std::size_t i = 0; i < std::size(kDoors); ++i) {
        const auto count = static_cast<std::size_t>(
            std::count_if(std::begin(kDoorWays), std::end(kDoorWays),
                          [i](const DoorWay& way) { return way.door == i; }));
        StartDoor door{
            kDoors[i].title, kDoors[i].sentence, ways(first, count),
            [&library, name = std::string(kDoors[i].pictured)](const scene::Point& size_px) {
                return picture_of(library, name, size_px);
            }};
        if (!door.ways.empty())
            content.doors.push_back(std::move(door));
        first += count;
    }
    content.below = ways(first, ways_.size() - first);
    return content;
}

PlaceFrame StartPlace::run(const PlaceInput& input) {
    const StartContent shown = content(input.around.library);
    StartOutcome outcome =
        run_start(input.style, input.window_px, *input.frame.keys, shown, screen_);
    PlaceFrame frame;
    frame.pictures = std::move(outcome.pictures);
    if (outcome.taken)
        frame.errand = ways_[*outcome.taken].errand;
    return frame;
}

} // namespace steelyard::app
