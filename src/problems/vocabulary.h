#pragma once
// The names of quantities that every family shares: what a setup's solution provides, and what the
// givens are called. question_bank/README.md lists them for instructors.

#include "setup/units.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::problems {

/// What a solved lever provides. Torques, forces and arms are sizes, never negative, but for the
/// parts of the reaction.
enum class LeverQuantity {
    force,        ///< of a load, the own weight or the effort [N]
    arm,          ///< moment arm about the axis [m]
    distance,     ///< straight from the axis to the point where it acts [m]
    torque,       ///< about the axis [N·m]
    to_effort,    ///< of a load: straight from its point to the effort's [m]
    total_torque, ///< of all loads and the own weight [N·m]
    axis_force,
    axis_force_x,
    axis_force_y,
    ideal_advantage,
    actual_advantage,
    lever_class, ///< 1, 2 or 3; a setup without a class makes no question
    efficiency,
};

/// Which force of the lever a quantity belongs to.
struct LeverPart {
    enum class Is { load, own_weight, effort, whole } is = Is::whole;
    std::size_t load = 0; ///< index, when it is a load
};

/// A quantity that a solved lever provides.
struct Provided {
    LeverPart part;
    LeverQuantity quantity = LeverQuantity::force;
};

/// A quantity of the vocabulary.
struct Term {
    std::string name;   ///< "load_2_arm"
    std::string symbol; ///< "d_load2"
    setup::Dimension dimension = setup::Dimension::number;
    std::string words;                ///< "the moment arm of the second load"
    std::optional<Provided> provided; ///< empty = only drawn or computed by families
};

/// Every term, in the order of the README's table.
const std::vector<Term>& vocabulary();

const Term* find_term(std::string_view name);

} // namespace steelyard::problems
