#pragma once
// What to change about a lever, one number at a time, so that it takes a wanted effort.

#include "mechanics/lever/lever_solve.h"
#include "mechanics/whatif/change.h"
#include "mechanics/whatif/search.h"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <vector>

namespace steelyard::mechanics {

enum class LeverKnob {
    load_size,        ///< mass of a weight [kg], size of a force [N]
    load_place,       ///< along the lever [m]
    axis_place,       ///< along the lever [m]
    effort_place,     ///< along the lever [m]
    effort_direction, ///< the way it pulls [rad], up to a right angle either way from now
};

/// One number of a lever that can be changed.
struct LeverChange {
    LeverKnob knob = LeverKnob::load_size;
    std::size_t load = 0; ///< which load, for the first two

    bool operator==(const LeverChange&) const = default;
};

/// Every change that the lever has; couples have none.
std::vector<LeverChange> possible_changes(const Lever& lever);

/// Where a change of the list stands and how far it can go.
ChangeRange range_of(const LeverChange& change, const Lever& lever);

/// The lever with a change of the list set to a value of its range.
Lever with_change(Lever lever, const LeverChange& change, double value);

/// For people: "mass of crate", "place of the axis".
std::string describe(const LeverChange& change, const Lever& lever);

/// A setting that gives the wanted effort.
struct LeverWay {
    LeverChange change;
    ChangeRange range;
    double value = 0.0; ///< nearest to the present one
    /// Measure of the step by which ways are ranked: sizes in parts of the present one, angles in
    /// right angles, places in parts of the lever's length. Our own rule, no source.
    double size = 0.0;
};

/// A change that cannot give it: the effort that comes nearest, and what stops it.
struct RefusedLeverChange {
    LeverChange change;
    ChangeRange range;
    std::optional<NearestReading> nearest; ///< its reading is an effort [N]
    std::optional<Limit> limit;
};

struct RankedLeverWays {
    std::vector<LeverWay> ways; ///< smallest change first
    std::vector<RefusedLeverChange> refused;
};

/// Tries every change of a lever for an effort of a wanted size, which pulls the way that it is
/// drawn. Settings at which no effort can balance, or at which it would have to push, are not
/// allowed.
/// @param wanted_N  size of the effort [N], >= 0
RankedLeverWays ways_to_effort(const Lever& lever, double wanted_N);

} // namespace steelyard::mechanics
