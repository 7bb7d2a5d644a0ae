#include "app/bench/number_field.h"

#include "setup/format_quantity.h"

#include <imgui_stdlib.h>

namespace steelyard::app {

namespace {

using setup::Dimension;

/// What a bare number means: the unit in which the value is shown.
std::string shown_unit(const BenchModel& model, const LeverNumber& number) {
    const double value = value_of(model.state.handled(), number).value_or(0.0);
    return setup::format_quantity_parts(value, dimension_of(number.field), model.units).unit;
}

} // namespace

void open_field(NumberField& field, const BenchModel& model, const LeverNumber& number) {
    const std::optional<double> value = value_of(model.state.handled(), number);
    if (!value)
        return;
    field.number = number;
    field.text =
        setup::format_quantity(*value, dimension_of(number.field), model.units, {6, false});
    field.fault.clear();
    field.opened = true;
}

tl::expected<BenchIntent, std::string>
read_typed(const BenchModel& model, const LeverNumber& number, const std::string& text) {
    const std::string unit = shown_unit(model, number);
    setup::ReadingRules rules;
    rules.bare_unit = unit;
    rules.mass_as_force = number.field == LeverField::force;
    Dimension wanted = dimension_of(number.field);
    auto value = setup::parse_quantity(text, wanted, rules);
    if (!value)
        return tl::unexpected(setup::to_text(value.error()));
    return SetNumber{number, *value, 0};
}

std::optional<BenchIntent> draw_number_field(const Style& style, const BenchModel& model,
                                             ImVec2 corner, float width_px, NumberField& field) {
    if (!field.number)
        return std::nullopt;
    ImGui::SetCursorScreenPos(corner);
    ImGui::SetNextItemWidth(width_px);
    // A click beside all areas takes the keyboard away at the end of its frame: it is asked for in
    // the next one.
    if (field.opened && !ImGui::IsMouseClicked(ImGuiMouseButton_Left)) {
        ImGui::SetKeyboardFocusHere();
        field.opened = false;
    }
    const bool entered =
        ImGui::InputText("##number", &field.text,
                         ImGuiInputTextFlags_EnterReturnsTrue | ImGuiInputTextFlags_AutoSelectAll);
    const bool left = ImGui::IsItemDeactivated() && !entered;
    if (!field.fault.empty()) {
        ImDrawList& list = *ImGui::GetWindowDrawList();
        draw_paragraph(list, style, {scene::TextSize::caption, false, scene::Role::wrong},
                       {corner.x, corner.y + style.px(52.0F)}, style.px(420.0F), field.fault);
    }
    if (entered) {
        auto read = read_typed(model, *field.number, field.text);
        if (read) {
            field.number.reset();
            return *read;
        }
        field.fault = read.error();
        field.opened = true;
    } else if (left) {
        field.number.reset();
    }
    return std::nullopt;
}

} // namespace steelyard::app
