#include "app/shelf/shelf_view.h"

#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "words/letter_case.h"

#include <imgui_stdlib.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <sstream>

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

/// The word on an own card. It is drawn before the card, so that the pointer finds it first.
bool draw_remove(const Style& style, const CardGrid& grid, const ImVec2& corner) {
    const float width_px = text_width(style, {TextSize::body, false}, "remove");
    return word_button(style, "remove",
                       {corner.x + static_cast<float>(grid.card_px) - width_px - style.px(16.0F),
                        corner.y + static_cast<float>(grid.row_px) - style.px(14.0F)},
                       "remove", false);
}

/// @param shown  the cards that the search leaves
void read_keys(const CardGrid& grid, const std::vector<KeyPress>& keys,
               const std::vector<std::size_t>& shown, ShelfState& state, ShelfFrame& frame) {
    for (const KeyPress& key : keys) {
        std::ptrdiff_t step = 0;
        if (key.key == key::kEscape)
            state.open = false;
        else if ((key.key == key::kEnter || key.key == key::kKeypadEnter) && !shown.empty())
            frame.opened = shown[state.chosen];
        else if (key.key == key::kDelete && !shown.empty() &&
                 state.cards[shown[state.chosen]].removable)
            frame.removed = shown[state.chosen];
        else if (key.key == key::kRight || key.key == key::kTab)
            step = 1;
        else if (key.key == key::kLeft)
            step = -1;
        else if (key.key == key::kDown)
            step = static_cast<std::ptrdiff_t>(grid.columns);
        else if (key.key == key::kUp)
            step = -static_cast<std::ptrdiff_t>(grid.columns);
        const std::ptrdiff_t next = static_cast<std::ptrdiff_t>(state.chosen) + step;
        if (step != 0 && next >= 0 && next < std::ssize(shown)) {
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

/// What can be done with the shelf, and the line to search in.
void draw_head(const Style& style, const ShelfContent& content, const Point& window_px,
               ShelfState& state, ShelfFrame& frame) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float scroll = ImGui::GetScrollY();
    const auto right_px = static_cast<float>(window_px.x()) - 40.0F;
    draw_text(list, style, {TextSize::reading, true, Role::ink}, {24.0F, style.px(44.0F) - scroll},
              content.heading);
    const float field_px = std::min(style.px(240.0F), 0.4F * right_px);
    ImGui::SetCursorScreenPos({right_px - field_px, style.px(18.0F) - scroll});
    ImGui::SetNextItemWidth(field_px);
    const std::string before = state.search;
    ImGui::InputTextWithHint("##search", "Search", &state.search);
    if (state.search != before)
        state.chosen = 0;
    ImVec2 at{24.0F, style.px(76.0F) - scroll};
    const auto word = [&](const char* what) {
        const bool pressed = word_button(style, what, at, what, false);
        at.x += text_width(style, {TextSize::body, false}, what) + style.px(20.0F);
        return pressed;
    };
    if (content.new_word != nullptr)
        frame.makes_new = word(content.new_word);
    if (content.can_put_back)
        frame.put_back = word("Put back what was removed");
    if (word("Back"))
        state.open = false;
}

/// Draws the cards that can be seen, of which some may be pressed.
/// @return where the next row would begin [px]
float draw_cards(const Style& style, const CardGrid& grid, const Point& window_px,
                 const std::vector<std::size_t>& shown, ShelfState& state, ShelfFrame& frame) {
    const float scroll = ImGui::GetScrollY();
    for (std::size_t i = 0; i < shown.size(); ++i) {
        const ShelfCard& card = state.cards[shown[i]];
        const Point at = grid.corner(i) - Point(0.0, scroll);
        const ImVec2 corner{static_cast<float>(at.x()), static_cast<float>(at.y())};
        ImGui::PushID(static_cast<int>(shown[i]));
        if (card.removable && draw_remove(style, grid, corner))
            frame.removed = shown[i];
        if (press_area(style, "card", corner,
                       {static_cast<float>(grid.card_px), static_cast<float>(grid.row_px)}))
            frame.opened = shown[i];
        const bool chosen = i == state.chosen || ImGui::IsItemHovered();
        ImGui::PopID();
        draw_card(style, card, grid, corner, chosen);
        if (at.y() < window_px.y() && at.y() + grid.row_px > 0.0)
            frame.pictures.push_back({&card.picture, at});
    }
    const std::size_t rows = (shown.size() + grid.columns - 1) / grid.columns;
    return static_cast<float>(grid.corner(rows * grid.columns).y()) - scroll;
}

} // namespace

void open_shelf(ShelfState& state) {
    state = {};
    state.open = true;
}

std::vector<std::size_t> cards_with(const std::vector<ShelfCard>& cards,
                                    const std::string& search) {
    std::istringstream stream(words::in_small_letters(search));
    const std::vector<std::string> wanted{std::istream_iterator<std::string>(stream), {}};
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < cards.size(); ++i) {
        const std::string words =
            words::in_small_letters(cards[i].name + "\n" + cards[i].first_line + "\n" +
                                    cards[i].second_line + "\n" + cards[i].also);
        if (std::all_of(wanted.begin(), wanted.end(), [&](const std::string& word) {
                return words.find(word) != std::string::npos;
            }))
            found.push_back(i);
    }
    return found;
}

Point card_picture_px(const Style& style, const Point& window_px) {
    const CardGrid grid = lay_cards(style, window_px);
    return {grid.card_px, grid.picture_px};
}

ShelfFrame draw_shelf(const Style& style, const ShelfContent& content, const Point& window_px,
                      const std::vector<KeyPress>& keys, ShelfState& state) {
    const CardGrid grid = lay_cards(style, window_px);
    ShelfFrame frame;
    std::vector<std::size_t> shown = cards_with(state.cards, state.search);
    state.chosen = std::min(state.chosen, shown.empty() ? 0 : shown.size() - 1);
    read_keys(grid, keys, shown, state, frame);
    begin_area("shelf", Point::Zero(), window_px, true);
    scroll_to(grid, window_px, state);
    draw_head(style, content, window_px, state, frame);
    shown = cards_with(state.cards, state.search);
    float below = draw_cards(style, grid, window_px, shown, state, frame);
    if (shown.empty())
        below = draw_paragraph(
            *ImGui::GetWindowDrawList(), style, {TextSize::body, false, Role::ink},
            {24.0F, below + style.px(16.0F)}, style.px(600.0F),
            "Nothing here has these words in its name, its joints, loads, plane or place.");
    const float end = draw_faults(style, content.faults, below + style.px(20.0F),
                                  static_cast<float>(window_px.x()) - 48.0F);
    ImGui::SetCursorScreenPos({0.0F, end + style.px(16.0F)});
    ImGui::Dummy({1.0F, 1.0F});
    end_area();
    return frame;
}

} // namespace steelyard::app
