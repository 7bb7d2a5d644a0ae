#pragma once
// What the body stage holds: an exercise, where in the repetition it stands, and everything solved
// for it. No window, no drawing.

#include "app/body/body_curves.h"
#include "app/body/body_fields.h"
#include "app/history.h"
#include "mechanics/whatif/one_end.h"
#include "setup/body/body_setup.h"
#include "setup/build/exercise_edit.h"
#include "setup/lever/lever_setup.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace steelyard::app {

/// One state of the body stage; undo goes back to earlier ones.
struct BodyState {
    setup::BodySetup setup;
    std::size_t chosen = 0; ///< index into setup.axes
};

/// Two moments of one model with the same stamp show the same exercise, place and axis.
struct BodyStamp {
    int version = 0;
    double progress = 0.0;

    bool operator==(const BodyStamp&) const = default;
};

struct BodyModel {
    BodyState state;
    double progress = 0.0;                        ///< where on the path, 0 to 1
    std::vector<mechanics::Muscle> muscles;       ///< all that are known
    std::vector<setup::NamedSegmentTable> tables; ///< by which another person's body is made
    /// Which poses a pull at the body, or a typed angle, is meant for.
    mechanics::PoseEnds posing = mechanics::PoseEnds::both;

    AxisMuscles shown;                              ///< of the chosen axis
    mechanics::BodyCase posed;                      ///< the exercise's case in the present pose
    mechanics::BodyResult solved;                   ///< of it
    std::optional<mechanics::HingeMuscles> at_axis; ///< muscles of the chosen axis, if known
    BodyCurves curves;                              ///< through the range; empty without a path
    History<BodyState> history;
    std::string message; ///< why the last intent was refused, and what to turn
    int version = 0;     ///< another number for every other exercise or axis

    mechanics::Hinge axis() const { return state.setup.axes[state.chosen]; }
    const mechanics::Exercise& exercise() const { return state.setup.exercise; }
    StandingExercise standing() const { return {state.setup.exercise, progress}; }
    BodyStamp stamp() const { return {version, progress}; }
    bool moves() const { return state.setup.exercise.path.has_value(); }
};

/// A stage with an exercise that can be solved, as read setups are, at the hardest place for its
/// first axis.
/// @param tables  needed to make another person of the one on the stage
BodyModel make_body(const setup::BodySetup& setup, std::vector<mechanics::Muscle> muscles,
                    std::vector<setup::NamedSegmentTable> tables = {});

// --- intents -----------------------------------------------------------------------------------
// What changes the exercise can be undone; to look at another place or axis changes nothing. Steps
// of the same gesture (not 0) are undone together.

/// Goes to a place of the path, 0 to 1.
struct Scrub {
    double progress = 0.0;
};
struct ChooseAxis {
    std::size_t index = 0;
};
/// Sets one number of the exercise.
struct SetBodyNumber {
    BodyNumber number;
    double value_SI = 0.0;
    int gesture = 0;
};
/// Pulls a point of the body to a place; see mechanics::pulled for what follows.
struct PullPoint {
    mechanics::BodyPoint point;
    mechanics::Vec3 to_m;
    mechanics::Vec3 sight; ///< unit vector of the direction of sight
    int gesture = 0;
};
/// Puts a pulley or a band's anchor elsewhere.
struct MoveFixture {
    std::size_t resistance = 0;
    mechanics::Vec3 to_m;
    int gesture = 0;
};
/// Changes the exercise as a whole; what no longer touches is turned back, or said.
struct EditExercise {
    setup::ExerciseEdit edit;
    int gesture = 0;
};
/// Poses the start or the end of the path apart, and goes there; or both alike.
struct PoseApart {
    mechanics::PoseEnds posing = mechanics::PoseEnds::both;
};
/// Puts another exercise on the stage. There is no undo into the one before.
struct OpenExercise {
    setup::BodySetup setup;
};
struct NameExercise {
    std::string name;
};
struct UndoBody {};
struct RedoBody {};

using BodyIntent =
    std::variant<Scrub, ChooseAxis, SetBodyNumber, PullPoint, MoveFixture, EditExercise, PoseApart,
                 OpenExercise, NameExercise, UndoBody, RedoBody>;

/// Applies an intent and solves anew what depends on it. What cannot be computed with is refused:
/// the model stays as it was and says why in its message.
void update(BodyModel& model, const BodyIntent& intent);

/// The chosen joint as a lever for the bench, its effort the muscle that pulls most; or why it
/// makes none, in a sentence.
tl::expected<setup::LeverSetup, std::string> lever_of_axis(const BodyModel& model);

/// Sum of the pulls of the muscles at the chosen axis [N]; empty when they are not known or rest.
std::optional<double> muscle_force(const BodyModel& model);

/// Puts the model at the hardest place of its path for the first axis, as the command line does.
void go_to_hardest(BodyModel& model);

} // namespace steelyard::app
