#include "app/start/start_place.h"

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
     "Lateral raise, arms straight"},
    {"Study", "Questions that know why an answer is wrong. Five of them take three minutes.",
     "Wheelbarrow"},
    {"Teach", "Let a room predict, then reveal. Hand out worksheets with their keys.", "Seesaw"},
};

/// The picture of a shipped setup, a lever or an exercise; an empty sheet where there is none.
scene::Drawing picture_of(Library& library, const std::string& name, const scene::Point& size_px) {
    const auto is_it = [&](const auto& one) { return one.setup.head.name == name; };
    const auto picture_in = [&](const auto& shelf) -> std::optional<scene::Drawing> {
        auto only = shelf;
        only.setups.clear();
        std::copy_if(shelf.setups.begin(), shelf.setups.end(), std::back_inserter(only.setups),
                     is_it);
        if (only.setups.empty())
            return std::nullopt;
        return cards_of(only, size_px).front().picture;
    };
    if (auto picture = picture_in(library.levers()))
        return *std::move(picture);
    return picture_in(library.exercises()).value_or(scene::Drawing{});
}

} // namespace

void StartPlace::enter(Surroundings& around) {
    wishes_.clear();
    content_ = {};
    for (const DoorWords& door : kDoors)
        content_.doors.push_back({door.title,
                                  door.sentence,
                                  {},
                                  [&library = around.library, door](const scene::Point& size_px) {
                                      return picture_of(library, door.pictured, size_px);
                                  }});
    for (const DoorWay& way : kDoorWays)
        add_way(content_.doors[way.door].ways, way.word, GoTo{way.place, way.part});
    if (const auto body = around.saved.load_body())
        add_way(content_.below, "Go on: " + body->setup.head.name, GoTo{PlaceName::body, ""});
    if (const auto bench = around.saved.load_bench())
        add_way(content_.below, "Go on: " + bench->setup.head.name, GoTo{PlaceName::bench, ""});
    add_way(content_.below, "Show me around", LookAround{});
}

void StartPlace::add_way(std::vector<StartWay>& ways, std::string word, PlaceWish wish) {
    ways.push_back({std::move(word), wishes_.size()});
    wishes_.push_back(std::move(wish));
}

PlaceFrame StartPlace::run(const PlaceInput& input) {
    StartFrame result =
        run_start(input.style, input.window_px, *input.frame.keys, content_, screen_);
    PlaceFrame frame;
    frame.pictures = std::move(result.pictures);
    if (result.taken)
        frame.wish = wishes_[*result.taken];
    return frame;
}

} // namespace steelyard::app
