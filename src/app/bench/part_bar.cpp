#include "app/bench/part_bar.h"

#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/chip.h"
#include "setup/units/format_quantity.h"

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

std::string shown_value(const BenchModel& model, const LeverNumber& number) {
    const double value = value_of(model.state.handled(), number).value_or(0.0);
    const setup::NumberStyle how{number.field == LeverField::grip ? 2 : 3, true};
    return setup::format_quantity(value, dimension_of(number.field), model.units, how);
}

/// Where the next thing stands: in a line, and in a further one when the line is full.
class BarPen {
public:
    BarPen(const Style& style, const scene::Point& corner_px, double width_px)
        : style_(style), left_px_(static_cast<float>(corner_px.x())),
          right_px_(static_cast<float>(corner_px.x() + width_px)),
          at_(left_px_, static_cast<float>(corner_px.y())) {}

    /// @return the corner of what is this wide
    ImVec2 place(float width_px, float gap_px) {
        if (at_.x + width_px > right_px_ && at_.x > left_px_)
            at_ = {left_px_, at_.y + style_.px(36.0F)};
        const ImVec2 corner = at_;
        at_.x += width_px + style_.px(gap_px);
        return corner;
    }
    /// The left end of the baseline of a word.
    ImVec2 place_word(const char* word, float gap_px) {
        const ImVec2 corner = place(text_width(style_, {}, word), gap_px);
        return {corner.x, corner.y + style_.px(22.0F)};
    }

private:
    const Style& style_;
    float left_px_;
    float right_px_;
    ImVec2 at_;
};

} // namespace

std::optional<BenchIntent> draw_part_bar(const Style& style, const BenchModel& model,
                                         const scene::Point& corner_px, double width_px,
                                         const StageState& stage, NumberField& field) {
    if (field.number && !value_of(model.state.handled(), *field.number))
        field.number.reset(); // its part went while it was being typed
    const scene::LeverPart part = field.number ? field.number->part : stage.chosen;
    // No higher than what stands there: what lies below is the stage's to be taken hold of.
    begin_area("part", corner_px, {width_px, style.px(field.number ? 150.0F : 76.0F)});
    ImDrawList& list = *ImGui::GetWindowDrawList();
    BarPen pen(style, corner_px, width_px);
    const TextStyle quiet{TextSize::caption, false, Role::quiet_ink};
    const std::string name = name_of(model.state.setup.lever, part);
    const ImVec2 name_at = pen.place(text_width(style, quiet, name), 10.0F);
    draw_text(list, style, quiet, {name_at.x, name_at.y + style.px(22.0F)}, name);
    std::optional<BenchIntent> intent;
    for (const LeverField one : fields_of(model.state.handled(), part)) {
        const LeverNumber number{part, one};
        if (field.number == number) {
            const float width = style.px(130.0F);
            intent = draw_number_field(style, model, pen.place(width, 8.0F), width, field);
            continue;
        }
        const std::string value = shown_value(model, number);
        const ImVec2 corner = pen.place(chip_width(style, name_of(one), value), 8.0F);
        if (draw_chip(style, corner, name_of(one), value).pressed)
            open_field(field, model, number);
    }
    pen.place(0.0F, 8.0F);
    if (word_button(style, "add", pen.place_word("add a load", 20.0F), "add a load", false))
        intent = new_load(model);
    if (part.kind == scene::PartKind::load &&
        word_button(style, "remove", pen.place_word("remove", 0.0F), "remove", false))
        intent = RemoveLoad{part.index};
    end_area();
    return intent;
}

} // namespace steelyard::app
