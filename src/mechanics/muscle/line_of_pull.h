#pragma once
// The line along which a muscle pulls on the free body. Two conventions, kept apart by name:
//   AttachmentLine  from the insertion to the origin, so its angle to the bone changes as the joint
//                   turns (with an optional cylinder about the joint to wrap around);
//   FixedAngleLine  at a stated angle to the bone, whatever the joint does.
// They give different forces for the same exercise: with the muscle fixed upright the biceps force
// of a held load does not depend on the elbow angle, with the muscle fixed at 90° to the forearm it
// falls with the cosine of the forearm's slope.

#include "mechanics/error.h"
#include "mechanics/muscle/free_body.h"

#include <tl/expected.hpp>

#include <optional>
#include <variant>

namespace steelyard::mechanics {

/// Which way a muscle turns the joint.
enum class TurnSense { positive = 1, negative = -1 };

/// A cylinder about the joint's axis that the muscle cannot cut through (the condyles, the
/// trochlea).
struct WrapCylinder {
    double radius_m = 0.0; ///< [m], > 0; both attachments lie outside it
    /// The side on which the muscle passes the axis, told by the way it turns the joint there.
    TurnSense side = TurnSense::positive;
};

/// Convention "attachment points": the shortest path from insertion to origin, world frame.
struct AttachmentLine {
    Vec3 origin_m = Vec3::Zero();    ///< on the bone that stays
    Vec3 insertion_m = Vec3::Zero(); ///< on the free body
    std::optional<WrapCylinder> wrap;
};

/// Convention "fixed angle to the bone", world frame.
struct FixedAngleLine {
    Vec3 insertion_m = Vec3::Zero(); ///< on the free body
    /// Angle between the pull and the line from the insertion to the axis [rad], from 0 to π: 90°
    /// turns only, 0 presses the bone straight into the joint.
    double angle_to_bone_rad = 0.5 * kPi;
    TurnSense turns = TurnSense::positive;
};

using LineOfPull = std::variant<AttachmentLine, FixedAngleLine>;

/// The axis of a joint, world frame. Its angle grows, and torques are positive, about the
/// direction by the right-hand rule.
struct JointAxis {
    Vec3 point_m = Vec3::Zero();
    Vec3 direction = Vec3::UnitZ(); ///< unit
};

/// The line at one place of the joint.
struct PlacedLine {
    Vec3 insertion_m = Vec3::Zero(); ///< where it pulls on the free body
    Vec3 direction = Vec3::UnitY();  ///< unit; the way it pulls the insertion
    double arm_m = 0.0;    ///< torque about the axis for 1 N of tension: signed moment arm [m]
    double length_m = 0.0; ///< of the path from insertion to origin; 0 for a fixed angle
    bool wrapped = false;  ///< the path lies on the cylinder for part of its way
};

/// Places a line of pull.
/// @return the line, or why there is none: an attachment that is not finite, insertion and origin
///         in one place, an insertion on the axis, an attachment inside the cylinder, an angle
///         outside 0 to 180°
/// Source: taut string about a cylinder; its arm is minus the change of its length with the joint
/// angle (tendon excursion, An et al., J Biomech Eng 106:280, 1984; from memory). The tests check
/// the arm against that derivative.
tl::expected<PlacedLine, MechanicsError> place_line(const LineOfPull& line, const JointAxis& axis);

/// A pull split at its insertion, for a bone that runs from the insertion to the axis.
struct PullParts {
    double turning_N = 0.0;     ///< across the bone, in the plane of movement, >= 0
    double compressing_N = 0.0; ///< along the bone into the joint; negative pulls it out
    double sideways_N = 0.0;    ///< along the axis, signed by the axis's direction
};

/// Parts of a tension along a placed line.
/// Source: components of a vector; OpenStax College Physics 2e, section 9.6.
PullParts parts_of_pull(const PlacedLine& line, double tension_N, const JointAxis& axis);

} // namespace steelyard::mechanics
