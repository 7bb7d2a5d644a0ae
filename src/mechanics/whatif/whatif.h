#pragma once
// What to change to get a wanted torque: the questions a coach asks of an exercise.
//
// All torques here are the peaks of a repetition, as sizes [N·m].

#include "mechanics/whatif/change.h"
#include "mechanics/whatif/search.h"

#include <tl/expected.hpp>

#include <optional>
#include <vector>

namespace steelyard::mechanics {

/// The most that a hinge may be asked for.
struct Cap {
    Hinge hinge = Hinge::lumbar_flexion;
    double most_Nm = 100.0; ///< size of the peak muscle torque [N·m], >= 0
};

/// The peak torque that is wanted.
struct Wanted {
    Hinge hinge = Hinge::right_elbow_flexion;
    double torque_Nm = 20.0; ///< size [N·m], >= 0
    std::vector<Cap> caps;   ///< at other hinges, kept on the way
};

/// A setting of a change and the peak it gives.
struct ChangedPeak {
    double value = 0.0; ///< of the change, in its unit
    PeakTorque peak;
};

enum class WhatIfOutcome {
    reached,         ///< solutions holds every setting found
    nearest_only,    ///< the wanted torque cannot be had; nearest and limit say how close and why
    nothing_allowed, ///< no setting is possible; limit says what is wrong with the present one
};

struct WhatIfAnswer {
    WhatIfOutcome outcome = WhatIfOutcome::reached;
    ChangeRange range;                  ///< of the change, with the present value
    PeakTorque present;                 ///< as the exercise stands
    std::vector<ChangedPeak> solutions; ///< nearest to the present value first
    std::optional<ChangedPeak> nearest;
    std::optional<Limit> limit;
};

/// The settings of a change that give a wanted peak torque.
/// Settings at which the body would lose its balance, a cap would be exceeded or the exercise
/// cannot be are not allowed.
/// @return the answer, or what cannot be computed: the exercise as it stands, a change it does not
///         have, a torque that is negative or not finite
/// @param pace  for who looks for it a little at a time: while it pauses, the answer says nothing
tl::expected<WhatIfAnswer, MechanicsError> solve_for_torque(const Exercise& exercise,
                                                            const Change& change,
                                                            const Wanted& wanted,
                                                            Pace* pace = nullptr);

/// Settings of a change under which no cap is exceeded, with what stops them at either end.
/// @param pace  as above
tl::expected<std::vector<AllowedSpan>, MechanicsError>
feasible_settings(const Exercise& exercise, const Change& change, const std::vector<Cap>& caps,
                  Pace* pace = nullptr);

/// Another hinge that is to be left as it is.
struct Keep {
    Hinge hinge = Hinge::right_hip_flexion;
    double within = 0.1; ///< part of its present peak by which it may change, >= 0
};

/// What a change is to do: a wanted torque at one hinge, another hinge left alone, caps kept.
struct Goal {
    Wanted wanted;
    std::optional<Keep> keep;
};

/// A change that reaches the goal.
struct Way {
    Change change;
    ChangeRange range;
    ChangedPeak reached;
    double keep_before_Nm =
        0.0;                    ///< size of the kept hinge's peak as the exercise stands; 0 if none
    double keep_after_Nm = 0.0; ///< at the setting reached
    /// Size of the change in its own measure, by which the ways are ranked: loads, forces and times
    /// in parts of the present value, angles in right angles, lengths in half metres. Our own rule,
    /// no source.
    double size = 0.0;
};

/// A change that does not.
struct RefusedWay {
    Change change;
    /// What stops it; empty when it gives the wanted torque but does not leave the other hinge
    /// alone.
    std::optional<Limit> limit;
    /// The setting that gives the wanted torque, or comes nearest to it.
    std::optional<ChangedPeak> at;
    double keep_after_Nm = 0.0; ///< at that setting
};

struct RankedWays {
    PeakTorque present;
    std::vector<Way> ways; ///< smallest change first
    std::vector<RefusedWay> refused;
};

/// Tries every change of a list (see possible_changes) for a goal and ranks those that reach it. A
/// change that does nothing to the hinge's torque is neither among the ways nor the refused.
/// @return the ways, or what cannot be computed; also when the hinge has the wanted torque already
tl::expected<RankedWays, MechanicsError> ranked_ways(const Exercise& exercise, const Goal& goal,
                                                     const std::vector<Change>& changes);

/// The same for one change, a little at a time.
/// @param pace  while it pauses, the ways say nothing; each call also takes a few readings for what
///              the exercise is now
tl::expected<RankedWays, MechanicsError> ranked_ways(const Exercise& exercise, const Goal& goal,
                                                     const Change& change, Pace& pace);

/// Size of the peak torque of a hinge, less a part of it [N·m]: the torque wanted to take 20 % off.
/// @param by part to take off, from 0 to 1; negative puts it on
/// @return the size, or what cannot be computed: also a part of a torque that is none
tl::expected<double, MechanicsError> peak_less(const Exercise& exercise, Hinge hinge, double by);

} // namespace steelyard::mechanics
