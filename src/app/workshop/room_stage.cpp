#include "app/workshop/room_stage.h"

#include "scene/body/body_drawing.h"
#include "scene/lever/lever_drawing.h"
#include "words/body/body_reading.h"

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using lesson::StageMark;
using scene::Point;

/// The drawing is laid out as for this text size, then enlarged as a whole, so that lines and
/// marks grow with the type.
constexpr double kLaidOutAt = 1.5;

bool shows(const RoomStage& room, StageMark mark) {
    return room.without.count(mark) == 0;
}

/// Captions are too small for a room: they are set like body text.
void enlarge_captions(scene::Drawing& drawing) {
    for (scene::Shape& shape : drawing.shapes)
        if (auto* label = std::get_if<scene::Label>(&shape))
            if (label->size == scene::TextSize::caption)
                label->size = scene::TextSize::body;
}

/// The result with nothing in it that is hidden: what is drawn to scale cannot give it away.
mechanics::LeverResult veiled(const lesson::SolvedStage& solved, const RoomStage& room) {
    mechanics::LeverResult result = solved.lever;
    if (!shows(room, StageMark::effort))
        result.effort.force_N.setZero();
    if (!shows(room, StageMark::reaction))
        result.axis_reaction_N.setZero();
    if (!shows(room, StageMark::loads))
        for (mechanics::ForceReading& load : result.loads)
            if (load.force_N.norm() > 0.0)
                load.force_N = 100.0 * load.force_N.normalized();
    return result;
}

scene::LeverMarks lever_marks(const RoomStage& room) {
    scene::LeverMarks marks;
    marks.heading = marks.ruler = marks.arrow_scale = false;
    marks.axis = shows(room, StageMark::axis);
    marks.load_sizes = shows(room, StageMark::loads);
    marks.effort_size = shows(room, StageMark::effort);
    marks.arms = shows(room, StageMark::arms);
    marks.lines = shows(room, StageMark::lines);
    marks.turning = shows(room, StageMark::torques);
    marks.reaction = shows(room, StageMark::reaction);
    marks.own_weight = shows(room, StageMark::own_weight);
    marks.strip = shows(room, StageMark::strip);
    return marks;
}

scene::Drawing draw_lever_stage(const lesson::SolvedStage& solved, const RoomStage& room,
                                double enlarged) {
    const mechanics::Lever& lever = solved.lever_setup().lever;
    const mechanics::LeverResult result = veiled(solved, room);
    const Point size_px = room.size_px / enlarged;
    scene::LeverDrawing how;
    how.limb = solved.lever_setup().limb;
    how.marks = lever_marks(room);
    how.units = room.units;
    how.text_scale = kLaidOutAt;
    how.smallest = scene::TextSize::body;
    how.heading_top_px = room.top_px / enlarged;
    const bool keeps_strip = how.marks.strip || room.strip_later;
    const double strip_px = (keeps_strip ? 150.0 : 60.0) * kLaidOutAt;
    const scene::StageView view = scene::fit_lever(
        lever, result, size_px,
        {std::min(130.0 * kLaidOutAt, 0.15 * size_px.x()), how.heading_top_px + 50.0 * kLaidOutAt,
         std::min(strip_px, 0.3 * size_px.y())});
    return scene::scaled(scene::draw_lever(lever, result, view, how), enlarged);
}

scene::BodyMarks body_marks(const RoomStage& room) {
    scene::BodyMarks marks;
    marks.axes = shows(room, StageMark::axis);
    marks.arms = shows(room, StageMark::arms);
    marks.lines = shows(room, StageMark::lines);
    marks.load_sizes = shows(room, StageMark::loads);
    marks.reaction = shows(room, StageMark::reaction);
    return marks;
}

scene::Drawing draw_body_stage(const lesson::SolvedStage& solved,
                               const std::vector<mechanics::Muscle>& muscles, const RoomStage& room,
                               double enlarged) {
    scene::BodyDrawing how;
    how.units = room.units;
    how.text_scale = kLaidOutAt;
    // The heading is left empty; labels begin a little below where it would stand.
    how.heading_top_px = room.top_px / enlarged - 50.0 * kLaidOutAt;
    how.axes = room.axes.empty() ? std::vector{solved.axis()} : room.axes;
    how.chosen = static_cast<std::size_t>(
        std::find(how.axes.begin(), how.axes.end(), solved.axis()) - how.axes.begin());
    how.chosen = std::min(how.chosen, how.axes.size() - 1);
    how.torques = shows(room, StageMark::torques);
    how.strip = false; // muscles always balance: it would say nothing and crowd the stage
    how.marks = body_marks(room);
    if (shows(room, StageMark::muscles))
        how.muscles = words::solved_muscles(solved.body_setup(), solved.posed, solved.body,
                                            solved.axis(), muscles);
    const Point size_px = room.size_px / enlarged;
    const double side_px = 0.17 * size_px.x();
    const scene::BodyStage stage = scene::fit_body(
        solved.posed, {solved.body}, scene::camera_of(solved.stage->view), size_px,
        {side_px, side_px, room.top_px / enlarged + 20.0, (how.strip ? 120.0 : 20.0) * kLaidOutAt});
    return scene::scaled(scene::draw_body(solved.posed, solved.body, stage, how), enlarged);
}

} // namespace

double room_type_scale(double window_height_px) {
    constexpr double kRoomLines = 1080.0;
    constexpr double kRoomSteps = 16.0; // fonts are not made anew for every pixel of a resize
    const double exact = kSmallestType_px / scene::text_height_px(scene::TextSize::body) *
                         window_height_px / kRoomLines;
    return std::max(1.0, std::ceil(exact * kRoomSteps - 1e-9) / kRoomSteps);
}

scene::Drawing draw_room_stage(const lesson::SolvedStage& solved,
                               const std::vector<mechanics::Muscle>& muscles,
                               const RoomStage& room) {
    const double enlarged = room.type_scale / kLaidOutAt;
    scene::Drawing drawing = solved.is_lever() ? draw_lever_stage(solved, room, enlarged)
                                               : draw_body_stage(solved, muscles, room, enlarged);
    enlarge_captions(drawing);
    return drawing;
}

} // namespace steelyard::app
