#include "app/places_row.h"

#include "app/widgets/area.h"
#include "app/widgets/buttons.h"

#include <algorithm>

namespace steelyard::app {

RowWish draw_places_row(const Style& style, float width_px, const PlacesRow& row) {
    struct Entry {
        const char* word;
        RowWish wish;
        bool enabled = true;
    };
    const Entry places[] = {{"Bench", RowWish::go_to_bench}, {"Body", RowWish::go_to_body}};
    const Entry actions[] = {
        {row.place == Place::body ? "Exercises" : "Levers", RowWish::open_shelf},
        {"Undo", RowWish::undo, row.can_undo},
        {"Redo", RowWish::redo, row.can_redo},
        {row.us_units ? "SI units" : "US units", RowWish::units},
        {row.dark ? "Light" : "Dark", RowWish::look},
        {"Keys", RowWish::help}};
    RowWish wish = RowWish::none;
    const float gap_px = style.px(20.0F);
    const float base = style.px(36.0F);
    float x = 24.0F;
    begin_area("places", scene::Point::Zero(), {width_px, style.px(56.0F)});
    const auto draw = [&](const Entry& entry, bool in_force) {
        if (word_button(style, entry.word, {x, base}, entry.word, in_force, entry.enabled))
            wish = entry.wish;
        x += text_width(style, {scene::TextSize::body, in_force}, entry.word) + gap_px;
    };
    draw(places[0], row.place == Place::bench);
    draw(places[1], row.place == Place::body);
    float actions_px = 0.0F;
    for (const Entry& action : actions)
        actions_px += text_width(style, {}, action.word) + gap_px;
    x = std::max(x, width_px - actions_px);
    for (const Entry& action : actions)
        draw(action, false);
    end_area();
    return wish;
}

} // namespace steelyard::app
