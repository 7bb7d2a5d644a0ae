#pragma once
// One number sought over a range in which not everything is allowed: all places where a reading has
// a wanted value, or the nearest that can be had and what stops it.

#include "mechanics/body/segments.h"
#include "mechanics/muscle/moment_arm_curve.h"

#include <tl/expected.hpp>

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::mechanics {

enum class LimitKind {
    range_end,     ///< the change goes no further (end of a joint's range, top of the column)
    turning_point, ///< further on the torque goes back again: this is its largest or smallest
    would_topple,
    would_slip,
    lifts_off,
    cap,       ///< another joint's torque would exceed what it may carry
    cannot_be, ///< the exercise cannot be there at all: a band past its table, a pulley in the hand
};

/// What stops a search.
struct Limit {
    LimitKind kind = LimitKind::range_end;
    std::optional<Hinge> hinge; ///< of a cap
    std::string reason;         ///< for cannot_be: what would be accepted
};

/// The reading at a setting, or why the setting is not allowed.
using AllowedReading = tl::expected<double, Limit>;
using ReadingAt = std::function<AllowedReading(double)>;

/// A search a little at a time. What was read is remembered: called again with the same pace, a
/// search goes on where it paused, and in the end gives what it would have given at once.
struct Pace {
    int readings_left = 0; ///< that may be taken before it pauses
    bool paused = false;   ///< it ran out of them: what it returned says nothing yet
    std::map<double, AllowedReading> known;
};

/// Readings under a pace, which is to outlive them; at once where there is none (null).
ReadingAt paced(ReadingAt reading_at, Pace* pace);

/// The reading that comes nearest to a wanted value.
struct NearestReading {
    double at = 0.0;
    double reading = 0.0;
    Limit limit;
};

struct SearchResult {
    std::vector<double> solutions; ///< every place found, nearest to the present one first
    /// When there is no solution; empty when nothing at all is allowed.
    std::optional<NearestReading> nearest;
    std::optional<Limit> first_limit; ///< when nothing is allowed: why not at the present place
};

/// Relative accuracy to which a solution gives the wanted reading, or the same in N·m below 1 N·m.
inline constexpr double kSearchAccuracy = 1.0e-9;

/// To which an edge of what is allowed is found, relative, or in the unit of what is changed
/// below 1.
inline constexpr double kEdgeAccuracy = 1.0e-10;

/// Where a reading has a wanted value.
/// Looks at 129 places, close together around the present one, and solves between neighbours on
/// either side of the value by TOMS 748; looks between three neighbours for a turning point by
/// Brent's minimisation; walks up to the edge of what is allowed by bisection. A solution that
/// comes and goes between two places that are looked at can be missed.
/// Source of the methods: Alefeld, Potra & Shi 1995, ACM TOMS 21:327, and Brent 1973, as in
/// Boost.Math.
SearchResult search(const ReadingAt& reading_at, const Interval& range, double present,
                    double wanted);

/// Part of the range in which everything is allowed, and what stops it at either end.
struct AllowedSpan {
    Interval span;
    Limit below;
    Limit above;
};

/// Every part of the range that is allowed, from low to high; by the same places and bisection.
std::vector<AllowedSpan> allowed_spans(const ReadingAt& reading_at, const Interval& range,
                                       double present);

} // namespace steelyard::mechanics
