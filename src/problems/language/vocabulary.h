#pragma once
// The names of quantities that every family shares: what a setup's solution provides, and what the
// givens are called. question_bank/README.md lists them for instructors.

#include "setup/units/units.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::problems {

/// What a solved setup provides. Torques, forces and arms are sizes, never negative, but for the
/// parts of the reaction.
enum class SetupQuantity {
    force,        ///< of a load, a weight or the effort [N]
    arm,          ///< moment arm about the axis [m]
    distance,     ///< straight from the axis to the point where it acts [m]
    torque,       ///< about the axis [N·m]
    to_effort,    ///< of a load: straight from its point to the effort's [m]
    total_torque, ///< of all loads and weights [N·m]
    // of a lever
    axis_force,
    axis_force_x,
    axis_force_y,
    ideal_advantage,
    actual_advantage,
    lever_class, ///< 1, 2 or 3; a setup without a class makes no question
    efficiency,
    // of a part of the body
    mass,   ///< [kg]
    length, ///< from joint to joint [m]
    centre, ///< from its upper joint (trunk: from the low back) to its centre of mass [m]
    angle,  ///< between its line and the horizontal, as it is seen [rad], 0 to a right angle
};

/// Parts of the body, each as its tables and textbooks name it; left and right alike.
enum class BodyPart { pelvis, trunk, head, upper_arm, forearm, hand, thigh, shank, foot };
inline constexpr std::size_t kBodyParts = 9;

/// Joints that a body setup can call an axis.
enum class BodyAxis { shoulder, elbow, wrist, hip, knee, ankle, low_back, neck };
inline constexpr std::size_t kBodyAxes = 8;

/// "upper_arm", "low_back": how a family file spells it.
std::string_view name_of(BodyPart part);
std::string_view name_of(BodyAxis axis);
/// "upper arm", "low back": for people.
std::string words_of(BodyPart part);
std::string words_of(BodyAxis axis);

/// Which force of the setup a quantity belongs to.
struct SetupPart {
    enum class Is { load, own_weight, effort, whole, body_part } is = Is::whole;
    std::size_t load = 0;            ///< index, when it is a load
    BodyPart body = BodyPart::trunk; ///< when it is a part of the body
};

/// A quantity that a solved setup provides.
struct Provided {
    SetupPart part;
    SetupQuantity quantity = SetupQuantity::force;
    std::optional<BodyAxis> about; ///< of a body: about this joint; empty = about the first axis
};

/// A quantity of the vocabulary.
struct Term {
    std::string name;   ///< "load_2_arm"
    std::string symbol; ///< "d_load2"
    setup::Dimension dimension = setup::Dimension::number;
    std::string words;                ///< "the moment arm of the second load"
    std::optional<Provided> provided; ///< empty = only drawn or computed by families
};

/// Every term, in the order of the README's table; those of the body behind those of a lever.
const std::vector<Term>& vocabulary();

const Term* find_term(std::string_view name);

} // namespace steelyard::problems
