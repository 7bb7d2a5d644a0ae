#include "app/bench/settle.h"

#include "mechanics/constants.h"

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

constexpr double kMostTilt_rad = 10.0 * mechanics::kDegree_rad;
/// Slightly underdamped: one small swing past, at rest under 400 ms also from one side to the
/// other, for the swing dies by half the damping: 20° · exp(-20 · 0.39) = 1.5e-4.
constexpr double kStiffness = 800.0; ///< [1/s²]
constexpr double kDamping = 40.0;    ///< [1/s]
constexpr double kLongestStep_s = 0.004;
/// A twentieth of a pixel at the end of a lever of 700 px.
constexpr double kStill_rad = 1.5e-4;

} // namespace

void Settle::aim(double rest_rad, bool at_once) {
    rest_rad_ = rest_rad;
    if (at_once) {
        tilt_rad_ = rest_rad;
        speed_ = 0.0;
    }
}

void Settle::advance(double seconds) {
    // A long pause (a hidden window) is not caught up with.
    double left_s = std::min(seconds, 0.1);
    while (left_s > 0.0) {
        const double step_s = std::min(left_s, kLongestStep_s);
        const double pull = kStiffness * (rest_rad_ - tilt_rad_) - kDamping * speed_;
        speed_ += pull * step_s;
        tilt_rad_ += speed_ * step_s;
        left_s -= step_s;
    }
    if (std::abs(tilt_rad_ - rest_rad_) < kStill_rad && std::abs(speed_) < 50.0 * kStill_rad) {
        tilt_rad_ = rest_rad_;
        speed_ = 0.0;
    }
}

double resting_tilt(double net_Nm, double larger_Nm) {
    if (larger_Nm <= 0.0)
        return 0.0;
    const double share = std::clamp(net_Nm / larger_Nm, -1.0, 1.0);
    // The root makes small differences visible: a fine balance tilts at a touch.
    return kMostTilt_rad * std::copysign(std::sqrt(std::abs(share)), share);
}

} // namespace steelyard::app
