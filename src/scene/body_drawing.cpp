#include "scene/body_drawing.h"

#include "scene/arm_shelves.h"
#include "scene/balance_strip.h"
#include "scene/figure.h"
#include "scene/force_marks.h"
#include "scene/label_board.h"
#include "scene/resistance_marks.h"
#include "setup/format_quantity.h"

#include <algorithm>
#include <cmath>

namespace steelyard::scene {

namespace {

using mechanics::BodyForce;
using mechanics::ForceOrigin;
using mechanics::Hinge;
using setup::Dimension;

/// Length of a resistance's arrow whose size is not given away [px].
constexpr double kStubArrow_px = 90.0;
constexpr double kSmallTorque_Nm = 0.05; ///< below it a joint is said to carry nothing

class BodyPainter {
public:
    BodyPainter(const mechanics::BodyCase& body_case, const mechanics::BodyResult& result,
                const BodyStage& stage, const BodyDrawing& how)
        : case_(body_case), result_(result), stage_(stage), how_(how),
          board_({{8.0, how.heading_top_px + 50.0 * how.text_scale},
                  {stage.size_px.x() - 8.0,
                   stage.size_px.y() - (how.strip ? 92.0 * how.text_scale : 8.0)}},
                 how.text_scale) {}

    Drawing paint() {
        drawing_.size_px = stage_.size_px;
        drawing_.title = how_.name;
        drawing_.description = how_.sentence;
        add_heading();
        add_ground();
        add_figure(case_.body, result_.placement, stage_, shapes());
        add_muscles();
        add_resistance_marks(case_, result_, stage_, shapes());
        if (how_.marks.lines)
            add_lines_of_action();
        if (how_.marks.arms)
            add_arms();
        if (how_.marks.axes)
            add_axes();
        add_forces();
        if (how_.marks.axes)
            add_axis_labels();
        if (how_.strip)
            add_strip();
        return std::move(drawing_);
    }

private:
    std::vector<Shape>& shapes() { return drawing_.shapes; }
    double text(double px) const { return px * how_.text_scale; }
    std::string quantity(double value, Dimension dimension) const {
        return setup::format_quantity(value, dimension, how_.units);
    }
    Hinge chosen() const { return how_.axes[how_.chosen]; }
    Point joint_px(Hinge hinge) const {
        return stage_.to_sheet(result_.placement.axis_point_m(hinge));
    }

    Label make_label(const Point& at, std::string words, TextSize size, Role role, Align align,
                     bool strong = false) const {
        Label label;
        label.at = at;
        label.text = std::move(words);
        label.size = size;
        label.role = role;
        label.align = align;
        label.strong = strong;
        return label;
    }

    void add_heading() {
        shapes().emplace_back(make_label({24.0, how_.heading_top_px + text(16.0)}, how_.name,
                                         TextSize::body, Role::ink, Align::left, true));
        shapes().emplace_back(make_label({24.0, how_.heading_top_px + text(38.0)}, how_.sentence,
                                         TextSize::caption, Role::quiet_ink, Align::left));
    }

    /// The floor, where it is seen from the edge and something stands on it.
    void add_ground() {
        const bool edge_on = std::abs(stage_.camera.toward_eye().y()) < 0.2;
        const double floor_px = stage_.to_sheet(Vec3::Zero()).y();
        if (!edge_on || floor_px > stage_.size_px.y() - text(96.0))
            return;
        shapes().emplace_back(Line{{0.06 * stage_.size_px.x(), floor_px},
                                   {0.9 * stage_.size_px.x(), floor_px},
                                   {Role::quiet_ink, 2.0}});
    }

    /// Spindles along the lines of pull that are known, thicker with more force.
    void add_muscles() {
        if (!how_.muscles)
            return;
        const auto& muscles = *how_.muscles;
        for (std::size_t i = 0; i < muscles.pulls.size(); ++i) {
            const mechanics::Pull& pull = muscles.pulls[i];
            const double tension_N = muscles.solution.muscles[i].tension_N;
            if (!pull.line || tension_N <= 0.0)
                continue;
            add_spindle(*pull.line, tension_N);
        }
    }

    void add_spindle(const mechanics::PlacedLine& line, double tension_N) {
        const Point insertion = stage_.to_sheet(line.insertion_m);
        const Point along_full = stage_.arrow(line.direction);
        if (along_full.norm() < 1e-9)
            return;
        const Point along = along_full.normalized();
        const double length_px = 0.16 * case_.body.height_m * stage_.px_per_m;
        const Point end = insertion + length_px * along;
        const Point belly = 0.5 * (insertion + end);
        // Cross-section grows with force, so the radius with its root.
        const double belly_px = std::clamp(0.16 * std::sqrt(tension_N), 2.5, 13.0);
        for (const Point& tendon : {insertion, end})
            shapes().emplace_back(Taper{tendon, belly, 1.5, belly_px, Role::effort, 0.85});
    }

    bool is_shown(const BodyForce& force) const {
        return force.origin == ForceOrigin::resistance && force.force_N.norm() > 1e-9;
    }

    /// True when the force loads the hinge on its way to the ground or the seat: it acts on the far
    /// side, or it is carried down through a leg.
    bool loads(const BodyForce& force, Hinge hinge) const {
        const mechanics::Segment below =
            mechanics::joint_info(mechanics::hinge_info(hinge).joint).segment;
        const bool in_a_leg = mechanics::is_at_or_beyond(below, mechanics::Segment::right_thigh) ||
                              mechanics::is_at_or_beyond(below, mechanics::Segment::left_thigh);
        return mechanics::acts_distally(force, hinge) ||
               (in_a_leg && std::holds_alternative<mechanics::OnContacts>(case_.support));
    }

    void add_lines_of_action() {
        for (const BodyForce& force : result_.forces) {
            if (!is_shown(force) || !loads(force, chosen()))
                continue;
            const Point arrow = stage_.arrow(force.force_N);
            if (arrow.norm() < 1.0)
                continue;
            const Point along = arrow.normalized();
            const Point at = stage_.to_sheet(force.point_m);
            double first = 0.0;
            double last = arrow.norm();
            for (const Hinge hinge : how_.axes) {
                const double foot = (joint_px(hinge) - at).dot(along);
                first = std::min(first, foot);
                last = std::max(last, foot);
            }
            shapes().emplace_back(Line{at + (first - 60.0) * along,
                                       at + (last + 30.0) * along,
                                       {Role::load, 1.5, Dash::dashed, 0.7}});
        }
    }

    /// The force that turns the chosen joint most: its arms are drawn to every candidate axis.
    std::optional<std::size_t> main_force() const {
        std::optional<std::size_t> main;
        double most_Nm = 0.0;
        for (std::size_t i = 0; i < result_.forces.size(); ++i) {
            if (!is_shown(result_.forces[i]) || !loads(result_.forces[i], chosen()))
                continue;
            const double torque_Nm = std::abs(mechanics::arm_of(result_, i, chosen()).torque_Nm);
            if (!main || torque_Nm > most_Nm) {
                main = i;
                most_Nm = torque_Nm;
            }
        }
        return main;
    }

    void add_arms() {
        const std::optional<std::size_t> main = main_force();
        if (!main)
            return;
        const BodyForce& force = result_.forces[*main];
        const Point arrow = stage_.arrow(force.force_N);
        if (arrow.norm() < 1.0)
            return;
        const Point along = arrow.normalized();
        const Point at = stage_.to_sheet(force.point_m);
        double shelf_px = 0.0;
        for (const Hinge hinge : how_.axes) {
            if (!loads(force, hinge))
                continue;
            const mechanics::HingeArm reading = mechanics::arm_of(result_, *main, hinge);
            const Point joint = joint_px(hinge);
            const Point foot = at + along * (joint - at).dot(along);
            if (reading.arm_m * stage_.px_per_m < 4.0 || (foot - joint).norm() < 4.0)
                continue;
            // Each arm stands on a shelf of its own above the joint, along the line of action.
            const ArmMark arm{joint, foot, along, -along * shelf_px};
            const Role role = Role::load;
            if (shelf_px > 0.0)
                shapes().emplace_back(
                    Line{joint, joint + arm.shift, {Role::quiet_ink, 1.5, Dash::dotted, 0.8}});
            add_arm(arm, {role, hinge == chosen() ? 2.5 : 1.75}, shapes());
            add_arm_label(arm, hinge, reading.arm_m);
            shelf_px += text(30.0);
        }
    }

    void add_arm_label(const ArmMark& arm, Hinge hinge, double arm_m) {
        const Point from = arm.axis + arm.shift;
        const Point to = arm.foot + arm.shift;
        board_.keep_clear(from, to, 2.5);
        const std::string words = joint_word(hinge) + " arm " + quantity(arm_m, Dimension::length);
        const Point middle = 0.5 * (from + to);
        std::vector<Label> ways;
        for (const double up_px : {text(7.0), -text(18.0)})
            ways.push_back(make_label(middle - Point(0.0, up_px), words, TextSize::body, Role::load,
                                      Align::centre));
        for (const double side : {14.0, -14.0})
            ways.push_back(make_label(middle + Point(side, text(5.0)), words, TextSize::body,
                                      Role::load, side > 0.0 ? Align::left : Align::right));
        shapes().emplace_back(board_.place(ways));
    }

    void add_axes() {
        for (std::size_t i = 0; i < how_.axes.size(); ++i) {
            Disc ring;
            ring.centre = joint_px(how_.axes[i]);
            ring.radius_px = i == how_.chosen ? 10.0 : 8.5;
            ring.fill = i == how_.chosen ? Role::ink : Role::sheet;
            ring.outline = Stroke{Role::ink, 3.0};
            shapes().emplace_back(ring);
            board_.keep_clear({ring.centre - Point(12.0, 12.0), ring.centre + Point(12.0, 12.0)});
            add_torque_arc(how_.axes[i]);
        }
    }

    /// What the load does about an axis that is seen end on: a turning whose length grows with it.
    void add_torque_arc(Hinge hinge) {
        const double toward = result_.placement.axis(hinge).dot(stage_.camera.toward_eye());
        const double torque_Nm = result_.external(hinge);
        if (!how_.torques || std::abs(toward) < 0.5 || std::abs(torque_Nm) < kSmallTorque_Nm)
            return;
        double largest_Nm = 1.0;
        for (const Hinge one : how_.axes)
            largest_Nm = std::max(largest_Nm, std::abs(result_.external(one)));
        // A positive angle turns about the axis by the right-hand rule: seen with the axis pointing
        // at the eye that is counter-clockwise, which is negative on the sheet.
        const double turn_rad =
            -std::copysign(1.9 * std::abs(torque_Nm) / largest_Nm, torque_Nm * toward);
        add_turning(joint_px(hinge), 26.0, turn_rad, {Role::load, 3.5}, shapes());
    }

    /// The forces as they are seen: a bar held in both hands is one force where the hands lie
    /// behind one another.
    std::vector<BodyForce> seen_forces() const {
        std::vector<BodyForce> seen;
        for (const BodyForce& force : result_.forces) {
            const bool ground = force.origin == ForceOrigin::contact;
            if (!is_shown(force) && !ground)
                continue;
            const auto same = std::find_if(seen.begin(), seen.end(), [&](const BodyForce& other) {
                const Point apart = stage_.to_sheet(other.point_m) - stage_.to_sheet(force.point_m);
                const bool one_thing = ground || other.index == force.index;
                return other.origin == force.origin && one_thing && apart.norm() < 6.0;
            });
            if (same == seen.end())
                seen.push_back(force);
            else
                same->force_N += force.force_N;
        }
        return seen;
    }

    void add_forces() {
        for (const BodyForce& force : seen_forces()) {
            const bool ground = force.origin == ForceOrigin::contact;
            const Point from = stage_.to_sheet(force.point_m);
            if (ground && !how_.marks.reaction)
                continue;
            ArrowSpan span =
                arrow_span(stage_.arrow(force.force_N), (ground ? 0.16 : 0.3) * stage_.size_px.y());
            if (span.along_px.norm() < 6.0)
                continue;
            if (!ground && !how_.marks.load_sizes)
                span = {kStubArrow_px * span.along_px.normalized(), false};
            const Point to = from + span.along_px;
            const Stroke stroke =
                ground ? Stroke{Role::reaction, 3.0, Dash::dotted} : Stroke{Role::load, 4.5};
            add_arrow(from, to, ground ? Tail::plain : Tail::square, stroke, shapes());
            if (span.cut)
                add_break(from, to, stroke, shapes());
            board_.keep_clear(from, to, 12.0);
            if (!ground)
                add_force_label(force, from, to);
        }
    }

    void add_force_label(const BodyForce& force, const Point& from, const Point& to) {
        const std::string& name = case_.resistances[force.index].name;
        const std::string size = quantity(force.force_N.norm(), Dimension::force);
        const std::string& wider = name.size() > size.size() ? name : size;
        std::vector<Label> ways;
        for (const double share : {0.9, 0.6, 1.15, 0.3})
            for (const Align align : {Align::left, Align::right})
                ways.push_back(make_label(from + share * (to - from) +
                                              Point(align == Align::left ? 20.0 : -20.0, 0.0),
                                          wider, TextSize::reading, Role::load, align));
        Label first = board_.place(ways, text(20.0));
        Label second = first;
        first.text = size;
        first.strong = true;
        second.text = name;
        second.size = TextSize::body;
        second.at.y() += text(20.0);
        if (how_.marks.load_sizes)
            shapes().emplace_back(std::move(first));
        shapes().emplace_back(std::move(second));
    }

    void add_axis_labels() {
        if (!how_.torques)
            return;
        for (const Hinge hinge : how_.axes) {
            const Point at = joint_px(hinge);
            const std::string size = quantity(std::abs(result_.muscle(hinge)), Dimension::torque);
            std::vector<Label> ways;
            for (const double up_px : {-6.0, 22.0, -50.0, 60.0})
                for (const double side_px : {46.0, 90.0, 150.0})
                    for (const Align align : {Align::right, Align::left})
                        ways.push_back(make_label(
                            at + Point(align == Align::left ? side_px : -side_px, text(up_px)),
                            size, TextSize::reading, Role::ink, align, true));
            Label first = board_.place(ways, text(18.0));
            Label second = first;
            second.text = joint_word(hinge);
            second.size = TextSize::caption;
            second.strong = false;
            second.role = Role::quiet_ink;
            second.at.y() += text(18.0);
            const Point end = first.at + Point(first.align == Align::left ? -6.0 : 6.0, -text(7.0));
            shapes().emplace_back(
                Line{at + 16.0 * (end - at).normalized(), end, {Role::quiet_ink, 1.0}});
            shapes().emplace_back(std::move(first));
            shapes().emplace_back(std::move(second));
        }
    }

    void add_strip() {
        StripTorques torques{result_.external(chosen()), result_.muscle(chosen()), 0.0};
        torques.load_name = "load and limbs at the " + joint_word(chosen());
        torques.effort_name = "muscles";
        const double side_px = std::min(95.0, 0.1 * stage_.size_px.x());
        add_balance_strip(torques, side_px, stage_.size_px.x() - side_px,
                          stage_.size_px.y() - text(74.0), how_.units, how_.text_scale, shapes());
    }

    const mechanics::BodyCase& case_;
    const mechanics::BodyResult& result_;
    const BodyStage& stage_;
    const BodyDrawing& how_;
    LabelBoard board_;
    Drawing drawing_;
};

} // namespace

Drawing draw_body(const mechanics::BodyCase& body_case, const mechanics::BodyResult& result,
                  const BodyStage& stage, const BodyDrawing& how) {
    return BodyPainter(body_case, result, stage, how).paint();
}

} // namespace steelyard::scene
