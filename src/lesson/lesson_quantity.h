#pragma once
// The quantities that a lesson may name instead of writing a number: "{effort}", "{torque
// lumbar_flexion}", "{muscle over load}". The solver gives them, so that a lesson never holds a
// number that could be wrong.

#include "lesson/lesson.h"
#include "mechanics/lever/lever_solve.h"
#include "mechanics/muscle/muscle.h"
#include "setup/units/format_quantity.h"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace steelyard::lesson {

/// A stage solved: all that its quantities need.
struct SolvedStage {
    const LessonStage* stage = nullptr; ///< must outlive this
    mechanics::LeverResult lever;       ///< of a lever
    mechanics::BodyCase posed;          ///< of a body: the case in the stage's pose
    mechanics::BodyResult body;         ///< of a body

    bool is_lever() const { return std::holds_alternative<setup::LeverSetup>(stage->setup); }
    const setup::LeverSetup& lever_setup() const {
        return std::get<setup::LeverSetup>(stage->setup);
    }
    const setup::BodySetup& body_setup() const { return std::get<setup::BodySetup>(stage->setup); }
    mechanics::Hinge axis() const { return body_setup().axes[stage->axis]; }
};

/// Solves a stage, or says which input cannot be computed with.
tl::expected<SolvedStage, mechanics::MechanicsError> solve_stage(const LessonStage& stage);

/// What a quantity is read from: the step's stage, the one before it if there is one, and the
/// muscles that are known.
struct QuantitySource {
    const SolvedStage* now = nullptr;
    const SolvedStage* before = nullptr;
    const std::vector<mechanics::Muscle>* muscles = nullptr;
};

/// A quantity's value: a number of some kind [SI], or a word such as "second class".
struct QuantityValue {
    std::optional<double> value_SI;
    setup::Dimension dimension = setup::Dimension::number;
    std::string word;
};

/// Reads a quantity by its name in a lesson. Sizes are without sign.
/// @return its value, or a full sentence about what is wrong with the name
tl::expected<QuantityValue, std::string> read_quantity(std::string_view name,
                                                       const QuantitySource& source);

/// A quantity for reading: "231 N", "second class".
setup::QuantityText quantity_text(const QuantityValue& quantity, setup::UnitSystem units);

/// What a quantity is called in a sentence: "effort", "low back torque".
std::string spoken_name(std::string_view name, const QuantitySource& source);

/// A text with its quantities filled in: "{effort}" from the solver, "{12 cm|5 in}" what is written
/// for either unit system.
/// @return the text, or a full sentence about the first name that is wrong
tl::expected<std::string, std::string>
filled_text(std::string_view text, const QuantitySource& source, setup::UnitSystem units);

/// Which of the choices of a prediction is right; empty where none is said to be.
/// @return its index, or a full sentence about why there is none
tl::expected<std::optional<std::size_t>, std::string>
right_choice(const Prediction& prediction, const QuantitySource& source, setup::UnitSystem units);

/// Every quantity of levers or of bodies, for lists to choose from.
std::vector<std::string_view> quantity_names(bool lever);

} // namespace steelyard::lesson
