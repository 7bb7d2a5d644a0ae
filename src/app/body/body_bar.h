#pragma once
// The numbers of the chosen grip, under the heading: press one to type it.

#include "app/body/body_input.h"
#include "app/widgets/typed_field.h"

namespace steelyard::app {

/// A number of the exercise being typed.
struct BodyNumberField {
    std::optional<BodyNumber> number; ///< empty = nothing is being typed
    TypedField typed;
};

/// Starts typing a number: its present value stands selected in the field.
void open_field(BodyNumberField& field, const BodyModel& model, const BodyNumber& number,
                setup::UnitSystem units);

/// Draws the bar with its left end at the corner; with nothing chosen it shows the first load.
std::optional<BodyIntent> draw_body_bar(const Style& style, const BodyModel& model,
                                        setup::UnitSystem units, const scene::Point& corner_px,
                                        double width_px, const std::optional<BodyPart>& chosen,
                                        BodyNumberField& field);

} // namespace steelyard::app
