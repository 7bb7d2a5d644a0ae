#pragma once
// Typing one number of the lever, with a unit, where it is shown.

#include "app/bench/bench_model.h"
#include "app/widgets/typed_field.h"

#include <optional>
#include <string>

namespace steelyard::app {

/// A number, or the name of a part, being typed.
struct NumberField {
    std::optional<LeverNumber> number;    ///< empty = no number is being typed
    std::optional<scene::LeverPart> name; ///< of this part; empty = no name is being typed
    TypedField typed;

    bool is_open() const { return number || name; }
};

/// Starts typing a number: its present value stands selected in the field.
void open_field(NumberField& field, const BenchModel& model, const LeverNumber& number);

/// Starts typing the name of a load or of the effort.
void open_name(NumberField& field, const BenchModel& model, const scene::LeverPart& part);

/// Reads a typed number for the lever.
/// @return the intent, or a sentence saying what is wrong and what to do
tl::expected<BenchIntent, std::string>
read_typed(const BenchModel& model, const LeverNumber& number, const std::string& text);

/// Draws the field and its fault; Enter accepts, Escape leaves it.
std::optional<BenchIntent> draw_number_field(const Style& style, const BenchModel& model,
                                             ImVec2 corner, float width_px, NumberField& field);

} // namespace steelyard::app
