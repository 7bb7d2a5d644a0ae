#include "app/bench/column.h"

#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/column_pen.h"
#include "setup/lever_steps.h"

#include <algorithm>

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

constexpr TextStyle kCaption{TextSize::caption, false, Role::quiet_ink};
constexpr TextStyle kStrongCaption{TextSize::caption, true, Role::ink};
constexpr TextStyle kBody{TextSize::body, false, Role::quiet_ink};

constexpr float kFarAbove_px = -1.0e5F;

float paragraph_height(const Style& style, const TextStyle& how, float width_px,
                       const std::string& text) {
    // Drawn far above the window, where it is clipped: measured by the very code that draws it.
    ImDrawList& list = *ImGui::GetBackgroundDrawList();
    Style silent = style;
    silent.narration = nullptr;
    return draw_paragraph(list, silent, how, {0.0F, kFarAbove_px}, width_px, text) - kFarAbove_px;
}

/// "τ = F × d = 118 N × 0.4 m = 47.1 N·m", with what there is of it.
std::string formula_of(const setup::ComputedStep& step) {
    std::string formula;
    for (const std::string* part : {&step.symbols, &step.numbers, &step.result})
        if (!part->empty())
            formula += (formula.empty() ? "" : " = ") + *part;
    return formula;
}

/// The box under a reading: how it was computed, with this lever's own numbers.
void draw_steps(const Style& style, const BenchModel& model, setup::LeverReading id,
                ColumnPen& pen) {
    const std::vector<setup::ComputedStep> steps =
        setup::lever_steps(id, model.state.setup.lever, model.solved, model.units);
    const float pad = style.px(16.0F);
    const float inner_px = pen.width() - 2.0F * pad;
    float height_px = 2.0F * pad - style.px(4.0F);
    for (const setup::ComputedStep& step : steps)
        height_px += paragraph_height(style, kStrongCaption, inner_px, step.title) +
                     paragraph_height(style, kCaption, inner_px, formula_of(step));
    pen.list().AddRectFilled({pen.left(), pen.y()}, {pen.left() + pen.width(), pen.y() + height_px},
                             style.mark(Role::panel), 6.0F);
    float y = pen.y() + pad + style.px(9.0F);
    for (const setup::ComputedStep& step : steps) {
        y = draw_paragraph(pen.list(), style, kStrongCaption, {pen.left() + pad, y}, inner_px,
                           step.title);
        y = draw_paragraph(pen.list(), style, kCaption, {pen.left() + pad, y}, inner_px,
                           formula_of(step));
    }
    pen.skip_px(height_px + style.px(8.0F));
}

void draw_reading(const Style& style, const BenchModel& model, const Reading& reading,
                  ColumnState& state, ColumnPen& pen) {
    const float row_px = style.px(36.0F);
    ImGui::PushID(reading.name.c_str());
    const bool open = state.unfolded == reading.name;
    if (row_button(style, "row", {pen.left() - 8.0F, pen.y()}, pen.width() + 16.0F, row_px, false))
        state.unfolded = open ? std::string() : reading.name;
    ImGui::PopID();
    const float base = pen.y() + style.px(25.0F);
    const float name_px = draw_text(pen.list(), style, kBody, {pen.left(), base}, reading.name);
    TextStyle value{TextSize::reading, false, reading.role};
    if (name_px + text_width(style, value, reading.value) > pen.width() - style.px(8.0F))
        value.size = TextSize::body;
    const float value_px = text_width(style, value, reading.value);
    draw_text(pen.list(), style, value, {pen.left() + pen.width() - value_px, base}, reading.value);
    pen.skip(36.0F);
    if (open)
        draw_steps(style, model, reading.id, pen);
}

void draw_head(const Style& style, const BenchModel& model, const BenchReadings& readings,
               ColumnState& state, ColumnPen& pen) {
    pen.skip(84.0F);
    pen.line({TextSize::key, true, Role::ink}, readings.headline);
    pen.skip(29.0F);
    pen.paragraph(kBody, readings.sentence);
    for (const std::string& note : readings.notes) {
        pen.skip(4.0F);
        pen.paragraph({TextSize::body, true, Role::ink}, note);
    }
    pen.skip(20.0F);
    pen.line(kCaption, readings.key.name);
    const float top = pen.y();
    pen.skip(44.0F);
    const float number_px = draw_text(pen.list(), style, {TextSize::key, true, Role::ink},
                                      {pen.left(), pen.y()}, readings.key.value);
    draw_text(pen.list(), style, kBody, {pen.left() + number_px + style.px(8.0F), pen.y()},
              readings.key_note);
    ImGui::SetCursorScreenPos({pen.left(), top});
    if (ImGui::InvisibleButton("key", {pen.width(), style.px(52.0F)}))
        state.unfolded = state.unfolded == readings.key.name ? std::string() : readings.key.name;
    pen.skip(18.0F);
    if (state.unfolded == readings.key.name)
        draw_steps(style, model, readings.key.id, pen);
    pen.divider();
    pen.skip(12.0F);
}

} // namespace

void unfold_next(const BenchReadings& readings, int step, ColumnState& state) {
    std::vector<std::string> order{std::string(), readings.key.name};
    for (const Reading& reading : readings.rows)
        order.push_back(reading.name);
    const auto found = std::find(order.begin(), order.end(), state.unfolded);
    const auto count = static_cast<std::ptrdiff_t>(order.size());
    const std::ptrdiff_t at = found == order.end() ? 0 : found - order.begin();
    state.unfolded = order[static_cast<std::size_t>((at + step + count) % count)];
}

ColumnOutcome draw_column(const Style& style, const BenchModel& model,
                          const BenchReadings& readings, const Layout& layout, ColumnState& state) {
    ColumnOutcome outcome;
    begin_area("column", layout.column_at_px, layout.column_px, true);
    ColumnPen pen(style, layout);
    if (layout.narrow)
        pen.skip(-36.0F);
    draw_head(style, model, readings, state, pen);
    for (const Reading& reading : readings.rows)
        draw_reading(style, model, reading, state, pen);
    pen.skip(28.0F);
    if (word_button(style, "hand", {pen.left(), pen.y()},
                    model.state.hand_N ? "Find the effort for me" : "Set the effort by hand",
                    false))
        outcome.switch_hand = true;
    pen.skip(24.0F);
    if (!model.message.empty())
        pen.paragraph({TextSize::caption, false, Role::wrong}, model.message);
    // The main action stands at the foot of the column, or below all readings when they are long.
    const auto foot = static_cast<float>(layout.column_at_px.y() + layout.column_px.y()) -
                      main_button_height(style) - style.px(28.0F);
    const float top = std::max(pen.y(), layout.narrow ? pen.y() : foot);
    outcome.ask_question =
        main_button(style, "ask", {pen.left(), top}, pen.width(), "Ask me one like this");
    pen.finish(top - pen.y() + main_button_height(style) + style.px(20.0F));
    end_area();
    return outcome;
}

} // namespace steelyard::app
