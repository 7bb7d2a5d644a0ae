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

} // namespace

std::optional<BenchIntent> draw_part_bar(const Style& style, const BenchModel& model,
                                         const scene::Point& corner_px, double width_px,
                                         const StageState& stage, NumberField& field) {
    if (field.number && !value_of(model.state.handled(), *field.number))
        field.number.reset(); // its part went while it was being typed
    const scene::LeverPart part = field.number ? field.number->part : stage.chosen;
    begin_area("part", corner_px, {width_px, style.px(150.0F)});
    ImDrawList& list = *ImGui::GetWindowDrawList();
    ImVec2 at{static_cast<float>(corner_px.x()), static_cast<float>(corner_px.y())};
    const float base = at.y + style.px(22.0F);
    at.x += draw_text(list, style, {TextSize::caption, false, Role::quiet_ink}, {at.x, base},
                      name_of(model.state.setup.lever, part)) +
            style.px(10.0F);
    std::optional<BenchIntent> intent;
    for (const LeverField one : fields_of(model.state.handled(), part)) {
        const LeverNumber number{part, one};
        if (field.number == number) {
            intent = draw_number_field(style, model, at, style.px(130.0F), field);
            at.x += style.px(138.0F);
            continue;
        }
        const DrawnChip chip = draw_chip(style, at, name_of(one), shown_value(model, number));
        if (chip.pressed)
            open_field(field, model, number);
        at.x += chip.width_px + style.px(8.0F);
    }
    at.x += style.px(8.0F);
    if (word_button(style, "add", {at.x, base}, "add a load", false))
        intent = new_load(model);
    at.x += text_width(style, {}, "add a load") + style.px(20.0F);
    if (part.kind == scene::PartKind::load &&
        word_button(style, "remove", {at.x, base}, "remove", false))
        intent = RemoveLoad{part.index};
    end_area();
    return intent;
}

} // namespace steelyard::app
