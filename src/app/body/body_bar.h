#pragma once
// The numbers of the chosen grip, under the heading: press one to type it.

#include "app/body/body_input.h"
#include "app/kept.h"
#include "app/widgets/typed_field.h"

namespace steelyard::app {

/// A part's name and its numbers as they are read.
struct PartWords {
    struct Number {
        BodyNumber number;
        std::string name;
        std::string value;
    };
    std::string name;
    std::vector<Number> numbers;
};
struct PartWordsFrom {
    BodyStamp model;
    BodyPart part;
    setup::UnitSystem units = setup::UnitSystem::si;

    bool operator==(const PartWordsFrom&) const = default;
};

/// The numbers of a part between frames.
struct BodyNumberField {
    std::optional<BodyNumber> number; ///< that is being typed; empty = none
    TypedField typed;
    Kept<PartWordsFrom, PartWords> words;
    /// Lower right corner of the numbers when they were last drawn: they may take several rows.
    scene::Point end_px = scene::Point::Zero();
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
