#pragma once
// What a coach can change about an exercise, one number at a time.

#include "mechanics/muscle/moment_arm_curve.h"
#include "mechanics/whatif/exercise.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace steelyard::mechanics {

// Where a change names several resistances (a pair of dumbbells), all get the same value.

/// Size of the load: mass [kg] of weights and stacks, pull or push [N] of cables and partners. Not
/// for bands.
struct LoadSize {
    std::vector<std::size_t> resistances{0};
    bool operator==(const LoadSize&) const = default;
};

/// Angle of a hinge [rad] in the starting pose; the end of the path shifts by as much, so that the
/// hinge makes the same way from another place.
struct JointAngle {
    Hinge hinge = Hinge::right_elbow_flexion;
    bool both_sides = false; ///< its mirror image too
    bool operator==(const JointAngle&) const = default;
};

/// Horizontal distance [m] from a hinge's joint to a load in the hands, in the starting pose. The
/// arm swings at the shoulder, about the axis that lies nearest to the hinge's, and the other arm
/// with it if both are held alike; elbows and wrists keep their angles. The end of the path swings
/// by as much. From 0, straight above or below the joint, outwards on the side where the load is.
struct LoadReach {
    std::size_t resistance = 0;
    Hinge from = Hinge::lumbar_flexion;
    bool operator==(const LoadReach&) const = default;
};

/// Place of a load on a limb [m]: distance from the segment's proximal joint along its length, for
/// cuffs, cables, bands, pads and pushes.
struct LoadAlongLimb {
    std::vector<std::size_t> resistances{0};
    bool operator==(const LoadAlongLimb&) const = default;
};

/// Height [m] of a cable's pulley.
struct PulleyHeight {
    std::vector<std::size_t> resistances{0};
    bool operator==(const PulleyHeight&) const = default;
};

/// Slack length [m] of a band.
struct BandSlack {
    std::vector<std::size_t> resistances{0};
    bool operator==(const BandSlack&) const = default;
};

/// Seconds [s] of the way out; the way back keeps its proportion to it, the hold stays.
struct RepetitionTempo {
    bool operator==(const RepetitionTempo&) const = default;
};

using Change = std::variant<LoadSize, JointAngle, LoadReach, LoadAlongLimb, PulleyHeight, BandSlack,
                            RepetitionTempo>;

/// What a change is measured in.
enum class ChangeUnit { kilogram, newton, radian, metre, second };

/// A change of a given exercise: where it stands now and how far it can go.
struct ChangeRange {
    double present = 0.0;
    Interval allowed; ///< contains present
    ChangeUnit unit = ChangeUnit::kilogram;
};

/// Range of a change.
/// @return the range, or why the exercise has no such change: no such resistance, a band's size, a
///         reach of a load that is not in the hands, a tempo without a path
tl::expected<ChangeRange, MechanicsError> range_of(const Change& change, const Exercise& exercise);

/// The exercise with the change set to a value of its range.
tl::expected<Exercise, MechanicsError> with_change(const Exercise& exercise, const Change& change,
                                                   double value);

/// Every change that the exercise has, with loads and sides that go together changed together.
/// @param reach_from  hinge from which reaches are measured
std::vector<Change> possible_changes(const Exercise& exercise, Hinge reach_from);

/// The same change of another exercise: resistances stand for those of the same names there.
/// @return the change, or empty when the other exercise does not have it
std::optional<Change> same_change(const Change& change, const Exercise& exercise,
                                  const Exercise& other, Hinge reach_from);

/// For people: "load of dumbbell", "right elbow flexion, both sides".
std::string describe(const Change& change, const Exercise& exercise);

} // namespace steelyard::mechanics
