#include "app/widgets/typed_field.h"

#include "app/platform/wishes.h"
#include "app/widgets/keyboard_wish.h"
#include "setup/units/format_quantity.h"

#include <imgui_stdlib.h>

namespace steelyard::app {

TypedField open_typed(double value_SI, setup::Dimension dimension, setup::UnitSystem units) {
    return {setup::format_quantity(value_SI, dimension, units, {6, false}), {}, true};
}

tl::expected<double, std::string> read_typed(const std::string& text, double shown_SI,
                                             setup::Dimension dimension, setup::UnitSystem units,
                                             bool mass_as_force) {
    const std::string unit = setup::format_quantity_parts(shown_SI, dimension, units).unit;
    setup::ReadingRules rules;
    rules.bare_unit = unit;
    rules.mass_as_force = mass_as_force;
    auto value = setup::parse_quantity(text, dimension, rules);
    if (!value)
        return tl::unexpected(setup::to_text(value.error()));
    return *value;
}

TypedEnd draw_typed_field(const Style& style, ImVec2 corner, float width_px, TypedField& field) {
    ImGui::SetCursorScreenPos(corner);
    ImGui::SetNextItemWidth(width_px);
    if (gives_keyboard(field.opened))
        field.opened = false;
    const bool entered =
        ImGui::InputText("##number", &field.text,
                         ImGuiInputTextFlags_EnterReturnsTrue | ImGuiInputTextFlags_AutoSelectAll);
    if (ImGui::IsItemActive() && field.is_number)
        ask_for_digits();
    const bool left = ImGui::IsItemDeactivated() && !entered;
    if (!field.fault.empty()) {
        ImDrawList& list = *ImGui::GetWindowDrawList();
        draw_paragraph(list, style, {scene::TextSize::caption, false, scene::Role::wrong},
                       {corner.x, corner.y + style.px(52.0F)}, style.px(420.0F), field.fault);
    }
    if (entered)
        return TypedEnd::entered;
    return left ? TypedEnd::left : TypedEnd::none;
}

void refuse_typed(TypedField& field, std::string fault) {
    field.fault = std::move(fault);
    field.opened = true;
}

} // namespace steelyard::app
