#pragma once
// What side by side holds: two exercises, A and B, at the same place of their paths, and what B is
// to become. No window, no drawing.

#include "app/history.h"
#include "app/side_by_side/way_search.h"
#include "scene/plot/paired_bars.h"
#include "setup/body/body_setup.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace steelyard::app {

using scene::Side;

/// What undo goes back to.
struct ComparedState {
    setup::BodySetup a;
    setup::BodySetup b;
    std::vector<mechanics::Cap> limits; ///< that changes of B keep
};

/// One of the two, solved.
struct ComparedBody {
    mechanics::BodyCase posed;                ///< in the present place
    mechanics::BodyResult here;               ///< of it, at rest
    std::vector<mechanics::PeakTorque> peaks; ///< of a repetition, one for each axis of the model
    mechanics::Sweep sweep;                   ///< at rest through the range; empty without a path
};

/// Solves one of the two.
/// @param axes  whose peaks are wanted
tl::expected<ComparedBody, mechanics::MechanicsError>
solve_compared(const mechanics::Exercise& exercise, const std::vector<mechanics::Hinge>& axes,
               double progress);

/// What B is to become at the chosen joint.
enum class AimKind { equal, easier, harder, typed };
struct Aim {
    AimKind kind = AimKind::equal;
    double typed_Nm = 0.0; ///< of a typed aim, >= 0
};
/// Part by which easier and harder change B's peak.
inline constexpr double kAimStep = 0.2;

struct SideBySideModel {
    ComparedState state;
    std::vector<mechanics::Hinge> axes; ///< that could be the axis in either
    std::size_t chosen = 0;             ///< index into axes
    double progress = 0.0;              ///< where on both paths, 0 to 1
    ComparedBody a;
    ComparedBody b;
    Aim aim;
    std::optional<mechanics::Change> selected; ///< the one of B that is looked at closely
    WaySearch search;
    History<ComparedState> history;
    std::string message; ///< why the last intent was refused

    mechanics::Hinge joint() const { return axes[chosen]; }
    bool moves() const { return state.a.exercise.path || state.b.exercise.path; }
    double peak_a_Nm() const { return std::abs(a.peaks[chosen].torque_Nm); }
    double peak_b_Nm() const { return std::abs(b.peaks[chosen].torque_Nm); }
};

/// Two exercises that can be solved, as read setups are.
SideBySideModel make_side_by_side(const setup::BodySetup& a, const setup::BodySetup& b);

/// The goal of the present aim, for what-if.
mechanics::Goal goal_of(const SideBySideModel& model);

/// The change that is selected, as B has it; empty when none is.
std::optional<mechanics::Change> selected_change(const SideBySideModel& model);

/// The way that the aim is reached by: the selected change, or the smallest one when none is
/// selected or the selected one does not reach it. Empty while unknown, or when there is none.
std::optional<mechanics::Way> way_to_aim(const SideBySideModel& model);

/// The limit at a joint; empty when there is none.
std::optional<mechanics::Cap> limit_at(const SideBySideModel& model, mechanics::Hinge hinge);

// --- intents -----------------------------------------------------------------------------------

/// Goes to a place of both paths, 0 to 1.
struct ScrubBoth {
    double progress = 0.0;
};
struct ChooseJoint {
    std::size_t index = 0;
};
struct PutSide {
    Side side = Side::a;
    setup::BodySetup setup;
};
struct SwapSides {};
/// B starts again as A is, so that one thing of it can be changed.
struct CopyToB {};
struct AimAt {
    Aim aim;
};
struct SelectChange {
    std::optional<mechanics::Change> change; ///< empty selects none
};
/// Sets one number of B; steps of the same gesture (not 0) are undone together.
struct ChangeB {
    mechanics::Change change;
    double value = 0.0;
    int gesture = 0;
};
/// B may not ask more of the chosen joint than it does now; again, and it may.
struct ToggleLimit {
    mechanics::Hinge hinge = mechanics::Hinge::lumbar_flexion;
};
struct UndoCompared {};
struct RedoCompared {};

using SideBySideIntent =
    std::variant<ScrubBoth, ChooseJoint, PutSide, SwapSides, CopyToB, AimAt, SelectChange, ChangeB,
                 ToggleLimit, UndoCompared, RedoCompared>;

/// Applies an intent, solves anew what depends on it and asks for the ways anew. What cannot be
/// computed with is refused with a message.
void update(SideBySideModel& model, const SideBySideIntent& intent);

} // namespace steelyard::app
