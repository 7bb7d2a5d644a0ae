#include "mechanics/muscle/strength.h"

#include "mechanics/constants.h"
#include "mechanics/portable.h"

#include <cmath>

namespace steelyard::mechanics {
namespace {

/// Less than this is no strength that anything can be a share of [N·m].
constexpr double kLeastStrength_Nm = 1.0;

StrengthReading read(const StrengthCurve& curve, double angle_rad, double body_mass_kg,
                     double height_m) {
    const double scale_Nm = body_mass_kg * kStandardGravity * height_m;
    const double shape = portable::sine_cosine(curve.c2 * (angle_rad - curve.c3_rad)).cosine;
    return {curve.c1 * scale_Nm * shape, curve.c1_sd * scale_Nm * shape};
}

} // namespace

std::optional<StrengthReading> strength_at(const MeasuredStrength& strength, double angle_rad,
                                           double body_mass_kg, double height_m) {
    if (angle_rad < strength.angle_rad.low || angle_rad > strength.angle_rad.high)
        return std::nullopt;
    StrengthReading reading;
    if (const auto* at = std::get_if<StrengthAt>(&strength.law))
        reading = {at->torque_Nm, at->sd_Nm};
    else
        reading = read(std::get<StrengthCurve>(strength.law), angle_rad, body_mass_kg, height_m);
    if (!(reading.mean_Nm >= kLeastStrength_Nm))
        return std::nullopt;
    return reading;
}

StrengthShare share_of(double torque_Nm, const StrengthReading& strength) {
    const double size_Nm = std::abs(torque_Nm);
    StrengthShare share{size_Nm / strength.mean_Nm, std::nullopt};
    if (strength.sd_Nm > 0.0 && strength.sd_Nm < strength.mean_Nm)
        share.band = Interval{size_Nm / (strength.mean_Nm + strength.sd_Nm),
                              size_Nm / (strength.mean_Nm - strength.sd_Nm)};
    return share;
}

} // namespace steelyard::mechanics
