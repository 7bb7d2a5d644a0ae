#include "app/body/body_bar.h"

#include "app/widgets/area.h"
#include "app/widgets/chip.h"
#include "setup/format_quantity.h"

#include <algorithm>

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

constexpr float kField_px = 130.0F;

std::optional<BodyIntent> draw_field(const Style& style, const BodyModel& model,
                                     setup::UnitSystem units, ImVec2 corner,
                                     BodyNumberField& field) {
    const TypedEnd end = draw_typed_field(style, corner, style.px(kField_px), field.typed);
    if (end == TypedEnd::left)
        field.number.reset();
    if (end != TypedEnd::entered)
        return std::nullopt;
    const BodyNumber number = *field.number;
    const setup::Dimension dimension = dimension_of(model.exercise(), number);
    auto value = read_typed(field.typed.text, value_of(model.standing(), number).value_or(0.0),
                            dimension, units, dimension == setup::Dimension::force);
    if (!value) {
        refuse_typed(field.typed, std::move(value.error()));
        return std::nullopt;
    }
    field.number.reset();
    return SetBodyNumber{number, *value, 0};
}

/// What the bar shows: the part that is typed in, else the chosen one, else the first load.
BodyPart shown_part(const std::optional<BodyPart>& chosen, const BodyNumberField& field) {
    if (field.number)
        return field.number->part;
    return chosen.value_or(BodyPart{BodyPartKind::load, 0});
}

} // namespace

void open_field(BodyNumberField& field, const BodyModel& model, const BodyNumber& number,
                setup::UnitSystem units) {
    const std::optional<double> value = value_of(model.standing(), number);
    if (!value)
        return;
    field.number = number;
    field.typed = open_typed(*value, dimension_of(model.exercise(), number), units);
}

std::optional<BodyIntent> draw_body_bar(const Style& style, const BodyModel& model,
                                        setup::UnitSystem units, const scene::Point& corner_px,
                                        double width_px, const std::optional<BodyPart>& chosen,
                                        BodyNumberField& field) {
    if (field.number && !value_of(model.standing(), *field.number))
        field.number.reset(); // its part went while it was being typed
    const BodyPart part = shown_part(chosen, field);
    std::vector<BodyNumber> numbers = numbers_of(model.exercise(), part);
    if (part.kind == BodyPartKind::load)
        for (const BodyNumber& place :
             numbers_of(model.exercise(), {BodyPartKind::fixture, part.index}))
            numbers.push_back(place);
    if (numbers.empty())
        return std::nullopt;
    const std::string name = name_of(model.exercise(), part);
    const TextStyle name_style{TextSize::caption, false, Role::quiet_ink};
    const auto shown = [&](const BodyNumber& number) {
        return setup::format_quantity(value_of(model.standing(), number).value_or(0.0),
                                      dimension_of(model.exercise(), number), units);
    };
    // No wider than what it holds: the rest of the stage is for the hand.
    float needed_px = text_width(style, name_style, name) + style.px(10.0F);
    for (const BodyNumber& number : numbers)
        needed_px +=
            chip_width(style, name_of(model.exercise(), number), shown(number)) + style.px(8.0F);
    if (field.number)
        needed_px = std::max(needed_px, style.px(440.0F)); // a fault is told in a sentence
    needed_px = std::min(needed_px, static_cast<float>(width_px));
    begin_area("part", corner_px, {needed_px, style.px(field.number ? 150.0F : 38.0F)});
    ImDrawList& list = *ImGui::GetWindowDrawList();
    ImVec2 at{static_cast<float>(corner_px.x()), static_cast<float>(corner_px.y())};
    const auto right = static_cast<float>(corner_px.x() + width_px);
    at.x +=
        draw_text(list, style, name_style, {at.x, at.y + style.px(22.0F)}, name) + style.px(10.0F);
    std::optional<BodyIntent> intent;
    for (const BodyNumber& number : numbers) {
        if (at.x > right - style.px(90.0F))
            break;
        if (field.number == number) {
            intent = draw_field(style, model, units, at, field);
            at.x += style.px(kField_px + 8.0F);
            continue;
        }
        const ChipOutcome chip =
            draw_chip(style, at, name_of(model.exercise(), number), shown(number));
        if (chip.pressed)
            open_field(field, model, number, units);
        at.x += chip.width_px + style.px(8.0F);
    }
    end_area();
    return intent;
}

} // namespace steelyard::app
