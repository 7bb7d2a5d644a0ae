#pragma once
// A part of the body cut free at a joint: everything that acts on it from outside, and what the
// muscles and the bones across the cut must therefore supply.
//
// Any right-handed frame; in the plane examples x to the right, y up and the axis along +z, so that
// counter-clockwise is positive.

#include "mechanics/constants.h"
#include "mechanics/error.h"

#include <Eigen/Core>
#include <tl/expected.hpp>

#include <string>
#include <vector>

namespace steelyard::mechanics {

using Vec3 = Eigen::Vector3d;

/// A segment of the free body: its weight acts at its centre of mass.
struct SegmentWeight {
    std::string name;
    double mass_kg = 0.0;                  ///< [kg], >= 0
    Vec3 centre_m = Vec3::Zero();          ///< centre of mass
    Vec3 acceleration_m_s2 = Vec3::Zero(); ///< of the centre of mass; zero at rest
    bool beyond_bone = false;              ///< as in NamedForce
};

/// A known force on the free body: a dumbbell, the ground, another joint's contact.
struct NamedForce {
    std::string name;
    Vec3 point_m = Vec3::Zero();
    Vec3 force_N = Vec3::Zero();
    /// It acts on a part beyond the far end of the bone that works as the lever, and reaches that
    /// bone at this end: its place in the order along the bone.
    bool beyond_bone = false;
};

/// How the class of a joint's lever is read off.
enum class LeverBar {
    bone,     ///< the order of places along the long axis of the bone
    vertebra, ///< across the spine: its muscles run beside it, on one side of the disc
};

/// What is cut free, and about which axis its balance is asked.
struct FreeBody {
    std::string name = "forearm and hand"; ///< says which part of the body is meant
    Vec3 axis_m = Vec3::Zero();            ///< a point of the joint's axis
    Vec3 axis_direction = Vec3::UnitZ();   ///< unit; torques positive about it
    /// Long axis of the bone that works as the lever, unit; the order of axis, effort and load is
    /// read along it. Either sense.
    Vec3 along = Vec3::UnitX();
    double bone_m = 0.0; ///< from the joint to the bone's far end, where loads beyond it act
    LeverBar bar = LeverBar::bone;
    std::vector<SegmentWeight> segments;
    std::vector<NamedForce> loads;
    /// Couple on the free body [N·m]: a held twist, or minus the rate of change of the segments'
    /// angular momentum when it moves.
    Vec3 couple_Nm = Vec3::Zero();
    Vec3 gravity_m_s2{0.0, -kStandardGravity, 0.0}; ///< acceleration of free fall, pointing down
};

/// What must come across the cut so that the free body moves as stated (at rest: not at all).
struct JointDemand {
    double torque_Nm = 0.0;      ///< of the muscles about the axis, positive about its direction
    Vec3 force_N = Vec3::Zero(); ///< of muscles and joint contact together, on the free body
};

/// What is left over of a set of forces: both parts zero in equilibrium.
struct Resultant {
    Vec3 force_N = Vec3::Zero();
    Vec3 torque_Nm = Vec3::Zero(); ///< about the point asked for
};

/// Resultant of forces about a point: ΣF and Σ r × F.
Resultant resultant_about(const Vec3& point_m, const std::vector<NamedForce>& forces);

/// Every force on the free body but those across the cut: weights (less mass × acceleration) first,
/// then the loads.
std::vector<NamedForce> outside_forces(const FreeBody& body);

/// Demand on muscles and joint: minus the outside forces' torque about the axis and minus their
/// sum.
/// @return the demand, or which input cannot be computed with: not finite, a negative mass, an axis
///         or long axis that is not a unit vector
/// Source: Newton's second law for the free body; at rest the two conditions of equilibrium,
/// OpenStax College Physics 2e, sections 9.1 and 9.2.
tl::expected<JointDemand, MechanicsError> demand_on_joint(const FreeBody& body);

} // namespace steelyard::mechanics
