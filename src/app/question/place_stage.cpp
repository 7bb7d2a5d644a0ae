#include "app/question/place_stage.h"

#include "app/platform/key.h"

namespace steelyard::app {

namespace {

using problems::Gesture;
using problems::Placed;
using scene::Point;
using scene::Role;

/// A press that moves less than this is a click [px].
constexpr double kClick_px = 6.0;

/// What a drag goes on from: an end that is near the pointer, else a new line from here.
PlaceDrag grasp(const Point& at_px, const scene::StageView& view, const QuestionModel& model) {
    const mechanics::Vec2 here_m = view.to_world(at_px);
    PlaceDrag drag{true, at_px, {here_m, here_m}, false};
    if (!model.placed || problems::gesture_of(model.question()) == Gesture::point_on_lever)
        return drag;
    for (const bool beginning : {false, true}) {
        const Point end_px = view.to_sheet(beginning ? model.placed->from_m : model.placed->to_m);
        if ((end_px - at_px).norm() <= kGripReach_px) {
            drag.began = *model.placed;
            drag.moves_beginning = beginning;
            return drag;
        }
    }
    return drag;
}

Placed dragged_to(const PlaceDrag& drag, const mechanics::Vec2& here_m) {
    Placed placed = drag.began;
    (drag.moves_beginning ? placed.from_m : placed.to_m) = here_m;
    return placed;
}

/// A click says where an arm ends: it begins at the axis.
void click(const mechanics::Vec2& here_m, QuestionModel& model) {
    if (problems::gesture_of(model.question()) == Gesture::arm)
        place(model, {problems::first_place(model.question()).from_m, here_m});
}

/// @param left  it stands to the left of its place
void add_label(const Point& at, bool left, const std::string& text, Role role,
               std::vector<scene::Shape>& shapes) {
    scene::Label label;
    label.at = at;
    label.align = left ? scene::Align::right : scene::Align::left;
    label.text = text;
    label.role = role;
    label.strong = true;
    shapes.emplace_back(std::move(label));
}

void add_grip(const Point& at, Role role, double scale, std::vector<scene::Shape>& shapes) {
    scene::Disc halo;
    halo.centre = at;
    halo.radius_px = 14.0 * scale;
    halo.fill = role;
    halo.fill_opacity = 0.15;
    shapes.emplace_back(halo);
    scene::Disc disc;
    disc.centre = at;
    disc.radius_px = 6.0 * scale;
    disc.fill = Role::sheet;
    disc.outline = scene::Stroke{role, 2.5 * scale};
    shapes.emplace_back(disc);
}

/// The sign of what is placed on the lever: the axis' triangle, or a load that hangs.
void add_point(const Point& at, bool is_axis, Role role, double scale,
               std::vector<scene::Shape>& shapes) {
    if (is_axis)
        shapes.emplace_back(scene::Triangle{at, at + scale * Point(-14.0, 28.0),
                                            at + scale * Point(14.0, 28.0), role});
    else
        shapes.emplace_back(scene::Line{at, at + Point(0.0, 40.0 * scale), {role, 4.0 * scale}});
    add_grip(at, role, scale, shapes);
}

/// A line of action goes on past both of its points.
void add_line(const scene::StageView& view, const Placed& placed, Role role, double scale,
              std::vector<scene::Shape>& shapes) {
    const Point from = view.to_sheet(placed.from_m);
    const Point to = view.to_sheet(placed.to_m);
    if ((to - from).norm() > 1.0) {
        const Point past = 0.25 * (to - from) + 40.0 * scale * (to - from).normalized();
        shapes.emplace_back(
            scene::Line{from - past, to + past, {role, 2.5 * scale, scene::Dash::dashed}});
    }
    add_grip(from, role, scale, shapes);
    add_grip(to, role, scale, shapes);
}

void add_arm(const scene::StageView& view, const Placed& placed, Role role, double scale,
             std::vector<scene::Shape>& shapes) {
    const Point from = view.to_sheet(placed.from_m);
    const Point to = view.to_sheet(placed.to_m);
    shapes.emplace_back(scene::Line{from, to, {role, 4.0 * scale}});
    add_grip(to, role, scale, shapes);
}

void add_placed(const scene::StageView& view, const QuestionModel& model, const Placed& placed,
                Role role, double scale, std::vector<scene::Shape>& shapes) {
    switch (problems::gesture_of(model.question())) {
    case Gesture::point_on_lever:
        return add_point(view.to_sheet(placed.to_m),
                         problems::wanted_place(model.question())->target ==
                             problems::PlaceTarget::axis,
                         role, scale, shapes);
    case Gesture::line:
        return add_line(view, placed, role, scale, shapes);
    case Gesture::arm:
        return add_arm(view, placed, role, scale, shapes);
    }
}

} // namespace

bool drag_place(const StagePointer& pointer, const scene::StageView& view, QuestionModel& model,
                PlaceDrag& drag) {
    if (!is_placed(model.question()) || model.asking.finished) {
        drag.active = false;
        return false;
    }
    const bool slides = problems::gesture_of(model.question()) == Gesture::point_on_lever;
    if (pointer.pressed)
        drag = grasp(pointer.at_px, view, model);
    if (!drag.active)
        return false;
    const mechanics::Vec2 here_m = view.to_world(pointer.at_px);
    const bool moved = (pointer.at_px - drag.pressed_px).norm() > kClick_px;
    if (moved || slides)
        place(model, dragged_to(drag, here_m));
    if (!pointer.released)
        return false;
    if (!moved && !slides)
        click(here_m, model);
    drag.active = false;
    return true;
}

bool nudge_place(const KeyPress& key, QuestionModel& model) {
    if (!is_placed(model.question()) || model.asking.finished)
        return false;
    mechanics::Vec2 along = mechanics::Vec2::Zero();
    if (key.key == key::kLeft)
        along.x() = -1.0;
    else if (key.key == key::kRight)
        along.x() = 1.0;
    else if (key.key == key::kUp)
        along.y() = 1.0;
    else if (key.key == key::kDown)
        along.y() = -1.0;
    else
        return false;
    const double step_m =
        nudge_step_m(model.question()) * ((key.modifiers & key::kWithShift) != 0 ? 5.0 : 1.0);
    nudge(model, step_m * along, (key.modifiers & key::kWithControl) != 0);
    return true;
}

void draw_place(const Style& style, const scene::StageView& view, const QuestionModel& model,
                std::vector<scene::Shape>& shapes) {
    if (!is_placed(model.question()))
        return;
    const double scale = style.fonts.scale;
    const Point beside{16.0 * scale, -16.0 * scale};
    if (!model.asking.finished || !model.asking.rules.feedback) {
        // Before anything is placed, a pale mark says what is to be moved.
        const bool chosen_by_letter = !model.typed.empty();
        const Placed placed = model.placed.value_or(problems::first_place(model.question()));
        if (!chosen_by_letter)
            add_placed(view, model, placed, model.placed ? Role::effort : Role::own_weight, scale,
                       shapes);
        if (style.narration != nullptr)
            style.narration->add_grip("placed", view.to_sheet(placed.to_m));
        return;
    }
    const bool wrong = model.placed && model.asking.told && !model.asking.told->correct;
    const Placed right = problems::right_place(model.question());
    const Point right_px = view.to_sheet(right.to_m);
    // Each name stands on the far side of the other's place.
    bool right_is_left = false;
    if (wrong) {
        const Point yours_px = view.to_sheet(model.placed->to_m);
        right_is_left = right_px.x() < yours_px.x();
        add_placed(view, model, *model.placed, Role::wrong, scale, shapes);
        add_label(yours_px + Point(right_is_left ? beside.x() : -beside.x(), beside.y()),
                  !right_is_left, "yours", Role::wrong, shapes);
    }
    add_placed(view, model, right, Role::right, scale, shapes);
    const problems::PlaceWanted& place = *problems::wanted_place(model.question());
    const std::string letter = place.spots.empty() || model.typed.empty()
                                   ? std::string()
                                   : place.spots[place.correct].letter + ": ";
    add_label(right_px + Point(right_is_left ? -beside.x() : beside.x(),
                               wrong ? 30.0 * scale : beside.y()),
              right_is_left, letter + "the right place", Role::right, shapes);
}

} // namespace steelyard::app
