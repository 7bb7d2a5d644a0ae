#pragma once
// What can be read off an exercise at one place of its path: for each hinge the torque, what each
// force does about it, and what the muscles and the joint bear.

#include "mechanics/muscle/muscle_on_body.h"
#include "setup/body/body_setup.h"
#include "words/body/axis_shares.h"
#include "words/body/strength_words.h"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::words {

/// A force on the distal side of a hinge.
struct ForceAtHinge {
    std::string name; ///< "right dumbbell", "ground at the right foot", "own weight"
    mechanics::HingeArm arm;
};

/// One hinge of the body in one pose.
struct HingeReading {
    mechanics::Hinge hinge = mechanics::Hinge::right_elbow_flexion;
    double angle_rad = 0.0;
    double external_Nm = 0.0;         ///< of all forces on the distal side, signed like the hinge
    double muscle_Nm = 0.0;           ///< asked of the muscles, signed like the hinge
    std::string motion;               ///< what they must do: "extension", "horizontal adduction"
    std::vector<ForceAtHinge> forces; ///< own weight last
    /// Force across the joint without the muscles' pull [N].
    mechanics::Vec3 joint_force_N = mechanics::Vec3::Zero();
    std::vector<mechanics::Muscle> listed; ///< the muscles that were solved for; may be empty
    mechanics::SharingRule rule = mechanics::SharingRule::equal_stress;
    mechanics::HingeMuscles muscles;        ///< whose outcome says whether a force may be named
    std::optional<StrengthBeside> strength; ///< what groups of people could hold in it
};

/// The body in one pose of its path.
struct BodyReading {
    double progress = 0.0;
    mechanics::GroundReading ground;
    std::vector<HingeReading> hinges;
    std::vector<AxisShare> shares; ///< the setup's axes as they compare
};

/// Of the muscles of a hinge those that a setup shows: the ones it names with the main movers, or
/// all when it names none of them. A setup can leave helpers out, never a main mover. With the arms
/// that the setup gives by hand.
std::vector<mechanics::Muscle> shown_muscles(const setup::BodySetup& setup,
                                             const std::vector<mechanics::Muscle>& muscles,
                                             mechanics::Hinge hinge);

/// The same muscles solved for one pose, sharing as is usual.
/// @return empty where what is known of them cannot be solved
std::optional<mechanics::HingeMuscles>
solved_muscles(const setup::BodySetup& setup, const mechanics::BodyCase& posed,
               const mechanics::BodyResult& result, mechanics::Hinge hinge,
               const std::vector<mechanics::Muscle>& muscles);

/// Reads hinges at one place of the path, at rest.
/// @param muscles   all that are known, such as shipped_muscles
/// @param progress  0 to 1; without a path the pose is the same everywhere
tl::expected<BodyReading, mechanics::MechanicsError>
read_body(const setup::BodySetup& setup, const std::vector<mechanics::Muscle>& muscles,
          const std::vector<mechanics::Hinge>& hinges, double progress);

/// Where on the path the first axis works hardest, moved so slowly that only weights count; 0 for
/// an exercise that holds still.
/// @return progress, 0 to 1
tl::expected<double, mechanics::MechanicsError> hardest_place(const setup::BodySetup& setup);

/// Fixed words for machines: "equal_stress", "antagonists_work", "would_topple".
std::string_view word_of(mechanics::SharingRule rule);
std::string_view word_of(mechanics::MuscleOutcome outcome);
std::string_view word_of(mechanics::BalanceStatus status);

} // namespace steelyard::words
