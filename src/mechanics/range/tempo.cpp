// Where a repetition is at a time.

#include "mechanics/range/sweep.h"

#include <algorithm>

namespace steelyard::mechanics {

namespace {

/// The minimum-jerk curve and its derivatives over the elapsed fraction u of a way.
TempoState minimum_jerk(double elapsed_s, double way_s) {
    const double u = std::clamp(elapsed_s / way_s, 0.0, 1.0);
    TempoState state;
    state.progress = u * u * u * (10.0 + u * (-15.0 + 6.0 * u));
    state.rate_1_s = 30.0 * u * u * (1.0 - u) * (1.0 - u) / way_s;
    state.acceleration_1_s2 = 60.0 * u * (1.0 - u) * (1.0 - 2.0 * u) / (way_s * way_s);
    return state;
}

} // namespace

double duration_s(const Tempo& tempo) {
    return tempo.out_s + tempo.hold_s + tempo.back_s;
}

TempoState tempo_state(const Tempo& tempo, double time_s) {
    if (time_s <= tempo.out_s)
        return minimum_jerk(time_s, tempo.out_s);
    const double back_from_s = tempo.out_s + tempo.hold_s;
    if (time_s <= back_from_s)
        return {1.0, 0.0, 0.0};
    const TempoState gone = minimum_jerk(time_s - back_from_s, tempo.back_s);
    return {1.0 - gone.progress, -gone.rate_1_s, -gone.acceleration_1_s2};
}

} // namespace steelyard::mechanics
