#include "mechanics/whatif/exercise.h"

#include "mechanics/range/repetition.h"

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
    return {coarse.hinge, result.muscle(coarse.hinge), repetition.state_at(place).progress};
}

} // namespace

bool holds_itself(BalanceStatus status) {
    return status == BalanceStatus::held || status == BalanceStatus::balanced ||
           status == BalanceStatus::steadied;
}

tl::expected<RepetitionReading, MechanicsError> read_repetition(const Exercise& exercise,
                                                                const std::vector<Hinge>& hinges) {
    const Repetition repetition(exercise.body_case, exercise.path, exercise.tempo);
    if (auto checked = repetition.check(); !checked)
        return tl::unexpected(checked.error());
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
            reading.peaks[k] = {hinges[k], torque_Nm, repetition.state_at(place).progress};
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
