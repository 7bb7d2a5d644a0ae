#include "scene/plot/axis_ticks.h"

#include <array>
#include <cassert>
#include <cmath>

namespace steelyard::scene {

namespace {

/// Ends that miss a tick by this part of a step still have it: rounding.
constexpr double kSlack = 1e-9;

std::vector<double> multiples(double low, double high, double step) {
    std::vector<double> ticks;
    const double first = std::ceil(low / step - kSlack);
    const double last = std::floor(high / step + kSlack);
    for (double i = first; i <= last; i += 1.0)
        ticks.push_back(i == 0.0 ? 0.0 : i * step);
    return ticks;
}

double count_within(double low, double high, double step) {
    return std::floor(high / step + kSlack) - std::ceil(low / step - kSlack) + 1.0;
}

} // namespace

std::vector<double> round_angle_ticks(double low_deg, double high_deg, int at_most) {
    assert(low_deg < high_deg && at_most >= 2);
    constexpr std::array kSteps_deg{1.0, 2.0, 5.0, 10.0, 15.0, 30.0, 45.0, 90.0, 180.0};
    for (const double step : kSteps_deg)
        if (count_within(low_deg, high_deg, step) <= at_most)
            return multiples(low_deg, high_deg, step);
    return multiples(low_deg, high_deg, 360.0);
}

} // namespace steelyard::scene
