#pragma once
// A force on the body in space: where, how strong, whence; and what it does about a hinge.

#include "mechanics/body/kinematics.h"

#include <array>
#include <cassert>
#include <cstddef>

namespace steelyard::mechanics {

/// What makes a force.
enum class ForceOrigin : unsigned char {
    resistance, ///< index: which of the setup's resistances
    contact,    ///< index: which of the setup's contacts
    steadying,  ///< a light touch that supplies what balance lacks; index 0
    held,       ///< the seat, bench or frame that holds a segment; index 0
};

/// A force and a couple on a segment, world frame.
struct BodyForce {
    Segment segment = Segment::pelvis;
    ForceOrigin origin = ForceOrigin::resistance;
    unsigned char index = 0;       ///< which one of its kind
    Vec3 point_m = Vec3::Zero();   ///< where it acts [m]
    Vec3 force_N = Vec3::Zero();   ///< [N]
    Vec3 couple_Nm = Vec3::Zero(); ///< free couple besides the force [N·m]
};

/// Most resistances at once, and forces they and the contacts can make.
inline constexpr std::size_t kMaxResistances = 12;
inline constexpr std::size_t kMaxContacts = 6;
inline constexpr std::size_t kMaxForces = 2 * kMaxResistances + kMaxContacts + 2;

/// Forces in a list that lives on the stack.
class ForceList {
public:
    void push_back(const BodyForce& force) {
        assert(count_ < kMaxForces);
        forces_[count_++] = force;
    }
    void clear() { count_ = 0; }
    std::size_t size() const { return count_; }
    const BodyForce& operator[](std::size_t i) const { return forces_[i]; }
    BodyForce& operator[](std::size_t i) { return forces_[i]; }
    const BodyForce* begin() const { return forces_.data(); }
    const BodyForce* end() const { return forces_.data() + count_; }

private:
    std::array<BodyForce, kMaxForces> forces_;
    std::size_t count_ = 0;
};

/// A force seen from a hinge.
struct HingeArm {
    /// Moment arm [m], >= 0: distance from the hinge's axis to the force's line of action, both
    /// seen along the axis (in the plane normal to it). A line that crosses or parallels the axis
    /// has none.
    double arm_m = 0.0;
    double force_in_plane_N = 0.0; ///< the part of the force in that plane [N], >= 0
    /// Torque about the axis, positive in the hinge's positive direction [N·m]; its size is
    /// arm × force in plane, the free couple left out.
    double torque_Nm = 0.0;
    Vec3 foot_m = Vec3::Zero(); ///< foot of the perpendicular from the joint to the line of action
};

/// @param axis_point_m  a point of the axis; @param axis  its unit vector
/// Source: definition; the torque of a force about an axis is axis · (r × F).
HingeArm arm_about(const Vec3& axis_point_m, const Vec3& axis, const Vec3& point_m,
                   const Vec3& force_N);

} // namespace steelyard::mechanics
