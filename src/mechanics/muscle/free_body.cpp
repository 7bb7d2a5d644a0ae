#include "mechanics/muscle/free_body.h"

#include <Eigen/Geometry>

#include <cmath>

namespace steelyard::mechanics {
namespace {

/// A unit vector may miss length 1 by rounding, not by more.
constexpr double kUnitSlack = 1.0e-9;

bool is_unit(const Vec3& v) {
    return v.allFinite() && std::abs(v.norm() - 1.0) <= kUnitSlack;
}

tl::expected<void, MechanicsError> check_free_body(const FreeBody& body) {
    if (!body.axis_m.allFinite() || !body.couple_Nm.allFinite() || !body.gravity_m_s2.allFinite())
        return tl::unexpected(
            MechanicsError{Fault::not_finite, "axis", "finite axis, couple and gravity"});
    if (!is_unit(body.axis_direction) || !is_unit(body.along))
        return tl::unexpected(MechanicsError{Fault::inconsistent, "axis_direction",
                                             "directions of axis and bone of length 1"});
    for (std::size_t i = 0; i < body.segments.size(); ++i) {
        const SegmentWeight& segment = body.segments[i];
        const std::string key = "segments[" + std::to_string(i) + "]";
        if (!std::isfinite(segment.mass_kg) || !segment.centre_m.allFinite() ||
            !segment.acceleration_m_s2.allFinite())
            return tl::unexpected(MechanicsError{Fault::not_finite, key, "finite numbers"});
        if (segment.mass_kg < 0.0 || segment.mass_kg > kMaxMass_kg)
            return tl::unexpected(
                MechanicsError{Fault::out_of_range, key + ".mass", "a mass from 0 to 1000000 kg"});
    }
    for (std::size_t i = 0; i < body.loads.size(); ++i)
        if (!body.loads[i].point_m.allFinite() || !body.loads[i].force_N.allFinite())
            return tl::unexpected(MechanicsError{
                Fault::not_finite, "loads[" + std::to_string(i) + "]", "a finite point and force"});
    return {};
}

} // namespace

Resultant resultant_about(const Vec3& point_m, const std::vector<NamedForce>& forces) {
    Resultant sum;
    for (const NamedForce& force : forces) {
        sum.force_N += force.force_N;
        sum.torque_Nm += (force.point_m - point_m).cross(force.force_N);
    }
    return sum;
}

std::vector<NamedForce> outside_forces(const FreeBody& body) {
    std::vector<NamedForce> forces;
    forces.reserve(body.segments.size() + body.loads.size());
    for (const SegmentWeight& segment : body.segments)
        forces.push_back({segment.name, segment.centre_m,
                          segment.mass_kg * (body.gravity_m_s2 - segment.acceleration_m_s2),
                          segment.beyond_bone});
    forces.insert(forces.end(), body.loads.begin(), body.loads.end());
    return forces;
}

tl::expected<JointDemand, MechanicsError> demand_on_joint(const FreeBody& body) {
    if (auto checked = check_free_body(body); !checked)
        return tl::unexpected(checked.error());
    const Resultant outside = resultant_about(body.axis_m, outside_forces(body));
    return JointDemand{-(outside.torque_Nm + body.couple_Nm).dot(body.axis_direction),
                       -outside.force_N};
}

} // namespace steelyard::mechanics
