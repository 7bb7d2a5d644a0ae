#pragma once
// A body in a pose with its resistances and supports, and the torque at every hinge.

#include "mechanics/body/support.h"
#include "mechanics/constants.h"
#include "mechanics/resistance/resistance.h"

#include <vector>

namespace steelyard::mechanics {

struct BodyCase {
    Body body;
    Pose pose;
    std::vector<Resistance> resistances; ///< up to kMaxResistances
    Support support = OnContacts{};
    double gravity_m_s2 = kStandardGravity; ///< downward along -y [m/s²], >= 0
};

/// The whole solution. Every number in it is finite.
///
/// External torque at a hinge: component along its axis of the sum of r × F over all that acts on
/// the distal side: the segments' weights, resistances, supports. Positive = it pushes the joint in
/// its positive direction. A weight in a hand held forward pushes the elbow into extension, so its
/// external torque is negative and the muscles must flex.
/// The other side of the joint gives the same torque with the opposite sign once its own supports
/// are counted; which side is cut free does not matter.
/// Muscle torque: what muscles, and passive tissue, must supply about the hinge, positive in the
/// hinge's positive direction: -external at rest; in motion also what accelerates the segments.
struct BodyResult {
    Placement placement;
    ForceList forces; ///< resistances in their order (a barbell: right, then left hand), supports
    PerHinge external_Nm{};
    PerHinge muscle_Nm{};
    /// Force of the proximal on the distal segment across each joint [N], world frame, muscles not
    /// counted (they add their own compression); by the number of the distal segment, pelvis zero.
    std::array<Vec3, kSegmentCount> joint_force_N;
    GroundReading ground;
    Vec3 centre_of_mass_m = Vec3::Zero(); ///< body alone, nothing carried
    /// What is left of force and moment balance of the whole body after all supports; zero unless
    /// the body would topple or lifts off, where no support can hold it.
    Vec3 leftover_force_N = Vec3::Zero();
    Vec3 leftover_couple_Nm = Vec3::Zero(); ///< about the middle of the hips

    double external(Hinge hinge) const { return external_Nm[index_of(hinge)]; }
    double muscle(Hinge hinge) const { return muscle_Nm[index_of(hinge)]; }
    const Vec3& joint_force(Segment distal) const { return joint_force_N[index_of(distal)]; }
};

/// Checks everything that does not depend on the pose: body, resistances, supports, gravity.
tl::expected<void, MechanicsError> check_case(const BodyCase& body_case);

/// Solves at rest. Does not allocate unless it returns an error.
/// @return the solution, or which input cannot be computed with. Loss of balance is an outcome
///         (result.ground), not an error.
/// Source: recursive Newton–Euler, Luh, Walker & Paul 1980 (from memory); statics is its case
/// without motion.
tl::expected<BodyResult, MechanicsError> solve_body(const BodyCase& body_case);

/// Solves in motion, by recursive Newton–Euler.
tl::expected<BodyResult, MechanicsError> solve_body(const BodyCase& body_case,
                                                    const Motion& motion);

/// What one force of the result does about a hinge. A force that does not act on the hinge's
/// distal side still has an arm; whether it counts in the torque, acts_distally says.
HingeArm arm_of(const BodyResult& result, std::size_t force, Hinge hinge);

/// True when the force acts on the distal side of the hinge, so that external_Nm contains it.
bool acts_distally(const BodyForce& force, Hinge hinge);

/// All that lies distal of a hinge taken as one weight.
struct WeightBeyond {
    Vec3 com_m = Vec3::Zero(); ///< where it acts [m]
    double weight_N = 0.0;     ///< straight down [N]
};
WeightBeyond weight_beyond(const BodyCase& body_case, const BodyResult& result, Hinge hinge);

/// What that weight does about the hinge.
HingeArm weight_arm(const BodyCase& body_case, const BodyResult& result, Hinge hinge);

} // namespace steelyard::mechanics
