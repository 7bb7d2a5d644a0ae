// What a sweep's curves show: peaks, zero crossings, work.

#include "mechanics/range/sweep.h"

#include <cmath>
#include <optional>

namespace steelyard::mechanics {

namespace {

/// A torque smaller than this is none [N·m]: the weight of a grain of sand at a finger's length.
constexpr double kNoTorque_Nm = 1.0e-9;

double torque_at(const Sweep& sweep, std::size_t step, Hinge hinge) {
    return sweep.muscle_Nm[step][index_of(hinge)];
}

/// Where a curve changes sign; where it rests on zero in between, the middle of that rest.
std::vector<double> zero_crossings(const Sweep& sweep, Hinge hinge) {
    std::vector<double> crossings;
    std::optional<std::size_t> last;
    for (std::size_t step = 0; step < sweep.steps; ++step) {
        const double torque_Nm = torque_at(sweep, step, hinge);
        if (std::abs(torque_Nm) < kNoTorque_Nm)
            continue;
        if (last && torque_at(sweep, *last, hinge) * torque_Nm < 0.0) {
            const double before_Nm = torque_at(sweep, *last, hinge);
            const double part = step == *last + 1 ? before_Nm / (before_Nm - torque_Nm) : 0.5;
            crossings.push_back(sweep.progress[*last] +
                                part * (sweep.progress[step] - sweep.progress[*last]));
        }
        last = step;
    }
    return crossings;
}

/// Simpson's rule over evenly spaced values; an odd last interval goes by the 5, 8, -1 rule through
/// its last three points. Source: any text on quadrature.
template <typename ValueAt> double integral(std::size_t count, double width, ValueAt value_at) {
    if (count == 2)
        return 0.5 * width * (value_at(0) + value_at(1));
    const std::size_t pairs_end = (count - 1) / 2 * 2;
    double sum = 0.0;
    for (std::size_t i = 0; i < pairs_end; i += 2)
        sum += width / 3.0 * (value_at(i) + 4.0 * value_at(i + 1) + value_at(i + 2));
    if (pairs_end + 1 < count)
        sum += width / 12.0 *
               (5.0 * value_at(count - 1) + 8.0 * value_at(count - 2) - value_at(count - 3));
    return sum;
}

double work_J(const BodyCase& body_case, const PosePath& path, const Sweep& sweep, Hinge hinge) {
    return integral(sweep.steps, sweep.step_width, [&](std::size_t step) {
        const double way = way_rad(body_case.pose, path, hinge, sweep.progress[step]);
        return torque_at(sweep, step, hinge) * way * sweep.progress_rate[step];
    });
}

} // namespace

HingeSummary summarise(const BodyCase& body_case, const PosePath& path, const Sweep& sweep,
                       Hinge hinge) {
    HingeSummary summary;
    summary.hinge = hinge;
    std::size_t peak = 0;
    std::size_t least = 0;
    for (std::size_t step = 1; step < sweep.steps; ++step) {
        const double size_Nm = std::abs(torque_at(sweep, step, hinge));
        if (size_Nm > std::abs(torque_at(sweep, peak, hinge)))
            peak = step;
        if (size_Nm < std::abs(torque_at(sweep, least, hinge)))
            least = step;
    }
    if (sweep.steps == 0)
        return summary;
    summary.peak_Nm = torque_at(sweep, peak, hinge);
    summary.peak_progress = sweep.progress[peak];
    summary.peak_angle_rad = pose_at(body_case.pose, path, summary.peak_progress)[hinge];
    summary.least_Nm = std::abs(torque_at(sweep, least, hinge));
    summary.zero_crossings = zero_crossings(sweep, hinge);
    summary.work_J = work_J(body_case, path, sweep, hinge);
    return summary;
}

double total_work_J(const BodyCase& body_case, const PosePath& path, const Sweep& sweep) {
    double total_J = 0.0;
    for (const HingeInfo& info : all_hinges())
        if (turns_on(body_case.pose, path, info.hinge))
            total_J += work_J(body_case, path, sweep, info.hinge);
    return total_J;
}

} // namespace steelyard::mechanics
