#pragma once
// Moment arms of a muscle against joint angle, each with its source, published or from memory;
// where the sources disagree, the range between them.
//
// Sign: + turns the joint the way its angle grows (flexion at elbow, hip and knee), - the other
// way.

#include "mechanics/error.h"
#include "mechanics/muscle/pose_range.h"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace steelyard::mechanics {

/// How sure we are that the source says so.
enum class Evidence {
    verified,   ///< seen in a copy of the named source itself
    verified_2, ///< seen in a second-hand copy of the source
    memory,     ///< known, not seen: shown as illustrative only
};

/// What a moment arm rests on. Whoever shows the arm, or a force by it, says which.
enum class Basis {
    measured,     ///< a study of specimens or of living people
    open_model,   ///< the geometry of an openly published model: no measurement
    illustrative, ///< from memory, or a round figure of a textbook's exercise
    given,        ///< by whoever made the setup
};

/// Where a number comes from.
struct Citation {
    std::string text; ///< author, year, place; or what is remembered
    Evidence mark = Evidence::memory;
};

/// Arm as a polynomial of the joint angle: sum of c_i θ^i.
struct ArmPolynomial {
    std::vector<double> coefficients{0.0}; ///< c_0 first [m/rad^i]
    Interval valid_rad;                    ///< outside it the nearer end is used [rad]
};

/// One line of an arm table.
struct ArmKnot {
    double angle_rad = 0.0;
    double arm_m = 0.0;
};

/// Arm as a table over the joint angle. Between knots a cubic that never overshoots them
/// (Fritsch and Butland's harmonic-mean slopes, SIAM J Sci Stat Comput 5:300, 1984; from memory,
/// checked against Boost.Math's pchip); outside the table the nearer end. One knot = a constant.
struct ArmTable {
    std::vector<ArmKnot> knots; ///< one or more, angles strictly ascending
};

/// One source's arms.
struct ArmSource {
    std::variant<ArmPolynomial, ArmTable> curve;
    double spread_m = 0.0; ///< one standard deviation between people [m]; 0 = not stated
    Citation citation;
    Basis basis = Basis::illustrative;
    std::vector<PoseRange> holds{}; ///< poses in which it was found; empty = all
};

/// The arm at one angle.
struct ArmReading {
    double arm_m = 0.0;     ///< of the first source, the one we prefer; signed [m]
    Interval range_m;       ///< over all sources, each with its spread; signed [m]
    bool clamped = false;   ///< the angle lies outside the preferred source's valid range
    std::size_t source = 0; ///< which of the sources is the preferred one
};

/// Arm by one source at a joint angle [m], clamped to the source's valid range.
double arm_by_source(const ArmSource& source, double angle_rad);

/// Angles for which a source speaks [rad].
Interval valid_angles(const ArmSource& source);

/// Arm at a joint angle by the preferred source, and the range over all of them.
/// @param sources one or more, preferred first, checked by check_arm_sources
ArmReading arm_at(const std::vector<ArmSource>& sources, double angle_rad);

/// The same by those sources only that hold in a pose; empty where none of them does.
std::optional<ArmReading> arm_in_pose(const std::vector<ArmSource>& sources, double angle_rad,
                                      const PosedSide& posed);

/// Whether the sources can be computed with.
/// @param key path of the list, for the error: "arms"
/// @return nothing, or the first fault: no source, an empty or unordered table, a number that is
///         not finite, an arm beyond 0.5 m (no muscle of a person has one)
tl::expected<void, MechanicsError> check_arm_sources(const std::vector<ArmSource>& sources,
                                                     const std::string& key);

} // namespace steelyard::mechanics
