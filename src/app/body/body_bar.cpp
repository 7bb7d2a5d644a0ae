#include "app/body/body_bar.h"

#include "app/widgets/area.h"
#include "app/widgets/chip.h"
#include "setup/units/format_quantity.h"

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

/// Places for chips beside each other behind a name, in further rows where one is full.
class ChipRow {
public:
    ChipRow(ImVec2 corner, float first_px, float right, const Style& style)
        : corner_(corner), at_{corner.x + first_px, corner.y}, first_(at_.x), right_(right),
          gap_(style.px(8.0F)), row_(style.px(38.0F)), far_(at_.x) {}

    /// Where the next chip goes.
    ImVec2 next(float width_px) {
        if (at_.x > first_ && at_.x + width_px > right_)
            at_ = {first_, at_.y + row_};
        const ImVec2 here = at_;
        at_.x += width_px + gap_;
        far_ = std::max(far_, at_.x);
        return here;
    }
    /// Of all places so far.
    ImVec2 size_px() const { return {far_ - corner_.x, at_.y + row_ - corner_.y}; }

private:
    ImVec2 corner_;
    ImVec2 at_;
    float first_;
    float right_;
    float gap_;
    float row_;
    float far_;
};

/// A load's numbers and those of where it is fixed stand beside each other.
PartWords part_words(const BodyModel& model, const BodyPart& part, setup::UnitSystem units) {
    std::vector<BodyNumber> numbers = numbers_of(model.exercise(), part);
    if (part.kind == BodyPartKind::load)
        for (const BodyNumber& place :
             numbers_of(model.exercise(), {BodyPartKind::fixture, part.index}))
            numbers.push_back(place);
    PartWords words{name_of(model.exercise(), part), {}};
    for (const BodyNumber& number : numbers)
        words.numbers.push_back(
            {number, name_of(model.exercise(), number),
             setup::format_quantity(value_of(model.standing(), number).value_or(0.0),
                                    dimension_of(model.exercise(), number), units)});
    return words;
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
    const PartWords& words = field.words.of({model.stamp(), part, units},
                                            [&] { return part_words(model, part, units); });
    if (words.numbers.empty())
        return std::nullopt;
    const TextStyle name_style{TextSize::caption, false, Role::quiet_ink};
    const auto left = static_cast<float>(corner_px.x());
    const auto right = static_cast<float>(corner_px.x() + width_px);
    const float first_px = text_width(style, name_style, words.name) + style.px(10.0F);
    const auto width_of = [&](const PartWords::Number& one) {
        return field.number == one.number ? style.px(kField_px)
                                          : chip_width(style, one.name, one.value);
    };
    // No larger than what it holds: the rest of the stage is for the hand.
    ChipRow extent({left, static_cast<float>(corner_px.y())}, first_px, right, style);
    for (const PartWords::Number& one : words.numbers)
        extent.next(width_of(one));
    ImVec2 size_px = extent.size_px();
    field.end_px = corner_px + scene::Point(size_px.x, size_px.y);
    if (field.number) // a fault is told in a sentence
        size_px = {std::max(size_px.x, style.px(440.0F)), size_px.y + style.px(112.0F)};
    begin_area("part", corner_px, {size_px.x, size_px.y});
    draw_text(*ImGui::GetWindowDrawList(), style, name_style,
              {left, static_cast<float>(corner_px.y()) + style.px(22.0F)}, words.name);
    ChipRow row({left, static_cast<float>(corner_px.y())}, first_px, right, style);
    std::optional<BodyIntent> intent;
    for (const PartWords::Number& one : words.numbers) {
        const ImVec2 at = row.next(width_of(one));
        if (field.number == one.number)
            intent = draw_field(style, model, units, at, field);
        else if (draw_chip(style, at, one.name, one.value).pressed)
            open_field(field, model, one.number, units);
    }
    end_area();
    return intent;
}

} // namespace steelyard::app
