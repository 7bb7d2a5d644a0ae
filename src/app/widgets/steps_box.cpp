#include "app/widgets/steps_box.h"

#include "app/look/formula_text.h"
#include "app/look/text_styles.h"
#include "app/widgets/told_text.h"

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

constexpr TextStyle kStrongCaption{TextSize::caption, true, Role::ink};
constexpr float kFarAbove_px = -1.0e5F;

float paragraph_height(const Style& style, const TextStyle& how, float width_px,
                       const std::string& text) {
    // Drawn far above the window, where it is clipped: measured by the very code that draws it.
    ImDrawList& list = *ImGui::GetBackgroundDrawList();
    Style silent = style;
    silent.narration = nullptr;
    return draw_formula(list, silent, how, {0.0F, kFarAbove_px}, width_px, text) - kFarAbove_px;
}

std::string formula_of(const words::ComputedStep& step) {
    std::string formula;
    for (const std::string* part : {&step.symbols, &step.numbers, &step.result})
        if (!part->empty())
            formula += (formula.empty() ? "" : " = ") + *part;
    return formula;
}

} // namespace

std::vector<StepLines> words_of(const std::vector<words::ComputedStep>& steps) {
    std::vector<StepLines> words;
    words.reserve(steps.size());
    for (const words::ComputedStep& step : steps)
        words.push_back({step.title, formula_of(step)});
    return words;
}

void draw_steps_box(const Style& style, const std::vector<StepLines>& steps, ColumnPen& pen) {
    const float pad = style.px(16.0F);
    const float inner_px = pen.width() - 2.0F * pad;
    float height_px = 2.0F * pad - style.px(4.0F);
    for (const StepLines& step : steps)
        height_px += paragraph_height(style, kStrongCaption, inner_px, step.title) +
                     paragraph_height(style, kBody, inner_px, step.formula);
    pen.list().AddRectFilled({pen.left(), pen.y()}, {pen.left() + pen.width(), pen.y() + height_px},
                             style.mark(Role::panel), 6.0F);
    float y = pen.y() + pad + style.px(9.0F);
    int number = 0;
    for (const StepLines& step : steps) {
        const std::string id = "step" + std::to_string(number++);
        y = draw_told(pen.list(), style, id.c_str(), kStrongCaption, {pen.left() + pad, y},
                      inner_px, step.title);
        y = draw_formula(pen.list(), style, kBody, {pen.left() + pad, y}, inner_px, step.formula);
    }
    pen.skip_px(height_px + style.px(8.0F));
}

} // namespace steelyard::app
