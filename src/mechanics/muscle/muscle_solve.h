#pragma once
// From the torque asked of a joint to the forces of its muscles and of the joint's surfaces.
//
// A muscle only pulls. When the torque asked of a group goes the other way, the group is silent and
// its antagonists must work: an outcome, not an error.

#include "mechanics/muscle/free_body.h"
#include "mechanics/muscle/muscle.h"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <vector>

namespace steelyard::mechanics {

/// How the muscles of a group share a torque. With arm a, cross-section A and tension T:
enum class SharingRule {
    equal_stress,         ///< T in proportion to A; so the torques share out as a·A
    least_squared_stress, ///< T in proportion to a·A²: the smallest sum of (T/A)²
    equal_force,          ///< the same T in each
};

/// The rule that is used where nobody chooses one: equal_stress when every muscle with an arm
/// states a cross-section, else equal_force. Whoever shows a result names the rule beside it.
SharingRule usual_sharing(const std::vector<Muscle>& muscles);

/// How the group answers the torque.
enum class MuscleOutcome {
    balanced,         ///< the group pulls and the joint is in balance
    no_torque,        ///< nothing to hold: the group rests
    antagonists_work, ///< the torque asked goes the other way: muscles cannot push
    no_arm,           ///< every muscle of the group passes through the axis
    not_modelled,     ///< a main mover is missing from the data: no force is said
    /// A muscle would have to pull harder than its cross-section can: its tension is what balance
    /// asks for, and no result.
    beyond_cross_section,
};

/// Which movers are missing where a movement is not modelled.
struct MissingMovers {
    std::string action; ///< "horizontal adduction"; empty: no mover of this movement is known
    std::vector<std::string> without_arms;   ///< no moment arm of theirs is on file
    std::vector<std::string> arms_elsewhere; ///< their arms were measured in other poses
};

/// One muscle's part.
struct MuscleReading {
    std::string muscle;
    double arm_m = 0.0;     ///< signed [m]
    double tension_N = 0.0; ///< >= 0
    /// From-to over the range of moment arms, all arms of the group long or all short; empty when
    /// the arms' range reaches the axis, so that no largest force can be stated.
    std::optional<Interval> tension_range_N;
    std::optional<double> most_N;   ///< that its cross-section can give [N]; empty: not known
    double torque_Nm = 0.0;         ///< about the axis, positive about its direction
    std::optional<PullParts> parts; ///< empty when its line is not known
};

/// The group and the joint solved.
struct MuscleSolution {
    MuscleOutcome outcome = MuscleOutcome::balanced;
    double torque_asked_Nm = 0.0;       ///< of the muscles, positive about the axis's direction
    std::vector<MuscleReading> muscles; ///< one for each pull, in its order
    MissingMovers missing;              ///< for not_modelled
    /// Force of the other bone (and ligaments) on the free body; empty when the direction of a
    /// working muscle is not known, and where the outcome is neither balanced nor no_torque.
    std::optional<Vec3> joint_reaction_N;
    /// Size of the joint reaction [N], from-to over the range of moment arms and, for muscles
    /// without a line, over all directions of pull; empty like tension_range_N.
    std::optional<Interval> joint_reaction_range_N;
};

/// Shortest moment arm that counts [m]. One millimetre is well below what the sources can tell
/// apart: their spread between people is 1.3 mm and more.
inline constexpr double kShortestArm_m = 1.0e-3;

/// A torque below it is none [N·m]: a grain of sand on an arm of a metre.
inline constexpr double kNothingAsked_Nm = 1.0e-9;

/// Solves a group of muscles for a demand.
/// @param pulls muscles of one group at this place of the joint, one or more
/// @param axis  by which the pulls are split into turning and compressing parts
/// @return the solution, or why it cannot be computed: no muscle, an arm that is not finite, a rule
///         that needs a cross-section which a muscle lacks
/// Source: tension = torque / moment arm and joint reaction = -(sum of all other forces), OpenStax
/// College Physics 2e, section 9.6. The sharing rules are definitions; least_squared_stress is the
/// closed form of its minimum under the torque balance (Lagrange).
tl::expected<MuscleSolution, MechanicsError> solve_muscles(const JointDemand& demand,
                                                           const std::vector<Pull>& pulls,
                                                           SharingRule rule, const JointAxis& axis);

/// The same pulls where the movement is not modelled: their arms, and no force.
MuscleSolution not_modelled(const JointDemand& demand, const std::vector<Pull>& pulls,
                            MissingMovers missing);

/// The same for a free body.
tl::expected<MuscleSolution, MechanicsError>
solve_muscles(const FreeBody& body, const std::vector<Pull>& pulls, SharingRule rule);

} // namespace steelyard::mechanics
