#pragma once
// Two levers side by side, and what to change about B so that it takes A's effort. No window, no
// drawing.

#include "app/history.h"
#include "mechanics/whatif/lever_whatif.h"
#include "scene/plot/paired_bars.h"
#include "setup/lever/lever_setup.h"

#include <string>
#include <variant>

namespace steelyard::app {

using scene::Side;

struct LeverPairState {
    setup::LeverSetup a;
    setup::LeverSetup b;
};

struct LeverPairModel {
    LeverPairState state;
    mechanics::LeverResult a; ///< solved
    mechanics::LeverResult b;
    mechanics::RankedLeverWays ways; ///< to A's effort; empty when B takes it already
    std::optional<mechanics::LeverChange> selected; ///< the one of B that is looked at closely
    History<LeverPairState> history;
    std::string message; ///< why the last intent was refused

    /// True when both take an effort of the same size.
    bool efforts_are_equal() const;
};

/// Two levers that can be solved, as read setups are.
LeverPairModel make_lever_pair(const setup::LeverSetup& a, const setup::LeverSetup& b);

/// The change that is selected, as B has it; empty when none is.
std::optional<mechanics::LeverChange> selected_change(const LeverPairModel& model);

/// Size of an effort that was found; 0 when none can balance.
double effort_size_N(const mechanics::LeverResult& solved);

// --- intents -----------------------------------------------------------------------------------

struct PutLever {
    Side side = Side::a;
    setup::LeverSetup setup;
};
struct SwapLevers {};
/// B starts again as A is.
struct CopyLeverToB {};
struct SelectLeverChange {
    std::optional<mechanics::LeverChange> change; ///< empty selects none
};
/// Sets one number of B; steps of the same gesture (not 0) are undone together.
struct ChangeLeverB {
    mechanics::LeverChange change;
    double value = 0.0;
    int gesture = 0;
};
struct UndoLevers {};
struct RedoLevers {};
using LeverPairIntent = std::variant<PutLever, SwapLevers, CopyLeverToB, SelectLeverChange,
                                     ChangeLeverB, UndoLevers, RedoLevers>;

/// Applies an intent and solves anew. What cannot be computed with is refused with a message.
void update(LeverPairModel& model, const LeverPairIntent& intent);

} // namespace steelyard::app
