#pragma once
// Where every segment and every hinge axis is, and how it moves.

#include "mechanics/body/pose.h"

#include <Eigen/Geometry>

#include <array>

namespace steelyard::mechanics {

/// Place of a segment in the world.
struct SegmentFrame {
    Mat3 rotation = Mat3::Identity(); ///< columns: the segment's axes in the world
    Vec3 joint_m = Vec3::Zero();      ///< its proximal joint [m]
    Vec3 com_m = Vec3::Zero();        ///< its centre of mass [m]

    Vec3 at(const Vec3& local_m) const { return joint_m + rotation * local_m; }
};

struct Placement {
    std::array<SegmentFrame, kSegmentCount> segments;
    /// Unit vector of each hinge's axis in the world; a positive angle turns the distal segment
    /// about it by the right-hand rule.
    std::array<Vec3, kHingeCount> axes;

    const SegmentFrame& operator[](Segment segment) const { return segments[index_of(segment)]; }
    const Vec3& axis(Hinge hinge) const { return axes[index_of(hinge)]; }
    /// A point of the hinge's axis [m]: the joint.
    const Vec3& axis_point_m(Hinge hinge) const;
};

/// Velocity and acceleration of the segments, world frame.
struct SegmentMotion {
    Vec3 angular_velocity_rad_s = Vec3::Zero();
    Vec3 angular_acceleration_rad_s2 = Vec3::Zero();
    Vec3 joint_velocity_m_s = Vec3::Zero();      ///< of the proximal joint
    Vec3 joint_acceleration_m_s2 = Vec3::Zero(); ///< of the proximal joint, gravity not included
};
using BodyMotion = std::array<SegmentMotion, kSegmentCount>;

/// Forward kinematics. The pose must have passed check_pose. Does not allocate.
Placement place(const Body& body, const Pose& pose);
/// The same into a placement that is used again.
void place(const Body& body, const Pose& pose, Placement& placement);

/// Velocities and accelerations with the anchored segment at rest. Does not allocate.
BodyMotion move(const Pose& pose, const Placement& placement, const Motion& motion);
/// The same into a motion that is used again.
void move(const Pose& pose, const Placement& placement, const Motion& motion, BodyMotion& moving);

/// Acceleration of a point fixed to a segment [m/s²].
Vec3 acceleration_at(const SegmentFrame& frame, const SegmentMotion& motion, const Vec3& point_m);

/// Centre of mass of the whole body, nothing carried [m].
Vec3 centre_of_mass(const Body& body, const Placement& placement);

} // namespace steelyard::mechanics
