#include "mechanics/muscle/moment_arm_curve.h"

#include "mechanics/constants.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace steelyard::mechanics {
namespace {

/// No moment arm of a person comes near it: the largest, of the trunk's flexors, is about 0.1 m.
constexpr double kMaxMuscleArm_m = 0.5;

double chord_slope(const std::vector<ArmKnot>& knots, std::size_t i) {
    return (knots[i + 1].arm_m - knots[i].arm_m) / (knots[i + 1].angle_rad - knots[i].angle_rad);
}

/// Slope at an end knot from a parabola through three knots, cut back where it would overshoot.
double end_slope(double near_step, double far_step, double near_chord, double far_chord) {
    const double slope = ((2.0 * near_step + far_step) * near_chord - near_step * far_chord) /
                         (near_step + far_step);
    if (slope * near_chord <= 0.0)
        return 0.0;
    if (near_chord * far_chord <= 0.0 && std::abs(slope) > 3.0 * std::abs(near_chord))
        return 3.0 * near_chord;
    return slope;
}

double knot_slope(const std::vector<ArmKnot>& knots, std::size_t i) {
    const std::size_t last = knots.size() - 1;
    if (last == 1)
        return chord_slope(knots, 0);
    const auto step = [&](std::size_t k) { return knots[k + 1].angle_rad - knots[k].angle_rad; };
    if (i == 0)
        return end_slope(step(0), step(1), chord_slope(knots, 0), chord_slope(knots, 1));
    if (i == last)
        return end_slope(step(last - 1), step(last - 2), chord_slope(knots, last - 1),
                         chord_slope(knots, last - 2));
    const double before = chord_slope(knots, i - 1);
    const double after = chord_slope(knots, i);
    if (before * after <= 0.0)
        return 0.0;
    const double weight_before = 2.0 * step(i) + step(i - 1);
    const double weight_after = step(i) + 2.0 * step(i - 1);
    return (weight_before + weight_after) / (weight_before / before + weight_after / after);
}

double evaluate(const ArmTable& table, double angle_rad) {
    const std::vector<ArmKnot>& knots = table.knots;
    if (angle_rad <= knots.front().angle_rad)
        return knots.front().arm_m;
    if (angle_rad >= knots.back().angle_rad)
        return knots.back().arm_m;
    const auto above =
        std::upper_bound(knots.begin(), knots.end(), angle_rad,
                         [](double angle, const ArmKnot& knot) { return angle < knot.angle_rad; });
    const std::size_t i = static_cast<std::size_t>(above - knots.begin()) - 1;
    const double step = knots[i + 1].angle_rad - knots[i].angle_rad;
    const double t = (angle_rad - knots[i].angle_rad) / step;
    const double u = 1.0 - t;
    return u * u * (1.0 + 2.0 * t) * knots[i].arm_m + t * t * (1.0 + 2.0 * u) * knots[i + 1].arm_m +
           u * t * step * (u * knot_slope(knots, i) - t * knot_slope(knots, i + 1));
}

double evaluate(const ArmPolynomial& polynomial, double angle_rad) {
    const double angle = std::clamp(angle_rad, polynomial.valid_rad.low, polynomial.valid_rad.high);
    double arm_m = 0.0;
    for (auto c = polynomial.coefficients.rbegin(); c != polynomial.coefficients.rend(); ++c)
        arm_m = arm_m * angle + *c;
    return arm_m;
}

MechanicsError fault(Fault kind, std::string key, std::string expected) {
    return {kind, std::move(key), std::move(expected)};
}

tl::expected<void, MechanicsError> check(const ArmTable& table, const std::string& key) {
    if (table.knots.empty())
        return tl::unexpected(fault(Fault::inconsistent, key, "one angle and arm or more"));
    for (std::size_t i = 0; i < table.knots.size(); ++i) {
        const std::string place = key + "[" + std::to_string(i) + "]";
        if (!std::isfinite(table.knots[i].angle_rad) || !std::isfinite(table.knots[i].arm_m))
            return tl::unexpected(fault(Fault::not_finite, place, "a finite angle and arm"));
        if (i > 0 && table.knots[i].angle_rad <= table.knots[i - 1].angle_rad)
            return tl::unexpected(fault(Fault::inconsistent, place, "angles that ascend"));
        if (std::abs(table.knots[i].arm_m) > kMaxMuscleArm_m)
            return tl::unexpected(fault(Fault::out_of_range, place, "an arm from -0.5 to 0.5 m"));
    }
    return {};
}

tl::expected<void, MechanicsError> check(const ArmPolynomial& polynomial, const std::string& key) {
    const Interval valid = polynomial.valid_rad;
    if (!std::isfinite(valid.low) || !std::isfinite(valid.high))
        return tl::unexpected(fault(Fault::not_finite, key + ".valid", "finite angles"));
    if (valid.low > valid.high)
        return tl::unexpected(fault(Fault::inconsistent, key + ".valid", "from <= to"));
    if (polynomial.coefficients.empty())
        return tl::unexpected(
            fault(Fault::inconsistent, key + ".coefficients", "one coefficient or more"));
    for (const double c : polynomial.coefficients)
        if (!std::isfinite(c))
            return tl::unexpected(
                fault(Fault::not_finite, key + ".coefficients", "finite coefficients"));
    // A polynomial of a few terms cannot hide a peak between steps of 1/64 of its valid range.
    constexpr int kSteps = 64;
    for (int i = 0; i <= kSteps; ++i) {
        const double angle = valid.low + (valid.high - valid.low) * i / kSteps;
        if (!(std::abs(evaluate(polynomial, angle)) <= kMaxMuscleArm_m))
            return tl::unexpected(fault(Fault::out_of_range, key + ".coefficients",
                                        "arms from -0.5 to 0.5 m over the valid angles"));
    }
    return {};
}

/// Arm by the sources that count: the first of them, and the range over all of them.
template <typename Counts>
std::optional<ArmReading> arm_by(const std::vector<ArmSource>& sources, double angle_rad,
                                 Counts counts) {
    std::optional<ArmReading> reading;
    for (std::size_t i = 0; i < sources.size(); ++i) {
        const ArmSource& source = sources[i];
        if (!counts(source))
            continue;
        const double arm_m = arm_by_source(source, angle_rad);
        if (!reading) {
            const Interval valid = valid_angles(source);
            // A single knot is a constant: its source states no range of angles to leave.
            const bool clamped =
                valid.low < valid.high && (angle_rad < valid.low || angle_rad > valid.high);
            reading = ArmReading{arm_m, {arm_m, arm_m}, clamped, i};
        }
        reading->range_m.low = std::min(reading->range_m.low, arm_m - source.spread_m);
        reading->range_m.high = std::max(reading->range_m.high, arm_m + source.spread_m);
    }
    return reading;
}

} // namespace

double arm_by_source(const ArmSource& source, double angle_rad) {
    return std::visit([angle_rad](const auto& curve) { return evaluate(curve, angle_rad); },
                      source.curve);
}

Interval valid_angles(const ArmSource& source) {
    if (const auto* polynomial = std::get_if<ArmPolynomial>(&source.curve))
        return polynomial->valid_rad;
    const std::vector<ArmKnot>& knots = std::get<ArmTable>(source.curve).knots;
    return {knots.front().angle_rad, knots.back().angle_rad};
}

ArmReading arm_at(const std::vector<ArmSource>& sources, double angle_rad) {
    assert(!sources.empty());
    return *arm_by(sources, angle_rad, [](const ArmSource&) { return true; });
}

std::optional<ArmReading> arm_in_pose(const std::vector<ArmSource>& sources, double angle_rad,
                                      const PosedSide& posed) {
    return arm_by(sources, angle_rad,
                  [&](const ArmSource& source) { return lies_within(posed, source.holds); });
}

tl::expected<void, MechanicsError> check_arm_sources(const std::vector<ArmSource>& sources,
                                                     const std::string& key) {
    if (sources.empty())
        return tl::unexpected(fault(Fault::inconsistent, key, "one source of arms or more"));
    for (std::size_t i = 0; i < sources.size(); ++i) {
        const std::string place = key + "[" + std::to_string(i) + "]";
        if (!std::isfinite(sources[i].spread_m))
            return tl::unexpected(fault(Fault::not_finite, place + ".spread", "a finite spread"));
        if (sources[i].spread_m < 0.0 || sources[i].spread_m > kMaxMuscleArm_m)
            return tl::unexpected(
                fault(Fault::out_of_range, place + ".spread", "a spread from 0 to 0.5 m"));
        auto checked =
            std::visit([&](const auto& curve) { return check(curve, place); }, sources[i].curve);
        if (!checked)
            return checked;
    }
    return {};
}

} // namespace steelyard::mechanics
