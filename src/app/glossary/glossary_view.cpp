#include "app/glossary/glossary_view.h"

#include "app/look/text_styles.h"
#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/column_pen.h"
#include "app/widgets/keyboard_wish.h"
#include "app/widgets/pressed_key.h"
#include "app/workshop/room_stage.h"
#include "setup/toml/input_error.h"
#include "words/letter_case.h"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>

namespace steelyard::app {

namespace {

using scene::Point;
using scene::Role;
using scene::TextSize;

constexpr float kTextTop = 64.0F; ///< where the text begins, at 100 %

std::string listing(const std::vector<std::string>& names) {
    std::string text;
    for (const std::string& name : names)
        text += (text.empty() ? "" : ", ") + name;
    return text;
}

/// The solved stage of the chosen term, made once for each.
const GlossaryState::Shown* shown_of(GlossaryState& state) {
    if (state.shown && state.shown->term == state.chosen)
        return state.shown->solved.stage != nullptr ? state.shown.get() : nullptr;
    state.shown = std::make_unique<GlossaryState::Shown>();
    state.shown->term = state.chosen;
    auto stage = lesson::stage_of(state.terms[state.chosen]);
    if (!stage || !*stage)
        return nullptr;
    state.shown->stage = **std::move(stage);
    auto solved = lesson::solve_stage(state.shown->stage);
    if (!solved)
        return nullptr;
    state.shown->solved = *std::move(solved);
    return state.shown.get();
}

void read_keys(const std::vector<KeyPress>& keys, GlossaryState& state, GlossaryFrame& frame) {
    for (const KeyPress& key : keys)
        if (key.key == key::kEscape)
            frame.close = true;
        else if (key.key == key::kDown)
            step_term(state, 1);
        else if (key.key == key::kUp)
            step_term(state, -1);
}

/// The line to search in and the terms below it, in the column.
void draw_terms(const Style& style, const Layout& layout, GlossaryState& state,
                GlossaryFrame& frame) {
    begin_area("column", layout.column_at_px, layout.column_px, true);
    ColumnPen pen(style, layout);
    pen.skip(layout.narrow ? 26.0F : 36.0F);
    if (word_button(style, "close", {pen.left(), pen.y()}, "Close the glossary", false))
        frame.close = true;
    pen.skip(28.0F);
    if (word_button(style, "print", {pen.left(), pen.y()}, "Make a handout with a formula sheet",
                    false))
        frame.print = true;
    if (!state.remark.empty()) {
        pen.skip(26.0F);
        pen.paragraph(kCaption, state.remark);
        pen.skip(-20.0F);
    }
    pen.skip(16.0F);
    ImGui::SetCursorScreenPos({pen.left(), pen.y()});
    ImGui::SetNextItemWidth(pen.width());
    if (gives_keyboard(state.wants_keyboard))
        state.wants_keyboard = false;
    const std::string before = state.search;
    ImGui::InputTextWithHint("##search", "Search: fulcrum, moment, coronal …", &state.search);
    if (ImGui::IsItemActive() && is_pressed(ImGuiKey_DownArrow))
        step_term(state, 1);
    else if (ImGui::IsItemActive() && is_pressed(ImGuiKey_UpArrow))
        step_term(state, -1);
    if (ImGui::IsItemDeactivated() && is_pressed(ImGuiKey_Escape))
        frame.close = true;
    const std::vector<std::size_t> found = lesson::terms_with(state.terms, state.search);
    if (state.search != before && !found.empty())
        state.chosen = found.front();
    pen.skip(52.0F);
    if (found.empty())
        pen.paragraph(kBody, "No term is called so, nor has it as another name.");
    for (const std::size_t i : found) {
        ImGui::PushID(static_cast<int>(i));
        const bool chosen = i == state.chosen;
        if (row_button(style, "term", {pen.left() - 8.0F, pen.y()}, pen.width() + 16.0F,
                       style.px(30.0F), chosen))
            state.chosen = i;
        if (chosen && state.brings_up) {
            if (!ImGui::IsItemVisible())
                ImGui::SetScrollHereY();
            state.brings_up = false;
        }
        ImGui::PopID();
        draw_text(pen.list(), style, chosen ? kStrong : kBody,
                  {pen.left() + style.px(6.0F), pen.y() + style.px(21.0F)}, state.terms[i].name);
        pen.skip(30.0F);
    }
    pen.finish(24.0F);
    end_area();
}

/// What the chosen term means.
/// @return where the drawing may begin [px]
float draw_meaning(const Style& style, const Layout& layout, const lesson::Term& term) {
    ImDrawList& list = *ImGui::GetBackgroundDrawList();
    const float left_px = 24.0F;
    const float width_px =
        std::min(static_cast<float>(layout.stage_px.x()) - 2.0F * left_px, style.px(760.0F));
    float y = style.px(kTextTop);
    draw_text(list, style, {TextSize::key, true, Role::ink}, {left_px, y},
              words::capitalised(term.name));
    y += style.px(28.0F);
    if (!term.also.empty())
        y = draw_paragraph(list, style, kQuietBody, {left_px, y}, width_px,
                           "Also called " + listing(term.also));
    y += style.px(8.0F);
    y = draw_paragraph(list, style, {TextSize::reading, false, Role::ink}, {left_px, y}, width_px,
                       term.says);
    if (!term.formula.empty())
        y = draw_paragraph(list, style, {TextSize::reading, true, Role::ink},
                           {left_px, y + style.px(4.0F)}, width_px, term.formula);
    return y;
}

scene::Drawing draw_stage(const Style& style, const Layout& layout, setup::UnitSystem units,
                          const std::vector<mechanics::Muscle>& muscles, const lesson::Term& term,
                          const GlossaryState::Shown& shown, float top_px) {
    RoomStage stage;
    stage.type_scale = style.fonts.scale;
    stage.units = units;
    stage.top_px = top_px;
    stage.size_px = layout.stage_px - Point(0.0, style.px(28.0F));
    stage.without = lesson::left_out(term);
    if (!shown.solved.is_lever())
        stage.axes = {shown.solved.axis()};
    return draw_room_stage(shown.solved, muscles, stage);
}

} // namespace

GlossaryState open_glossary(const std::filesystem::path& assets) {
    GlossaryState state;
    auto terms = lesson::read_glossary(assets / "pages" / "glossary.toml");
    if (!terms) {
        state.fault = setup::to_text(terms.error());
        return state;
    }
    state.terms = *std::move(terms);
    return state;
}

void step_term(GlossaryState& state, int by) {
    const std::vector<std::size_t> found = lesson::terms_with(state.terms, state.search);
    if (found.empty())
        return;
    const auto at = std::find(found.begin(), found.end(), state.chosen);
    const auto place = at == found.end() ? 0 : static_cast<int>(at - found.begin()) + by;
    state.chosen =
        found[static_cast<std::size_t>(std::clamp(place, 0, static_cast<int>(found.size()) - 1))];
    state.brings_up = true;
}

GlossaryFrame draw_glossary(const Style& style, const Layout& layout,
                            const std::vector<KeyPress>& keys, setup::UnitSystem units,
                            const std::vector<mechanics::Muscle>& muscles, GlossaryState& state) {
    GlossaryFrame frame;
    frame.drawing.size_px = layout.stage_px;
    read_keys(keys, state, frame);
    if (state.terms.empty()) {
        draw_paragraph(*ImGui::GetBackgroundDrawList(), style, kFault, {24.0F, style.px(kTextTop)},
                       style.px(700.0F), state.fault);
        return frame;
    }
    draw_terms(style, layout, state, frame);
    const lesson::Term& term = state.terms[state.chosen];
    const float top_px = draw_meaning(style, layout, term);
    if (const GlossaryState::Shown* shown = shown_of(state))
        frame.drawing = draw_stage(style, layout, units, muscles, term, *shown, top_px);
    const auto foot_px = static_cast<float>(layout.stage_px.y()) - style.px(14.0F);
    draw_text(*ImGui::GetBackgroundDrawList(), style, kCaption, {24.0F, foot_px},
              shortened(style, kCaption, "Source: " + term.source,
                        static_cast<float>(layout.stage_px.x()) - 48.0F));
    return frame;
}

} // namespace steelyard::app
