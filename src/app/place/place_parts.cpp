#include "app/place/place_parts.h"

namespace steelyard::app {

ShelfContent lever_content(std::string heading, const Shelf& levers) {
    return {std::move(heading),
            [&levers](const scene::Point& size_px) { return lever_cards(levers, size_px); },
            &levers.faults};
}

ShelfContent exercise_content(std::string heading, const Shelf& exercises) {
    return {std::move(heading),
            [&exercises](const scene::Point& size_px) { return body_cards(exercises, size_px); },
            &exercises.faults};
}

PlaceFrame run_shelf(const PlaceInput& input, const ShelfContent& content, ShelfState& state,
                     const std::function<void(std::size_t)>& put) {
    ShelfFrame result = draw_shelf(input.style, content, input.window_px, *input.frame.keys, state);
    PlaceFrame frame;
    frame.pictures = std::move(result.pictures);
    if (result.opened) {
        put(*result.opened);
        frame.changed = true;
    }
    return frame;
}

void draw_trouble(const PlaceInput& input, const std::string& sentence) {
    draw_paragraph(*ImGui::GetBackgroundDrawList(), input.style,
                   {scene::TextSize::body, false, scene::Role::wrong},
                   {24.0F, input.style.px(120.0F)},
                   static_cast<float>(input.layout.stage_px.x()) - 48.0F, sentence);
}

} // namespace steelyard::app
