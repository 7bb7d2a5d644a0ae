#pragma once
// Places, moment arms and torques in the plane of the lever.

#include "mechanics/lever/lever.h"

namespace steelyard::mechanics {

/// A force in the plane: where it acts and what it is, world frame.
struct AppliedForce {
    Vec2 point_m = Vec2::Zero();
    Vec2 force_N = Vec2::Zero();
};

/// Unit vector of a direction, counter-clockwise from +x [rad].
Vec2 unit_vector(double direction_rad);

/// Length of a path along its corners [m].
double path_length(const std::vector<Vec2>& path_m);

/// Point of the lever at a distance along it [m]. The path has two corners or more; a distance
/// before the start or past the end is taken to the nearer end.
Vec2 point_at(const std::vector<Vec2>& path_m, double at_m);

/// Distance along the path of the place that lies nearest to a point [m].
double nearest_at(const std::vector<Vec2>& path_m, const Vec2& point_m);

/// Centre of mass of a uniform lever: centroid of the path [m]. Not on the lever when it is bent.
Vec2 path_centroid(const std::vector<Vec2>& path_m);

/// z part of the cross product a × b: for an arm [m] and a force [N] the torque [N·m],
/// counter-clockwise positive.
double cross(const Vec2& a, const Vec2& b);

/// Torque of a force about an axis [N·m], counter-clockwise positive: r × F.
double torque_about(const Vec2& axis_m, const AppliedForce& force);

/// Moment arm [m], >= 0: distance from the axis to the force's *line of action*, |r × u| for the
/// unit direction u of the pull; never the distance to the point where it acts.
/// Source: definition; OpenStax College Physics 2e, section 9.2.
double moment_arm(const Vec2& axis_m, const Vec2& point_m, const Vec2& unit_direction);

/// Foot of the perpendicular from the axis to the line of action [m]: where the right angle is
/// drawn.
Vec2 foot_of_arm(const Vec2& axis_m, const Vec2& point_m, const Vec2& unit_direction);

} // namespace steelyard::mechanics
