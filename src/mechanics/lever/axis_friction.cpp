#include "mechanics/lever/axis_friction.h"

#include <array>
#include <cassert>
#include <cmath>

namespace steelyard::mechanics {

namespace {

/// What is left of the effort's torque after the load and the axle have taken theirs, as a
/// function of the effort; positive when the lever moves the way `sense` says.
/// `grip` is +1 when the axle resists that way, -1 when it helps to hold the load.
struct SurplusTorque {
    const AxleBalance& balance;
    double sense;
    double grip;

    double at(double effort_N) const {
        const Vec2 reaction = balance.force_load_N + effort_N * balance.effort_direction;
        return sense * (balance.signed_effort_arm_m * effort_N + balance.torque_load_Nm) -
               grip * balance.friction_radius_m * reaction.norm();
    }

    double slope_at(double effort_N) const {
        const Vec2 reaction = balance.force_load_N + effort_N * balance.effort_direction;
        const double size_N = reaction.norm();
        const double along = size_N > 0.0 ? reaction.dot(balance.effort_direction) / size_N : 0.0;
        return sense * balance.signed_effort_arm_m - grip * balance.friction_radius_m * along;
    }
};

/// Real roots of a·x² + 2·h·x + c, smaller first, in the form that does not cancel.
std::array<std::optional<double>, 2> quadratic_roots(double a, double h, double c) {
    const double disc = h * h - a * c;
    if (disc < 0.0)
        return {};
    const double q = -(h + std::copysign(std::sqrt(disc), h));
    std::optional<double> one;
    std::optional<double> other;
    if (a != 0.0)
        one = q / a;
    if (q != 0.0)
        other = c / q;
    if (one && other && *one > *other)
        std::swap(one, other);
    return {one, other};
}

/// Squaring the balance loses digits when friction is small; Newton's steps bring them back.
double polish(const SurplusTorque& surplus, double effort_N) {
    for (int step = 0; step < 4; ++step) {
        const double slope = surplus.slope_at(effort_N);
        if (slope == 0.0)
            break;
        const double better_N = effort_N - surplus.at(effort_N) / slope;
        if (!std::isfinite(better_N))
            break;
        effort_N = better_N;
    }
    return effort_N;
}

/// The root of `surplus` that comes first when the effort goes from the frictionless value the way
/// of `direction`.
std::optional<double> first_root(const SurplusTorque& surplus, double frictionless_N,
                                 double direction) {
    const AxleBalance& b = surplus.balance;
    const double arm = b.signed_effort_arm_m;
    const double radius2 = b.friction_radius_m * b.friction_radius_m;
    const auto roots = quadratic_roots(
        arm * arm - radius2,
        arm * b.torque_load_Nm - radius2 * b.force_load_N.dot(b.effort_direction),
        b.torque_load_Nm * b.torque_load_Nm - radius2 * b.force_load_N.squaredNorm());
    const double scale_Nm =
        std::abs(b.torque_load_Nm) + b.friction_radius_m * b.force_load_N.norm();
    std::optional<double> best;
    for (const auto& root : roots) {
        if (!root || !std::isfinite(*root))
            continue;
        const double effort_N = polish(surplus, *root);
        const bool solves =
            std::abs(surplus.at(effort_N)) <= 1e-9 * (scale_Nm + std::abs(arm * effort_N));
        const double ahead_N = (effort_N - frictionless_N) * direction;
        const bool is_ahead = ahead_N >= -1e-9 * std::abs(frictionless_N);
        if (solves && is_ahead && (!best || ahead_N < (*best - frictionless_N) * direction))
            best = effort_N;
    }
    return best;
}

} // namespace

AxleEfforts efforts_with_axle_friction(const AxleBalance& balance) {
    assert(balance.signed_effort_arm_m != 0.0);
    const double frictionless_N = -balance.torque_load_Nm / balance.signed_effort_arm_m;
    if (balance.friction_radius_m == 0.0)
        return {frictionless_N, frictionless_N};
    // The lever is to turn against the load's torque; with no load torque, as the effort pulls.
    const double sense = balance.torque_load_Nm != 0.0
                             ? std::copysign(1.0, -balance.torque_load_Nm)
                             : std::copysign(1.0, balance.signed_effort_arm_m);
    const double more = sense * std::copysign(1.0, balance.signed_effort_arm_m);
    return {first_root({balance, sense, 1.0}, frictionless_N, more),
            first_root({balance, sense, -1.0}, frictionless_N, -more)};
}

} // namespace steelyard::mechanics
