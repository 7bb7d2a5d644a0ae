#include "app/shelf/shelf_view.h"

#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using scene::Point;
using scene::Role;
using scene::TextSize;

/// Cards in rows under a heading.
struct CardGrid {
    std::size_t columns = 1;
    double left_px = 40.0;
    double top_px = 120.0;
    double card_px = 260.0;
    double picture_px = 150.0;
    double row_px = 230.0;
    double gap_px = 16.0;

    Point corner(std::size_t index) const {
        const std::size_t column = index % columns;
        const std::size_t row = index / columns;
        return {left_px + static_cast<double>(column) * (card_px + gap_px),
                top_px + static_cast<double>(row) * (row_px + gap_px)};
    }
};

CardGrid lay_cards(const Style& style, const Point& window_px) {
    CardGrid grid;
    const double scale = style.fonts.scale;
    grid.left_px = 24.0;
    grid.top_px = 96.0 * scale;
    const double room_px = window_px.x() - 2.0 * grid.left_px - 16.0;
    grid.columns = static_cast<std::size_t>(
        std::max(1.0, std::floor((room_px + grid.gap_px) / (250.0 * scale + grid.gap_px))));
    const auto columns = static_cast<double>(grid.columns);
    grid.card_px = std::floor((room_px - (columns - 1.0) * grid.gap_px) / columns);
    grid.picture_px = std::floor(0.56 * grid.card_px);
    grid.row_px = grid.picture_px + 84.0 * scale;
    return grid;
}

void make_cards(const ShelfContent& content, const CardGrid& grid, ShelfState& state) {
    if (state.cards_width_px == grid.card_px)
        return;
    state.cards = content.make_cards({grid.card_px, grid.picture_px});
    state.cards_width_px = grid.card_px;
}

void draw_card(const Style& style, const ShelfCard& card, const CardGrid& grid,
               const ImVec2& corner, bool chosen) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 far_corner{corner.x + static_cast<float>(grid.card_px),
                            corner.y + static_cast<float>(grid.row_px)};
    list.AddRect(corner, far_corner, style.mark(chosen ? Role::ink : Role::hairline), 6.0F, 0,
                 chosen ? 2.5F : 1.0F);
    const float left = corner.x + style.px(16.0F);
    const float base = corner.y + static_cast<float>(grid.picture_px);
    const float room_px = static_cast<float>(grid.card_px) - style.px(32.0F);
    const auto line = [&](const TextStyle& how, float below, const std::string& text) {
        draw_text(list, style, how, {left, base + style.px(below)},
                  shortened(style, how, text, room_px));
    };
    line({TextSize::body, true, Role::ink}, 24.0F, card.name);
    line({TextSize::caption, false, Role::quiet_ink}, 46.0F, card.first_line);
    line({TextSize::caption, false, Role::quiet_ink}, 66.0F, card.second_line);
}

void read_keys(const CardGrid& grid, const std::vector<KeyPress>& keys, ShelfState& state,
               ShelfFrame& frame) {
    const std::size_t count = state.cards.size();
    for (const KeyPress& key : keys) {
        std::ptrdiff_t step = 0;
        if (key.key == key::kEscape)
            state.open = false;
        else if ((key.key == key::kEnter || key.key == key::kKeypadEnter) && count > 0)
            frame.opened = state.chosen;
        else if (key.key == key::kRight || key.key == key::kTab)
            step = 1;
        else if (key.key == key::kLeft)
            step = -1;
        else if (key.key == key::kDown)
            step = static_cast<std::ptrdiff_t>(grid.columns);
        else if (key.key == key::kUp)
            step = -static_cast<std::ptrdiff_t>(grid.columns);
        const std::ptrdiff_t next = static_cast<std::ptrdiff_t>(state.chosen) + step;
        if (step != 0 && next >= 0 && next < static_cast<std::ptrdiff_t>(count)) {
            state.chosen = static_cast<std::size_t>(next);
            state.scroll_to_chosen = true;
        }
    }
}

void scroll_to(const CardGrid& grid, const Point& window_px, ShelfState& state) {
    if (!state.scroll_to_chosen)
        return;
    state.scroll_to_chosen = false;
    const double top = grid.corner(state.chosen).y() - grid.top_px;
    const double bottom = grid.corner(state.chosen).y() + grid.row_px + grid.gap_px;
    const double scroll = ImGui::GetScrollY();
    if (top < scroll)
        ImGui::SetScrollY(static_cast<float>(top));
    else if (bottom > scroll + window_px.y())
        ImGui::SetScrollY(static_cast<float>(bottom - window_px.y()));
}

float draw_faults(const Style& style, const std::vector<std::string>& faults, float top,
                  float width_px) {
    for (const std::string& fault : faults)
        top =
            draw_paragraph(*ImGui::GetWindowDrawList(), style,
                           {TextSize::caption, false, Role::wrong}, {24.0F, top}, width_px, fault);
    return top;
}

} // namespace

void open_shelf(ShelfState& state) {
    state = {};
    state.open = true;
}

ShelfFrame draw_shelf(const Style& style, const ShelfContent& content, const Point& window_px,
                      const std::vector<KeyPress>& keys, ShelfState& state) {
    const CardGrid grid = lay_cards(style, window_px);
    make_cards(content, grid, state);
    ShelfFrame frame;
    read_keys(grid, keys, state, frame);
    begin_area("shelf", Point::Zero(), window_px, true);
    scroll_to(grid, window_px, state);
    const float scroll = ImGui::GetScrollY();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    draw_text(list, style, {TextSize::reading, true, Role::ink}, {24.0F, style.px(48.0F) - scroll},
              content.heading);
    draw_text(list, style, {TextSize::caption, false, Role::quiet_ink},
              {24.0F, style.px(72.0F) - scroll},
              "click one, or arrows and Enter; Escape goes back");
    for (std::size_t i = 0; i < state.cards.size(); ++i) {
        const Point at = grid.corner(i) - Point(0.0, scroll);
        const ImVec2 corner{static_cast<float>(at.x()), static_cast<float>(at.y())};
        ImGui::PushID(static_cast<int>(i));
        if (press_area(style, "card", corner,
                       {static_cast<float>(grid.card_px), static_cast<float>(grid.row_px)}))
            frame.opened = i;
        ImGui::PopID();
        draw_card(style, state.cards[i], grid, corner, i == state.chosen || ImGui::IsItemHovered());
        if (at.y() < window_px.y() && at.y() + grid.row_px > 0.0)
            frame.pictures.push_back({&state.cards[i].picture, at});
    }
    const std::size_t rows = (state.cards.size() + grid.columns - 1) / grid.columns;
    const auto below = static_cast<float>(grid.corner(rows * grid.columns).y()) - scroll;
    const float end = draw_faults(style, *content.faults, below + style.px(20.0F),
                                  static_cast<float>(window_px.x()) - 48.0F);
    ImGui::SetCursorScreenPos({0.0F, end + style.px(16.0F)});
    ImGui::Dummy({1.0F, 1.0F});
    end_area();
    if (frame.opened)
        state.open = false;
    return frame;
}

} // namespace steelyard::app
