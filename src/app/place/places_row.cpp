#include "app/place/places_row.h"

#include "app/place/place_list.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"

#include <algorithm>
#include <array>
#include <span>

namespace steelyard::app {

namespace {

struct Entry {
    const char* word = "";
    RowPress press;
    bool enabled = true;
    bool in_force = false;
};

/// What stands beside each other in a row, as many as there ever are.
class Entries {
public:
    void add(const Entry& entry) { all_[count_++] = entry; }
    std::span<const Entry> all() const { return {all_.data(), count_}; }

private:
    std::array<Entry, 8> all_{};
    std::size_t count_ = 0;
};
static_assert(kPlaces <= 8);

Entries place_entries(const PlacesRow& row) {
    Entries entries;
    for (const PlaceEntry& place : place_list())
        entries.add({place.word, place.name, true, place.name == row.place});
    return entries;
}

/// @param idle_too  also what can do nothing now, so that nothing moves when it can
Entries action_entries(const PlacesRow& row, bool idle_too) {
    Entries entries;
    if (row.shelf_word != nullptr)
        entries.add({row.shelf_word, RowWish::open_shelf});
    if (row.can_keep)
        entries.add({"Save", RowWish::keep});
    if (row.can_undo || idle_too)
        entries.add({"Undo", RowWish::undo, row.can_undo});
    if (row.can_redo || idle_too)
        entries.add({"Redo", RowWish::redo, row.can_redo});
    entries.add({"Settings", RowWish::settings});
    entries.add({"Glossary", RowWish::glossary});
    entries.add({"Keys", RowWish::help});
    return entries;
}

/// Draws entries from a place on.
/// @return where the next one would begin [px]
float draw_entries(const Style& style, std::span<const Entry> entries, ImVec2 at, float gap_px,
                   RowPress& pressed) {
    for (const Entry& entry : entries) {
        if (word_button(style, entry.word, at, entry.word, entry.in_force, entry.enabled))
            pressed = entry.press;
        at.x += text_width(style, {scene::TextSize::body, entry.in_force}, entry.word) + gap_px;
    }
    return at.x;
}

float width_of(const Style& style, std::span<const Entry> entries, float gap_px) {
    float width_px = 0.0F;
    for (const Entry& entry : entries)
        width_px += text_width(style, {scene::TextSize::body, entry.in_force}, entry.word) + gap_px;
    return width_px;
}

/// As many of the first entries as a width has room for, at least one.
std::span<const Entry> fitting(const Style& style, std::span<const Entry> entries, float gap_px,
                               float room_px) {
    std::size_t count = entries.size();
    while (count > 1 && width_of(style, entries.first(count), gap_px) - gap_px > room_px)
        --count;
    return entries.first(count);
}

} // namespace

RowPress draw_places_row(const Style& style, float width_px, const PlacesRow& row) {
    const Entries all_places = place_entries(row);
    const Entries all_actions = action_entries(row, true);
    const std::span<const Entry> places = all_places.all();
    const float left_px = 24.0F;
    // Words stand closer before they go into a second line, and large ones before they are cut.
    const auto gap_for = [&](float words_px, std::size_t count, float least_px) {
        return std::clamp((width_px - left_px - words_px) / static_cast<float>(count), least_px,
                          style.px(18.0F));
    };
    const float words_px = width_of(style, places, 0.0F);
    const float all_words_px = words_px + width_of(style, all_actions.all(), 0.0F);
    const std::size_t all_count = places.size() + all_actions.all().size();
    float gap_px = gap_for(all_words_px, all_count, style.px(9.0F));
    if (left_px + all_words_px + gap_px * static_cast<float>(all_count) > width_px + 0.5F)
        gap_px = gap_for(words_px, places.size(), style.px(6.0F));
    const float places_px = width_of(style, places, gap_px);
    const float actions_px = width_of(style, all_actions.all(), gap_px);
    const bool one_line = left_px + places_px + actions_px <= width_px + 0.5F;
    RowPress pressed;
    begin_area("places", scene::Point::Zero(), {width_px, style.px(one_line ? 56.0F : 58.0F)});
    if (one_line) {
        const float base_px = style.px(36.0F);
        draw_entries(style, places, {left_px, base_px}, gap_px, pressed);
        draw_entries(style, all_actions.all(), {width_px - actions_px, base_px}, gap_px, pressed);
    } else {
        // Of places that do not fit in the first line, the last begin the second.
        const auto first = fitting(style, places, gap_px, width_px - left_px);
        draw_entries(style, first, {left_px, style.px(26.0F)}, gap_px, pressed);
        const float base_px = style.px(50.0F);
        const float at_px =
            draw_entries(style, places.subspan(first.size()), {left_px, base_px}, gap_px, pressed);
        const float room_px = width_px - at_px;
        const Entries useful = action_entries(row, actions_px - gap_px <= room_px);
        draw_entries(style, fitting(style, useful.all(), gap_px, room_px), {at_px, base_px}, gap_px,
                     pressed);
    }
    end_area();
    return pressed;
}

} // namespace steelyard::app
