#include "app/side_by_side/pair_heads.h"

#include "app/look/text_styles.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "words/whatif/comparison.h"

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

constexpr TextStyle kName{TextSize::body, true, Role::ink};
constexpr TextStyle kLowName{TextSize::caption, true, Role::ink};
constexpr float kTop_px = 68.0F; ///< at 100 %
constexpr float kLeft_px = 24.0F;

float half_left(const PairLayout& place, Side side) {
    return kLeft_px + (side == Side::a ? 0.0F : static_cast<float>(0.5 * place.stage_px.x()));
}

/// What stands under the name of B: what it changes, so that the eye need not search.
std::string told_about(const SideBySideModel& model, Side side, setup::UnitSystem units) {
    if (side == Side::a)
        return model.state.a.head.description;
    std::string told;
    for (const std::string& one : words::changed_in_b(model.state.a, model.state.b, units))
        told += (told.empty() ? "" : "; ") + one;
    return told.empty() ? model.state.b.head.description : told;
}

/// A word at the right end of a head, on a base line. @return true when it was pressed; `right`
/// moves to its left
bool draw_end_word(const Style& style, const char* id, std::string_view word, float base,
                   float& right) {
    right -= text_width(style, {}, word);
    const bool pressed = word_button(style, id, {right, base}, word, false);
    right -= style.px(18.0F);
    return pressed;
}

} // namespace

void draw_side_head(const Style& style, const SideHead& head, PairHeadsWishes& wishes) {
    const auto left = static_cast<float>(head.corner_px.x());
    const auto top = static_cast<float>(head.corner_px.y());
    const auto width = static_cast<float>(head.width_px);
    const float indent = style.px(static_cast<float>(scene::kBadge_px) + 10.0F);
    const float base = top + style.px(17.0F);
    float right = left + width;
    ImGui::PushID(head.side == Side::a ? "a" : "b");
    if (head.side == Side::a && draw_end_word(style, "swap", "Swap", base, right))
        wishes.swap = true;
    if (!head.low && draw_end_word(style, "choose", "Choose", base, right))
        wishes.choose = head.side;
    const float room_px = right - left - indent;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (head.low && text_width(style, kName, head.name) > room_px) {
        // What tells two exercises apart often stands at the end of their names.
        if (press_area(style, "name", {left, top - style.px(4.0F)},
                       {indent + room_px, style.px(40.0F)}))
            wishes.choose = head.side;
        ImGui::PopID();
        draw_paragraph(list, style, kLowName, {left + indent, base - style.px(7.0F)}, room_px,
                       head.name);
        return;
    }
    const std::string name = shortened(style, kName, head.name, room_px);
    if (press_area(style, "name", {left, top - style.px(4.0F)},
                   {indent + text_width(style, kName, name), style.px(30.0F)}))
        wishes.choose = head.side;
    ImGui::PopID();
    if (ImGui::IsItemHovered())
        list.AddLine({left + indent, base + style.px(5.0F)},
                     {left + indent + text_width(style, kName, name), base + style.px(5.0F)},
                     style.mark(Role::ink), 1.5F);
    draw_text(list, style, kName, {left + indent, base}, name);
    if (!head.low)
        draw_text(list, style, kCaption, {left, base + style.px(26.0F)},
                  shortened(style, kCaption, head.told, width));
}

PairHeadsWishes draw_pair_heads(const Style& style, const PairLayout& place,
                                const SideBySideModel& model, setup::UnitSystem units,
                                bool playing) {
    PairHeadsWishes wishes;
    begin_area("pair heads", {0.0, style.px(kTop_px - 8.0F)},
               {place.stage_px.x(), static_cast<double>(style.px(56.0F))});
    for (const Side side : {Side::a, Side::b}) {
        const setup::BodySetup& setup = side == Side::a ? model.state.a : model.state.b;
        const scene::Point corner_px{static_cast<double>(half_left(place, side)),
                                     static_cast<double>(style.px(kTop_px))};
        draw_side_head(style,
                       {side, setup.head.name, told_about(model, side, units), corner_px,
                        place.panel_px().x() - 2.0 * static_cast<double>(kLeft_px), place.low},
                       wishes);
    }
    end_area();
    if (!model.moves() || place.bare)
        return wishes;
    const char* word = playing ? "Stop" : "Play";
    const double top_px = place.panel_px().y() - 2.0 * place.scale;
    const double width_px = static_cast<double>(text_width(style, {}, "Play")) + 24.0;
    begin_area("pair play", {place.stage_px.x() - width_px - 24.0, top_px},
               {width_px + 24.0, 32.0 * place.scale});
    wishes.play = word_button(style, "play",
                              {static_cast<float>(place.stage_px.x() - width_px),
                               static_cast<float>(top_px) + style.px(18.0F)},
                              word, playing);
    end_area();
    return wishes;
}

void add_head_badges(const PairLayout& place, std::vector<scene::Shape>& shapes) {
    for (const Side side : {Side::a, Side::b})
        scene::add_side_badge(side, {half_left(place, side), kTop_px * place.scale}, place.scale,
                              shapes);
}

} // namespace steelyard::app
