#pragma once
// What the bench holds, and what can be asked of it. No window, no drawing: views read the model
// and hand back intents, `update` applies them.

#include "app/bench/lever_fields.h"
#include "app/history.h"
#include "mechanics/lever/lever_solve.h"
#include "setup/lever/lever_setup.h"

#include <string>
#include <variant>

namespace steelyard::app {

/// One state of the bench; undo goes back to earlier ones.
struct BenchState {
    setup::LeverSetup setup; ///< its lever is the one on the stage
    std::optional<double> hand_N;

    HandledLever handled() const { return {setup.lever, hand_N}; }
};

struct BenchModel {
    BenchState state;
    mechanics::LeverResult solved; ///< of state.setup.lever, always up to date
    History<BenchState> history;
    setup::UnitSystem units = setup::UnitSystem::si;
    std::string message; ///< why the last intent was refused; empty when it was not
};

/// A bench with a setup on it. The setup must be solvable, as read setups are.
BenchModel make_bench(const setup::LeverSetup& setup, std::optional<double> hand_N);

// --- intents -----------------------------------------------------------------------------------

/// Sets one number; steps of the same gesture (not 0) are undone together.
struct SetNumber {
    LeverNumber number;
    double value_SI = 0.0;
    int gesture = 0;
};
/// Sets the pull of a force at once, by its arrow's tip.
struct SetPull {
    scene::LeverPart part;
    double direction_rad = 0.0;
    double size_N = 0.0;
    int gesture = 0;
};
/// Puts a corner elsewhere.
struct MoveCorner {
    std::size_t index = 0;
    mechanics::Vec2 to_m;
    int gesture = 0;
};
/// A further corner, to be pulled.
struct AddCorner {};
struct RemoveCorner {
    std::size_t index = 0;
};
/// What a load is: something that hangs there, a pull, a pure torque.
enum class LoadKind { weight, pull, torque };
/// Makes another kind of a load, as large as it was: the same pull, or the torque that it has.
struct ChangeLoad {
    std::size_t index = 0;
    LoadKind to = LoadKind::weight;
};
/// Gives the effort or a load another name.
struct NamePart {
    scene::LeverPart part;
    std::string name;
};
/// The effort stays as large as it is, and the size of this load is found.
struct SeekLoad {
    std::size_t index = 0;
};
/// The lever is as heavy everywhere: its centre of mass is where its shape puts it.
struct SpreadOwnWeight {};
/// The lever stands on one axis, or on two supports.
struct ChangeSupports {
    bool two = false;
};
struct AddLoad {
    double at_m = 0.0;
    double mass_kg = 0.0;
};
struct RemoveLoad {
    std::size_t index = 0;
};
/// The hand takes the effort, starting at the size that balances.
struct TakeByHand {};
/// The solver finds the effort again, which the hand set or which was known.
struct SolveForEffort {};
/// Puts another setup on the bench. There is no undo into the one before.
struct OpenSetup {
    setup::LeverSetup setup;
};
struct NameSetup {
    std::string name;
};
/// Draws the lever as a limb, or as a beam; nothing that is computed changes.
struct DrawAs {
    std::optional<setup::LimbShape> limb;
};
struct SwitchUnits {};
struct Undo {};
struct Redo {};

using BenchIntent =
    std::variant<SetNumber, SetPull, MoveCorner, AddCorner, RemoveCorner, ChangeLoad, NamePart,
                 SeekLoad, SpreadOwnWeight, ChangeSupports, AddLoad, RemoveLoad, TakeByHand,
                 SolveForEffort, OpenSetup, NameSetup, DrawAs, SwitchUnits, Undo, Redo>;

/// What a load of the lever is.
LoadKind kind_of(const mechanics::Load& load);

/// Applies an intent and solves anew when the lever changed. What cannot be computed with is
/// refused: the model stays as it was and says why in its message.
void update(BenchModel& model, const BenchIntent& intent);

} // namespace steelyard::app
