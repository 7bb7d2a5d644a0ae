#include "catch.h"
#include "mechanics/lever/lever_geometry.h"
#include "mechanics/lever/random_lever.h"
#include "scene/lever/lever_drawing.h"
#include "scene/marks/force_marks.h"
#include "setup/units/format_quantity.h"

#include <cmath>

using namespace steelyard;
using namespace steelyard::scene;
using mechanics::Lever;
using mechanics::LeverResult;
using mechanics::Vec2;

namespace {

const Point kStage_px{940.0, 720.0};
const StageMargins kMargins{120.0, 170.0, 140.0};

/// A lever, solved, and how it lies on the stage.
struct Scene {
    Lever lever;
    LeverResult solved;
    StageView view;

    explicit Scene(Lever one) : lever(std::move(one)), solved(*mechanics::solve_lever(lever)) {
        view = fit_lever(lever, solved, kStage_px, kMargins);
    }
    Drawing draw(const LeverDrawing& how = {}) const {
        return draw_lever(lever, solved, view, how);
    }
};

Lever plain_lever() {
    Lever lever;
    lever.axis_at_m = 0.4;
    lever.loads = {{"crate", mechanics::Weight{0.0, 10.0}}};
    lever.own_weight.mass_kg = 2.0;
    return lever;
}

template <typename Kind> std::vector<Kind> all_of(const Drawing& drawing) {
    std::vector<Kind> found;
    for (const Shape& shape : drawing.shapes)
        if (const auto* one = std::get_if<Kind>(&shape))
            found.push_back(*one);
    return found;
}

bool says(const Drawing& drawing, const std::string& part) {
    for (const Label& label : all_of<Label>(drawing))
        if (label.text.find(part) != std::string::npos)
            return true;
    return false;
}

double cross(const Point& a, const Point& b) {
    return a.x() * b.y() - a.y() * b.x();
}

double distance_to_line(const Point& point, const Line& line) {
    return std::abs(cross(point - line.from, (line.to - line.from).normalized()));
}

/// Lines of action: dashed, in the colour of the force.
std::vector<Line> lines_of_action(const Drawing& drawing, Role role) {
    std::vector<Line> found;
    for (const Line& line : all_of<Line>(drawing))
        if (line.stroke.dash == Dash::dashed && line.stroke.role == role)
            found.push_back(line);
    return found;
}

/// True when some solid line of the role has the arm's length, ends on a line of action of the role
/// and stands square on it.
bool has_square_arm(const Drawing& drawing, Role role, double length_px) {
    for (const Line& arm : all_of<Line>(drawing)) {
        const Point span = arm.to - arm.from;
        if (arm.stroke.role != role || arm.stroke.dash != Dash::solid ||
            std::abs(span.norm() - length_px) > 1e-6)
            continue;
        for (const Line& line : lines_of_action(drawing, role)) {
            const Point along = (line.to - line.from).normalized();
            // Positions of some 1000 px, lengths of some 100 px: roundings only.
            if (distance_to_line(arm.to, line) < 1e-6 &&
                std::abs(span.dot(along)) < 1e-6 * std::max(1.0, span.norm()))
                return true;
        }
    }
    return false;
}

bool has_tip_at(const Drawing& drawing, Role role, const Point& tip_px) {
    for (const Triangle& head : all_of<Triangle>(drawing))
        if (head.fill == role && (head.a - tip_px).norm() < 1e-6)
            return true;
    return false;
}

/// All numbers of a shape, to look at each.
struct Numbers {
    std::vector<double> all;

    void add(const Point& point) {
        all.push_back(point.x());
        all.push_back(point.y());
    }
    void add(const Stroke& stroke) {
        all.push_back(stroke.width_px);
        all.push_back(stroke.opacity);
    }
    void operator()(const Line& line) {
        add(line.from);
        add(line.to);
        add(line.stroke);
    }
    void operator()(const Polyline& polyline) {
        for (const Point& corner : polyline.corners)
            add(corner);
        add(polyline.stroke);
    }
    void operator()(const Arc& arc) {
        add(arc.centre);
        all.insert(all.end(), {arc.radius_px, arc.from_rad, arc.to_rad});
        add(arc.stroke);
    }
    void operator()(const Disc& disc) {
        add(disc.centre);
        all.insert(all.end(), {disc.radius_px, disc.fill_opacity});
        if (disc.outline)
            add(*disc.outline);
    }
    void operator()(const Triangle& triangle) {
        for (const Point& corner : {triangle.a, triangle.b, triangle.c})
            add(corner);
        all.push_back(triangle.opacity);
    }
    void operator()(const Outline& outline) {
        for (const Ring& ring : outline.rings)
            for (const Point& corner : ring)
                add(corner);
    }
    void operator()(const Box& box) {
        add(box.centre);
        add(box.size_px);
        all.insert(all.end(), {box.corner_px, box.turn_rad, box.fill_opacity});
        if (box.outline)
            add(*box.outline);
    }
    void operator()(const Label& label) {
        add(label.at);
        all.push_back(label.turn_rad);
    }
};

bool is_finite(const Drawing& drawing) {
    Numbers numbers;
    for (const Shape& shape : drawing.shapes)
        std::visit(numbers, shape);
    for (const double number : numbers.all)
        if (!std::isfinite(number))
            return false;
    return !drawing.shapes.empty();
}

/// Levers that are awkward to draw: no load, no effort arm, places that coincide, tiny, huge.
std::vector<Lever> awkward_levers() {
    std::vector<Lever> levers(7);
    levers[0].loads.clear();
    levers[1].effort.direction_rad = 0.0; // line through the axis
    levers[2].axis_at_m = 0.0;            // axis at the load
    levers[3].effort.at_m = 0.5;          // effort at the axis
    levers[4].loads = {{"hinge", mechanics::Couple{1.0e9}}};
    levers[5].path_m = {{0.0, 0.0}, {1.0e-3, 0.0}};
    levers[5].axis_at_m = 0.5e-3;
    levers[5].effort.at_m = 1.0e-3;
    levers[6].loads = {{"nothing", mechanics::Weight{0.0, 0.0}}};
    return levers;
}

} // namespace

TEST_CASE("a moment arm is drawn square to its line of action and as long as it is") {
    mechanics::RandomNumbers random(31);
    for (int i = 0; i < 1000; ++i) {
        const Scene scene(mechanics::random_lever(random, {false, true, false}));
        const Drawing drawing = scene.draw();
        const double effort_px = scene.solved.effort_arm_m * scene.view.px_per_m;
        if (effort_px >= 3.0) // shorter ones cannot be seen and are left out
            CHECK(has_square_arm(drawing, Role::effort, effort_px));
        for (const mechanics::ForceReading& load : scene.solved.loads)
            if (load.arm_m * scene.view.px_per_m >= 3.0)
                CHECK(has_square_arm(drawing, Role::load, load.arm_m * scene.view.px_per_m));
    }
}

TEST_CASE("the right angle's mark has its sides along the arm and along the line of action") {
    const Scene scene(plain_lever());
    const Drawing drawing = scene.draw();
    int marks = 0;
    for (const Polyline& mark : all_of<Polyline>(drawing)) {
        if (mark.corners.size() != 3 || mark.stroke.role == Role::ink)
            continue;
        ++marks;
        const Point one = mark.corners[1] - mark.corners[0];
        const Point other = mark.corners[2] - mark.corners[1];
        CHECK(one.norm() > 3.0);
        CHECK(std::abs(one.dot(other)) < 1e-9);
        const Line line = lines_of_action(drawing, mark.stroke.role).front();
        CHECK(std::abs(cross(one, (line.to - line.from).normalized())) < 1e-9);
        CHECK(distance_to_line(mark.corners[2], line) < 1e-9);
    }
    CHECK(marks == 2);
}

TEST_CASE("all arrows share one scale: a newton is equally long everywhere") {
    mechanics::RandomNumbers random(32);
    for (int i = 0; i < 1000; ++i) {
        const Scene scene(mechanics::random_lever(random, {}));
        const Drawing drawing = scene.draw();
        const auto check = [&](const mechanics::ForceReading& force, Role role) {
            const Point span = arrow_px(scene.view, force.force_N);
            if (span.norm() < kStubArrow_px || span.norm() > longest_arrow_px(scene.view))
                return; // too short to be seen, or cut with a break
            CHECK(has_tip_at(drawing, role, scene.view.to_sheet(force.point_m) + span));
        };
        for (const mechanics::ForceReading& load : scene.solved.loads)
            check(load, Role::load);
        check(scene.solved.own_weight, Role::own_weight);
        if (scene.solved.effort_N)
            check(
                {scene.solved.effort.point_m,
                 mechanics::unit_vector(scene.lever.effort.direction_rad) * *scene.solved.effort_N,
                 0.0, 0.0, Vec2::Zero()},
                Role::effort);
        check({scene.solved.axis_m, scene.solved.axis_reaction_N, 0.0, 0.0, Vec2::Zero()},
              Role::reaction);
    }
}

TEST_CASE("the stated scale is the scale of the arrows") {
    for (const auto units : {setup::UnitSystem::si, setup::UnitSystem::us}) {
        const Scene scene(plain_lever());
        LeverDrawing how;
        how.units = units;
        const Drawing drawing = scene.draw(how);
        const double unit_N = units == setup::UnitSystem::us ? 4.4482216152605 : 1.0;
        bool found = false;
        for (const Line& line : all_of<Line>(drawing)) {
            const double force_N = (line.to - line.from).norm() / scene.view.px_per_N;
            if (line.stroke.role != Role::quiet_ink || line.from.x() != 24.0 || force_N < 1e-9 ||
                line.from.y() != line.to.y())
                continue;
            found = true;
            CHECK(round_step_below(force_N / unit_N) == Approx(force_N / unit_N));
            CHECK(says(drawing, setup::format_quantity(force_N, setup::Dimension::force, units)));
        }
        CHECK(found);
    }
}

TEST_CASE("what a drawing is told to hide is not there") {
    const Scene scene(plain_lever());
    LeverDrawing all;
    all.name = "The name";
    all.sentence = "The sentence";
    const auto drawn_without = [&](bool LeverMarks::*mark) {
        LeverDrawing how = all;
        how.marks.*mark = false;
        return scene.draw(how);
    };
    const auto count_role = [](const Drawing& drawing, Role role) {
        std::size_t count = 0;
        for (const Triangle& head : all_of<Triangle>(drawing))
            count += head.fill == role ? 1U : 0U;
        return count;
    };
    const Drawing full = scene.draw(all);
    CHECK(says(full, "The name"));
    CHECK_FALSE(says(drawn_without(&LeverMarks::heading), "The name"));
    CHECK_FALSE(says(drawn_without(&LeverMarks::heading), "The sentence"));
    CHECK(says(full, "moment arm "));
    CHECK_FALSE(says(drawn_without(&LeverMarks::arms), "moment arm "));
    CHECK_FALSE(has_square_arm(drawn_without(&LeverMarks::arms), Role::effort,
                               scene.solved.effort_arm_m * scene.view.px_per_m));
    CHECK(lines_of_action(full, Role::effort).size() == 1);
    CHECK(lines_of_action(drawn_without(&LeverMarks::lines), Role::effort).empty());
    CHECK(lines_of_action(drawn_without(&LeverMarks::lines), Role::load).empty());
    CHECK(count_role(full, Role::reaction) == 1);
    CHECK(count_role(drawn_without(&LeverMarks::reaction), Role::reaction) == 0);
    CHECK_FALSE(says(drawn_without(&LeverMarks::reaction), "reaction"));
    CHECK(says(full, "own weight"));
    CHECK_FALSE(says(drawn_without(&LeverMarks::own_weight), "own weight"));
    CHECK(all_of<Arc>(full).size() == 2);
    CHECK(all_of<Arc>(drawn_without(&LeverMarks::turning)).empty());
    CHECK(says(full, "load torque"));
    CHECK_FALSE(says(drawn_without(&LeverMarks::strip), "torque"));
    CHECK_FALSE(says(drawn_without(&LeverMarks::strip), "balanced"));
    // 1 m in steps of 10 cm, every second one with its number; 0.400 m is the axis itself.
    CHECK(says(full, "0.800\u00A0m"));
    CHECK_FALSE(says(drawn_without(&LeverMarks::ruler), "0.800\u00A0m"));
    CHECK(all_of<Line>(full).size() ==
          all_of<Line>(drawn_without(&LeverMarks::arrow_scale)).size() + 3);
}

TEST_CASE("an effort whose size is hidden cannot be read off its arrow, its turning or a label") {
    // The question hides the rest that would give it away; this is about the effort's own marks.
    LeverDrawing how;
    how.marks.effort_size = false;
    how.marks.strip = how.marks.reaction = false;
    Lever light = plain_lever();
    Lever heavy = plain_lever();
    heavy.axis_at_m = light.axis_at_m; // the same places: only the load differs
    heavy.loads = {{"crate", mechanics::Weight{0.0, 30.0}}};
    const Scene one(light);
    Scene other(heavy);
    other.view = one.view;
    const auto marks_of_effort = [](const Drawing& drawing) {
        Numbers numbers;
        for (const Line& line : all_of<Line>(drawing))
            if (line.stroke.role == Role::effort && line.stroke.dash == Dash::solid)
                numbers(line);
        for (const Triangle& head : all_of<Triangle>(drawing))
            if (head.fill == Role::effort)
                numbers(head);
        for (const Arc& arc : all_of<Arc>(drawing))
            if (arc.stroke.role == Role::effort)
                numbers(arc);
        return numbers.all;
    };
    CHECK(marks_of_effort(one.draw(how)) == marks_of_effort(other.draw(how)));
    CHECK(marks_of_effort(one.draw()) != marks_of_effort(other.draw()));
    const std::string size =
        setup::format_quantity(*one.solved.effort_N, setup::Dimension::force, how.units);
    CHECK(says(one.draw(), size));
    CHECK_FALSE(says(one.draw(how), size));
}

TEST_CASE("no drawing of any lever has a number that is not finite") {
    mechanics::RandomNumbers random(33);
    for (int i = 0; i < 5000; ++i) {
        Scene scene(mechanics::random_lever(random, {true, true, i % 3 == 0}));
        LeverDrawing how;
        how.units = i % 2 == 0 ? setup::UnitSystem::si : setup::UnitSystem::us;
        if (i % 4 == 0)
            how.pose = {random.between(-2000.0, 2000.0), random.between(-0.2, 0.2)};
        if (i % 5 == 0)
            scene.view = zoomed(scene.view, {300.0, 300.0}, std::pow(10.0, random.between(-2, 3)));
        CHECK(is_finite(scene.draw(how)));
    }
    for (const Lever& lever : awkward_levers())
        for (const auto hand_N :
             {std::optional<double>(), std::optional(0.0), std::optional(1e7)}) {
            LeverDrawing how;
            how.pose.hand_N = hand_N;
            CHECK(is_finite(Scene(lever).draw(how)));
        }
}

TEST_CASE("a force too long for the stage is cut, and the cut is shown") {
    Lever lever = plain_lever();
    Scene scene(lever);
    LeverDrawing how;
    how.pose.hand_N = 1.0e6;
    const Drawing drawing = scene.draw(how);
    const Point from = scene.view.to_sheet(scene.solved.effort.point_m);
    CHECK(has_tip_at(drawing, Role::effort, from + Point(0.0, longest_arrow_px(scene.view))));
    // The break lays a piece of sheet over the shaft.
    const auto breaks = [](const Drawing& one) {
        int count = 0;
        for (const Line& line : all_of<Line>(one))
            count += line.stroke.role == Role::sheet ? 1 : 0;
        return count;
    };
    CHECK(breaks(drawing) > breaks(scene.draw()));
}

TEST_CASE("a tilted lever keeps its length and its axis") {
    const Scene scene(plain_lever());
    LeverDrawing how;
    how.pose.tilt_rad = 0.15;
    const auto body_of = [](const Drawing& drawing) {
        for (const Polyline& polyline : all_of<Polyline>(drawing))
            if (polyline.stroke.role == Role::ink)
                return polyline;
        FAIL("no body");
        return Polyline{};
    };
    const Polyline level = body_of(scene.draw());
    const Polyline tilted = body_of(scene.draw(how));
    const Point axis = scene.view.to_sheet(scene.solved.axis_m);
    for (std::size_t i = 0; i < level.corners.size(); ++i)
        CHECK((tilted.corners[i] - axis).norm() == Approx((level.corners[i] - axis).norm()));
    // Counter-clockwise: the right end goes up, which is less y on the sheet.
    CHECK(tilted.corners.back().y() < level.corners.back().y());
}

TEST_CASE("every grip lies on a mark of its part") {
    mechanics::RandomNumbers random(34);
    for (int i = 0; i < 300; ++i) {
        const Scene scene(mechanics::random_lever(random, {false, true, false}));
        const Drawing drawing = scene.draw();
        for (const Grip& grip : lever_grips(scene.lever, scene.solved, scene.view, {})) {
            if (grip.hold == Hold::place)
                continue;
            const Role role = grip.part.kind == PartKind::effort ? Role::effort : Role::load;
            const auto& force = grip.part.kind == PartKind::effort
                                    ? scene.solved.effort
                                    : scene.solved.loads[grip.part.index];
            if (arrow_px(scene.view, force.force_N).norm() >= kStubArrow_px)
                CHECK(has_tip_at(drawing, role, grip.at_px));
        }
    }
}

TEST_CASE("the words of a moment arm stand on its own side of the axis, however large they are") {
    for (const double axis_at_m : {0.3, 0.4, 0.5, 0.6, 0.7})
        for (const double text_scale : {1.0, 1.5, 2.0}) {
            Lever lever = plain_lever();
            lever.axis_at_m = axis_at_m;
            const Scene scene(lever);
            LeverDrawing how;
            how.text_scale = text_scale;
            const double axis_px = scene.view.to_sheet(scene.solved.axis_m).x();
            int seen = 0;
            for (const Label& label : all_of<Label>(scene.draw(how))) {
                if (label.text.find("moment arm") == std::string::npos)
                    continue;
                ++seen;
                const Rect room = room_of(label, text_scale);
                const double middle_px = 0.5 * (room.low.x() + room.high.x());
                INFO(label.text << ", axis at " << axis_at_m << " m, text " << text_scale);
                CHECK((label.role == Role::load) == (middle_px < axis_px)); // the load is at left
            }
            CHECK(seen == 2);
        }
}
