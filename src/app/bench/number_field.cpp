#include "app/bench/number_field.h"

namespace steelyard::app {

void open_field(NumberField& field, const BenchModel& model, const LeverNumber& number) {
    const std::optional<double> value = value_of(model.state.handled(), number);
    if (!value)
        return;
    field.name.reset();
    field.number = number;
    field.typed = open_typed(*value, dimension_of(number.field), model.units);
}

void open_name(NumberField& field, const BenchModel& model, const scene::LeverPart& part) {
    field.number.reset();
    field.name = part;
    field.typed = {name_of(model.state.setup.lever, part), {}, true, false};
}

tl::expected<BenchIntent, std::string>
read_typed(const BenchModel& model, const LeverNumber& number, const std::string& text) {
    const double shown_SI = value_of(model.state.handled(), number).value_or(0.0);
    const auto value = read_typed(text, shown_SI, dimension_of(number.field), model.units,
                                  number.field == LeverField::force);
    if (!value)
        return tl::unexpected(value.error());
    return SetNumber{number, *value, 0};
}

std::optional<BenchIntent> draw_number_field(const Style& style, const BenchModel& model,
                                             ImVec2 corner, float width_px, NumberField& field) {
    if (!field.is_open())
        return std::nullopt;
    const TypedEnd end = draw_typed_field(style, corner, width_px, field.typed);
    if (end == TypedEnd::left) {
        field.number.reset();
        field.name.reset();
    }
    if (end != TypedEnd::entered)
        return std::nullopt;
    if (field.name) {
        const NamePart intent{*field.name, field.typed.text};
        field.name.reset();
        return intent;
    }
    auto read = read_typed(model, *field.number, field.typed.text);
    if (!read) {
        refuse_typed(field.typed, std::move(read.error()));
        return std::nullopt;
    }
    field.number.reset();
    return *read;
}

} // namespace steelyard::app
