#pragma once
// One joint near by: the pull that holds the load there, and the whole person small beside it.

#include "mechanics/muscle/muscle_on_body.h"
#include "scene/body/body_stage.h"
#include "scene/marks/force_marks.h"
#include "scene/marks/label_board.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::scene {

/// Where on the sheet of a close-up the things stand that only a close-up has.
struct CloseUp {
    Rect whole_person; ///< the person small, with a frame around what is shown near by
    /// Axis, effort and load on one line; empty = they are not told.
    std::optional<Rect> order_bar;
};

/// The usual places: the order bar at the right of the heading, the person below it at the left.
CloseUp close_up_on(const Point& sheet_px, double heading_top_px, double text_scale);

/// Room around the limb of a close-up with things in the usual places.
BodyMargins close_up_margins(const CloseUp& places, const Point& sheet_px, double text_scale);

/// Index of the muscle that pulls most of those whose place on the bone is known; empty where none
/// pulls.
std::optional<std::size_t> strongest_pull(const mechanics::HingeMuscles& muscles);

/// A muscle's pull as it is drawn: its arrow, its line of action and the moment arm.
struct PullMark {
    std::string name; ///< of the muscle
    double tension_N = 0.0;
    double arm_m = 0.0;
    Point from = Point::Zero(); ///< the arrow, from the attachment that moves
    ArrowSpan span;
    ArmMark arm;
    Point to() const { return from + span.along_px; }
};

/// The pull of the strongest muscle, its line so far from the joint as its moment arm says; empty
/// where none is known, or where the view does not look along the axis.
std::optional<PullMark> pull_mark(const mechanics::HingeMuscles& muscles,
                                  const mechanics::Placement& placement, mechanics::Hinge hinge,
                                  const BodyStage& stage);

/// Appends its line of action, its arm and its arrow.
void add_pull_mark(const PullMark& pull, std::vector<Shape>& shapes);

/// Appends the whole person in a room of the sheet, with a frame around what a nearer stage shows
/// in its window.
void add_whole_person(const mechanics::BodyCase& body_case, const mechanics::BodyResult& result,
                      const BodyStage& near, const Rect& window, const Rect& room,
                      std::vector<Shape>& shapes);

} // namespace steelyard::scene
