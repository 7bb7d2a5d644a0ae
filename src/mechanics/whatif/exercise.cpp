#include "mechanics/whatif/exercise.h"

#include "mechanics/body/solve_pose.h"

#include <boost/math/tools/minima.hpp>

#include <algorithm>
#include <cmath>

namespace steelyard::mechanics {
namespace {

/// Places at which a repetition is looked at before the peak is refined. A joint's torque along a
/// path of one movement bends a few times at most.
constexpr int kPlaces = 41;
/// Bits of the peak's place. The torque is flat there, so half of a double's bits place it as well
/// as they can, and the torque itself is then exact to rounding.
constexpr int kPlaceBits = 26;

/// The repetition as a function of one number: the time with a tempo, else the progress.
class Repetition {
public:
    explicit Repetition(const Exercise& exercise) : exercise_(exercise) {}

    double end() const {
        if (!exercise_.path)
            return 0.0;
        return exercise_.tempo ? duration_s(*exercise_.tempo) : 1.0;
    }

    double progress_at(double place) const { return state_at(place).progress; }

    tl::expected<void, MechanicsError> solve_at(double place, BodyResult& result) const {
        const BodyCase& body_case = exercise_.body_case;
        if (!exercise_.path)
            return solve_pose(body_case, body_case.body, body_case.pose, nullptr, result);
        const TempoState state = state_at(place);
        const Pose pose = pose_at(body_case.pose, *exercise_.path, state.progress);
        if (!exercise_.tempo)
            return solve_pose(body_case, body_case.body, pose, nullptr, result);
        Motion motion;
        for (std::size_t i = 0; i < kHingeCount; ++i) {
            const double way_rad = exercise_.path->end_angle_rad[i] - body_case.pose.angle_rad[i];
            motion.rate_rad_s[i] = state.rate_1_s * way_rad;
            motion.acceleration_rad_s2[i] = state.acceleration_1_s2 * way_rad;
        }
        return solve_pose(body_case, body_case.body, pose, &motion, result);
    }

private:
    TempoState state_at(double place) const {
        return exercise_.tempo ? tempo_state(*exercise_.tempo, place) : TempoState{place, 0.0, 0.0};
    }

    const Exercise& exercise_;
};

/// The torque with the largest size between two places, by Brent's method.
PeakTorque refine(const Repetition& repetition, const PeakTorque& coarse, double from, double to) {
    BodyResult result;
    const auto minus_size = [&](double place) {
        if (!repetition.solve_at(place, result))
            return 0.0;
        return -std::abs(result.muscle(coarse.hinge));
    };
    const double place =
        boost::math::tools::brent_find_minima(minus_size, from, to, kPlaceBits).first;
    if (!repetition.solve_at(place, result) ||
        std::abs(result.muscle(coarse.hinge)) <= std::abs(coarse.torque_Nm))
        return coarse;
    return {coarse.hinge, result.muscle(coarse.hinge), repetition.progress_at(place)};
}

tl::expected<void, MechanicsError> check_exercise(const Exercise& exercise) {
    const BodyCase& body_case = exercise.body_case;
    if (auto checked = check_case(body_case); !checked)
        return checked;
    if (auto checked = check_pose(body_case.body, body_case.pose); !checked)
        return checked;
    if (!exercise.path)
        return {};
    return check_pose(body_case.body, pose_at(body_case.pose, *exercise.path, 1.0));
}

} // namespace

bool holds_itself(BalanceStatus status) {
    return status == BalanceStatus::held || status == BalanceStatus::balanced ||
           status == BalanceStatus::steadied;
}

tl::expected<RepetitionReading, MechanicsError> read_repetition(const Exercise& exercise,
                                                                const std::vector<Hinge>& hinges) {
    if (auto checked = check_exercise(exercise); !checked)
        return tl::unexpected(checked.error());
    const Repetition repetition(exercise);
    const int places = exercise.path ? kPlaces : 1;
    const double step = places > 1 ? repetition.end() / (places - 1) : 0.0;

    RepetitionReading reading;
    for (const Hinge hinge : hinges)
        reading.peaks.push_back({hinge, 0.0, 0.0});
    std::vector<double> peak_places(hinges.size(), 0.0);
    BodyResult result;
    for (int i = 0; i < places; ++i) {
        const double place = step * i;
        if (auto solved = repetition.solve_at(place, result); !solved)
            return tl::unexpected(solved.error());
        if (holds_itself(reading.balance))
            reading.balance = result.ground.status;
        for (std::size_t k = 0; k < hinges.size(); ++k) {
            const double torque_Nm = result.muscle(hinges[k]);
            if (i > 0 && std::abs(torque_Nm) <= std::abs(reading.peaks[k].torque_Nm))
                continue;
            reading.peaks[k] = {hinges[k], torque_Nm, repetition.progress_at(place)};
            peak_places[k] = place;
        }
    }
    for (std::size_t k = 0; k < hinges.size() && places > 1; ++k)
        reading.peaks[k] =
            refine(repetition, reading.peaks[k], std::max(0.0, peak_places[k] - step),
                   std::min(repetition.end(), peak_places[k] + step));
    return reading;
}

} // namespace steelyard::mechanics
