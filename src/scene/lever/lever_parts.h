#pragma once
// The parts of a lever that can be taken hold of, and where they lie on the stage.

#include "scene/stage_view.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace steelyard::scene {

enum class PartKind { axis, load, effort, own_weight, corner };

/// One part of a lever; `index` counts the loads, or the corners from end to end.
struct LeverPart {
    PartKind kind = PartKind::axis;
    std::size_t index = 0;

    bool operator==(const LeverPart&) const = default;
};

/// Where a part is held: at its place on the lever, or at the tip of its arrow.
enum class Hold { place, tip };

/// A spot on the stage to take hold of.
struct Grip {
    LeverPart part;
    Hold hold = Hold::place;
    Point at_px = Point::Zero();
};

/// Longest arrow on a stage [px]; a longer force is drawn with a break.
double longest_arrow_px(const StageView& view);

/// Vector of a part's arrow on the sheet [px], before it is cut to fit.
Point arrow_px(const StageView& view, const mechanics::Vec2& force_N);

/// A pull without a size still shows its direction: an arrow of this length [px].
inline constexpr double kStubArrow_px = 56.0;

/// How a lever stands on the stage.
struct LeverPose {
    std::optional<double> hand_N; ///< effort set by hand [N]; empty = solved for
    /// Turn of the lever about its axis, counter-clockwise positive [rad]: shows which way it goes
    /// when the hand does not balance it. Arms and readings stay those of the lever as set.
    double tilt_rad = 0.0;
};

/// A point of the lever on the sheet, turned with it.
Point tilted_point(const StageView& view, const mechanics::LeverResult& solved,
                   const LeverPose& pose, const mechanics::Vec2& point_m);

/// Size of the effort as drawn along its stated direction [N]: set by hand, or found.
double shown_effort_N(const mechanics::LeverResult& solved, const LeverPose& pose);

/// Grips of the corners of a lever that stands as set, each a little off its corner, since
/// something may act there: of the ends beyond them, of the others below.
std::vector<Grip> corner_grips(const mechanics::Lever& lever, const StageView& view);

/// From a corner to its grip [px].
Point corner_grip_offset_px(const mechanics::Lever& lever, std::size_t corner);

/// Every other grip of a lever: tips before places, so that a tip near a place is found first.
/// Couples and a weightless lever's own weight have none; a sought load, a support and an own
/// weight no tip.
std::vector<Grip> lever_grips(const mechanics::Lever& lever, const mechanics::LeverResult& solved,
                              const StageView& view, const LeverPose& pose);

} // namespace steelyard::scene
