#pragma once
// What one number of a lever does to the effort and to the advantage, over the part of its range in
// which the lever stays a sensible one.

#include "mechanics/whatif/lever_whatif.h"

#include <tl/expected.hpp>

#include <optional>
#include <vector>

namespace steelyard::mechanics {

/// Effort and advantage at one setting.
struct LeverSweepStep {
    double value = 0.0;    ///< of the number that is changed, in its unit
    double effort_N = 0.0; ///< size, > 0
    std::optional<double> ideal_advantage;
    std::optional<double> actual_advantage;
};

struct LeverSweep {
    ChangeUnit unit = ChangeUnit::radian;
    LeverSweepStep present;
    std::vector<LeverSweepStep> steps; ///< evenly spaced, from the low end to the high one
    /// The effort or the advantage grows past all measure beyond this end: its arm, or the load's,
    /// goes to nothing there.
    bool cut_low = false;
    bool cut_high = false;
};

/// Effort and advantages grow past all measure where a line goes through the axis: a sweep ends
/// where either is this many times what it is at present. Our own choice, no source.
inline constexpr double kMostTimesPresent = 4.0;

/// Sweeps a change of the list of possible_changes over the part of its range, around the present
/// setting, in which an effort balances the lever by pulling the same way as at present.
/// @param count  number of steps, 2 or more
/// @return the sweep, or why there is none: the lever cannot be computed with, needs no effort, or
///         no effort balances it
tl::expected<LeverSweep, MechanicsError> sweep_lever(const Lever& lever, const LeverChange& change,
                                                     std::size_t count);

} // namespace steelyard::mechanics
