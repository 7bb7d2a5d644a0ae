#pragma once
// What the body stage holds: an exercise, where in the repetition it stands, and everything solved
// for it. No window, no drawing.

#include "app/history.h"
#include "mechanics/muscle/muscle_on_body.h"
#include "mechanics/range/repetition.h"
#include "setup/body_setup.h"

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

struct BodyModel {
    BodyState state;
    double progress = 0.0;                  ///< where on the path, 0 to 1
    std::vector<mechanics::Muscle> muscles; ///< all that are known

    mechanics::BodyCase posed;                      ///< the exercise's case in the present pose
    mechanics::BodyResult solved;                   ///< of it
    std::optional<mechanics::HingeMuscles> at_axis; ///< muscles of the chosen axis, if known
    mechanics::Sweep sweep;                         ///< through the range; empty without a path
    History<BodyState> history;
    std::string message; ///< why the last intent was refused

    mechanics::Hinge axis() const { return state.setup.axes[state.chosen]; }
    bool moves() const { return state.setup.exercise.path.has_value(); }
};

/// A stage with an exercise that can be solved, as read setups are.
BodyModel make_body(const setup::BodySetup& setup, std::vector<mechanics::Muscle> muscles);

// --- intents -----------------------------------------------------------------------------------

/// Goes to a place of the path, 0 to 1.
struct Scrub {
    double progress = 0.0;
};
struct ChooseAxis {
    std::size_t index = 0;
};
/// Sets the size of a resistance: its mass [kg], its tension or push [N].
struct SetResistance {
    std::size_t index = 0;
    double size_SI = 0.0;
    int gesture = 0;
};
struct OpenExercise {
    setup::BodySetup setup;
};
struct UndoBody {};
struct RedoBody {};

using BodyIntent = std::variant<Scrub, ChooseAxis, SetResistance, OpenExercise, UndoBody, RedoBody>;

/// Applies an intent and solves anew what depends on it. What cannot be computed with is refused.
void update(BodyModel& model, const BodyIntent& intent);

/// Size of a resistance and what kind of quantity it is; empty for a band, whose pull follows from
/// its stretch.
struct ResistanceSize {
    double value_SI = 0.0;
    setup::Dimension dimension = setup::Dimension::mass;
};
std::optional<ResistanceSize> size_of(const mechanics::Resistance& resistance);

/// The candidate axis that carries the largest muscle torque here: index into setup.axes.
std::size_t most_loaded(const BodyModel& model);

/// Sum of the pulls of the muscles at the chosen axis [N]; empty when they are not known or rest.
std::optional<double> muscle_force(const BodyModel& model);

} // namespace steelyard::app
