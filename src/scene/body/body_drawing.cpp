#include "scene/body/body_drawing.h"

#include "scene/body/axis_rod.h"
#include "scene/body/body_arms.h"
#include "scene/body/body_forces.h"
#include "scene/body/figure_room.h"
#include "scene/body/muscle_spindle.h"
#include "scene/body/resistance_marks.h"
#include "scene/body/support_pad.h"
#include "scene/figure/figure.h"
#include "scene/marks/balance_strip.h"
#include "scene/marks/name_plate.h"
#include "setup/units/format_quantity.h"
#include "words/body/axis_shares.h"

#include <algorithm>
#include <cmath>

namespace steelyard::scene {

namespace {

using mechanics::Hinge;
using setup::Dimension;

/// Length of a resistance's arrow whose size is not given away [px].
constexpr double kStubArrow_px = 90.0;
constexpr double kSmallTorque_Nm = 0.05; ///< below it a joint is said to carry nothing
/// Turning of the largest torque [rad]: the others turn in proportion.
constexpr double kLargestTurn_rad = 2.2;
constexpr double kTurnRadius_px = 28.0;
/// An axis is seen end on, so that its turning can be drawn, when it points at the eye this much.
constexpr double kEndOn = 0.5;

class BodyPainter {
public:
    BodyPainter(const mechanics::BodyCase& body_case, const mechanics::BodyResult& result,
                const BodyStage& stage, const BodyDrawing& how)
        : case_(body_case), result_(result), stage_(stage),
          how_(how), room_{{8.0, how.heading_top_px + how.heading_room_px * how.text_scale},
                           {stage.size_px.x() - 8.0,
                            stage.size_px.y() - (how.strip ? 92.0 * how.text_scale : 8.0)}},
          board_(room_, how.text_scale), forces_(shown_forces(result, stage, how.marks)) {}

    Drawing paint() {
        drawing_.size_px = stage_.size_px;
        drawing_.title = how_.name;
        drawing_.description = how_.sentence;
        for (const Rect& rect : how_.kept_clear)
            board_.keep_clear(rect);
        add_heading();
        add_ground();
        if (const auto pad = support_pad(case_, result_.placement, stage_))
            add_support_pad(*pad, shapes());
        add_trail();
        add_figure(case_, result_.placement, stage_, shapes());
        keep_figure_clear(case_.body, result_.placement, stage_, board_);
        add_muscles();
        add_resistance_marks(case_, result_, stage_, room_, shapes());
        const std::optional<std::size_t> main = main_force(case_, result_, chosen());
        by_ground_ = main && result_.forces[*main].origin == mechanics::ForceOrigin::contact;
        std::vector<BodyArm> arms;
        if (main) {
            if (how_.marks.lines)
                add_line_of_action(result_.forces[*main]);
            if (how_.marks.arms)
                arms = body_arms(case_, result_, *main, how_.axes, how_.chosen, stage_, text(30.0));
        }
        add_own_weight();
        for (const BodyArm& arm : arms)
            add_arm_mark(arm);
        if (how_.marks.axes) {
            add_axis_rod(result_.placement, chosen(), stage_, shapes());
            add_axes();
        }
        for (const SeenForce& force : forces_)
            add_force(force);
        if (how_.marks.axes)
            add_axis_labels();
        for (const SeenForce& force : forces_)
            if (!force.ground)
                add_force_label(force);
        for (const BodyArm& arm : arms)
            add_arm_label(arm);
        add_own_weight_label();
        if (how_.strip)
            add_strip();
        return std::move(drawing_);
    }

private:
    static std::vector<SeenForce> shown_forces(const mechanics::BodyResult& result,
                                               const BodyStage& stage, const BodyMarks& marks) {
        std::vector<SeenForce> shown;
        for (SeenForce& force : seen_forces(result, stage)) {
            if (force.ground && !marks.reaction)
                continue;
            if (!force.ground && !marks.load_sizes)
                force.span = {kStubArrow_px * force.span.along_px.normalized(), false};
            shown.push_back(force);
        }
        return shown;
    }

    std::vector<Shape>& shapes() { return drawing_.shapes; }
    double text(double px) const { return px * how_.text_scale; }
    std::string quantity(double value, Dimension dimension) const {
        return setup::format_quantity(value, dimension, how_.units);
    }
    /// The load's colour, or that of the ground where it drives the joint.
    Role line_role() const { return by_ground_ ? Role::reaction : Role::load; }
    Hinge chosen() const { return how_.axes[how_.chosen]; }
    Point joint_px(Hinge hinge) const {
        return stage_.to_sheet(result_.placement.axis_point_m(hinge));
    }

    void add_heading() {
        add_heading_line(how_.name, 16.0, TextSize::body, Role::ink, true);
        add_heading_line(how_.sentence, 38.0, TextSize::caption, Role::quiet_ink, false);
    }

    void add_heading_line(const std::string& words, double down_px, TextSize size, Role role,
                          bool strong) {
        if (words.empty())
            return;
        const WordPlace place{{24.0, how_.heading_top_px + text(down_px)}, Align::left};
        shapes().emplace_back(labels_at({place}, words, size, role, strong).front());
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
        board_.keep_clear({0.06 * stage_.size_px.x(), floor_px},
                          {0.9 * stage_.size_px.x(), floor_px}, 4.0);
    }

    /// The way of the load through the repetition, with its two ends.
    void add_trail() {
        if (how_.trail_m.size() < 2)
            return;
        Polyline trail{{}, {Role::quiet_ink, 7.0, Dash::solid, 0.22}};
        for (const Vec3& place_m : how_.trail_m)
            trail.corners.push_back(stage_.to_sheet(place_m));
        for (const Point& end : {trail.corners.front(), trail.corners.back()}) {
            Disc mark;
            mark.centre = end;
            mark.radius_px = 6.0;
            mark.fill = Role::sheet;
            mark.outline = Stroke{Role::quiet_ink, 1.5, Dash::solid, 0.8};
            shapes().emplace_back(mark);
        }
        shapes().insert(shapes().end() - 2, std::move(trail));
    }

    void add_muscles() {
        if (!how_.muscles)
            return;
        for (const Spindle& spindle :
             spindles_of(*how_.muscles, case_.body, result_.placement, chosen(), stage_)) {
            add_spindle(spindle, shapes());
            constexpr int kPieces = 8;
            const Point along = (spindle.end - spindle.over) / kPieces;
            const Point reach = Point(spindle.belly_px, spindle.belly_px) + 0.5 * along.cwiseAbs();
            for (int i = 0; i < kPieces; ++i) {
                const Point middle = spindle.over + (i + 0.5) * along;
                board_.keep_clear({middle - reach, middle + reach});
            }
        }
    }

    void add_line_of_action(const mechanics::BodyForce& force) {
        const auto line = action_line(force, how_.axes, result_, stage_);
        if (!line)
            return;
        shapes().emplace_back(Line{line->from, line->to, {line_role(), 1.5, Dash::dashed, 0.8}});
        board_.keep_clear(line->from, line->to, 3.0);
    }

    void add_arm_mark(const BodyArm& arm) {
        if (arm.mark.shift.norm() > 1.0)
            shapes().emplace_back(Line{arm.mark.axis,
                                       arm.mark.axis + arm.mark.shift,
                                       {Role::quiet_ink, 1.5, Dash::dotted, 0.8}});
        add_arm(arm.mark, {line_role(), arm.chosen ? 3.0 : 1.75, Dash::solid, 1.0}, shapes());
        board_.keep_clear(arm.mark.axis + arm.mark.shift, arm.mark.foot + arm.mark.shift, 4.0);
    }

    void add_arm_label(const BodyArm& arm) {
        const Point from = arm.mark.axis + arm.mark.shift;
        const Point to = arm.mark.foot + arm.mark.shift;
        const std::string words = std::string(by_ground_ ? "ground to " : "") +
                                  axis_word(how_.axes, arm.hinge) + (by_ground_ ? " " : " arm ") +
                                  quantity(arm.arm_m, Dimension::length) +
                                  (arm.end_on ? ", seen end-on" : "");
        const Point middle = 0.5 * (from + to);
        const Point outward = (to - from).normalized();
        std::vector<WordPlace> places{{middle - Point(0.0, text(8.0)), Align::centre},
                                      {middle + Point(0.0, text(20.0)), Align::centre}};
        // Past the line of action, then past the joint.
        for (const double down : {5.0, -12.0, 22.0, -30.0, 40.0, -48.0})
            for (const Point& end : {Point(to + 10.0 * outward), Point(from - 18.0 * outward)}) {
                const bool at_right = (end - middle).x() >= 0.0;
                places.push_back(
                    {end + Point(0.0, text(down)), at_right ? Align::left : Align::right});
            }
        const auto labels = labels_at(places, words, TextSize::body, line_role(), arm.chosen);
        // The arm that is looked at is always told; the others where there is room for them.
        if (arm.chosen || std::any_of(labels.begin(), labels.end(),
                                      [&](const Label& label) { return board_.is_free(label); }))
            shapes().emplace_back(board_.place(labels));
    }

    void add_axes() {
        const std::size_t most = most_turned();
        for (std::size_t i = 0; i < how_.axes.size(); ++i) {
            Disc ring;
            ring.centre = joint_px(how_.axes[i]);
            ring.radius_px = i == how_.chosen ? 10.0 : 8.5;
            ring.fill = i == how_.chosen ? Role::ink : Role::sheet;
            ring.outline = Stroke{Role::ink, 3.0};
            if (how_.torques && i == most && how_.axes.size() > 1) {
                Disc halo = ring; // a second ring around the joint that carries most
                halo.radius_px = 16.0;
                halo.fill.reset();
                halo.outline = Stroke{Role::ink, 2.0};
                shapes().emplace_back(halo);
            }
            shapes().emplace_back(ring);
            board_.keep_clear({ring.centre - Point(16.0, 16.0), ring.centre + Point(16.0, 16.0)});
            add_torque_arc(how_.axes[i]);
        }
    }

    std::size_t most_turned() const {
        return how_.axes.empty() ? 0 : words::most_loaded(words::axis_shares(how_.axes, result_));
    }

    /// What the load does about an axis that is seen end on: a turning whose length grows with it.
    void add_torque_arc(Hinge hinge) {
        const double toward = result_.placement.axis(hinge).dot(stage_.camera.toward_eye());
        const double torque_Nm = result_.external(hinge);
        if (!how_.torques || std::abs(toward) < kEndOn || std::abs(torque_Nm) < kSmallTorque_Nm)
            return;
        double largest_Nm = 1.0;
        for (const Hinge one : how_.axes)
            largest_Nm = std::max(largest_Nm, std::abs(result_.external(one)));
        // A positive angle turns about the axis by the right-hand rule: seen with the axis pointing
        // at the eye that is counter-clockwise, which is negative on the sheet.
        const double turn_rad =
            -std::copysign(kLargestTurn_rad * std::abs(torque_Nm) / largest_Nm, torque_Nm * toward);
        add_turning(joint_px(hinge), kTurnRadius_px, turn_rad, {Role::load, 4.0}, shapes());
        const Point reach{kTurnRadius_px, kTurnRadius_px};
        if (std::abs(turn_rad) > 0.3)
            board_.keep_clear({joint_px(hinge) - reach, joint_px(hinge) + Point(reach.x(), 0.0)});
    }

    void add_force(const SeenForce& force) {
        const Stroke stroke =
            force.ground ? Stroke{Role::reaction, 3.0, Dash::dotted} : Stroke{Role::load, 4.5};
        add_arrow(force.from, force.to(), force.ground ? Tail::plain : Tail::square, stroke,
                  shapes());
        if (force.span.cut)
            add_break(force.from, force.to(), stroke, shapes());
        board_.keep_clear(force.from, force.to(), 14.0);
        const Point reach{12.0, 12.0}; // the tail's square is what is taken hold of
        board_.keep_clear({force.from - reach, force.from + reach});
    }

    void add_force_label(const SeenForce& force) {
        const std::string& name = case_.resistances[force.force.index].name;
        if (!how_.marks.load_sizes) {
            shapes().emplace_back(
                board_.place(labels_at(places_beside(force.from, force.to(), how_.text_scale), name,
                                       TextSize::body, Role::load)));
            return;
        }
        const std::string size = quantity(force.force.force_N.norm(), Dimension::force);
        add_name_plate({size, name, Role::load, TextSize::body, Role::load},
                       places_beside(force.from, force.to(), how_.text_scale), how_.text_scale,
                       board_, shapes());
    }

    /// What lies beyond the chosen axis pulls on it too: its weight at its common centre.
    void add_own_weight() {
        if (!how_.torques || !how_.marks.load_sizes || !how_.marks.arms)
            return;
        const mechanics::WeightBeyond weight = mechanics::weight_beyond(case_, result_, chosen());
        own_from_ = stage_.to_sheet(weight.com_m);
        const ArrowSpan span = ended_above(
            stage_.lowest_tip_px, own_from_,
            arrow_span(stage_.arrow(Vec3(0.0, -weight.weight_N, 0.0)), 0.16 * stage_.size_px.y()));
        own_to_ = own_from_ + span.along_px;
        own_weight_N_ = weight.weight_N;
        if (span.along_px.norm() < 10.0)
            return;
        const Stroke stroke{Role::own_weight, 2.0};
        add_arrow(own_from_, own_to_, Tail::dot, stroke, shapes());
        if (span.cut)
            add_break(own_from_, own_to_, stroke, shapes());
        board_.keep_clear(own_from_, own_to_, 8.0);
    }

    void add_own_weight_label() {
        if (!how_.torques || (own_to_ - own_from_).norm() < 10.0)
            return;
        const std::string words = "own weight " + quantity(own_weight_N_, Dimension::force);
        // Beside its arrow or nowhere: farther off nobody would know whose words these are.
        for (const Label& label : labels_at(places_beside(own_from_, own_to_, how_.text_scale),
                                            words, TextSize::caption, Role::own_weight))
            if ((label.at - own_to_).norm() < text(48.0) && board_.is_free(label)) {
                shapes().emplace_back(board_.place({label}));
                return;
            }
    }

    void add_axis_labels() {
        if (!how_.torques)
            return;
        const std::size_t most = most_turned();
        const auto shares = words::axis_shares(how_.axes, result_);
        const bool is_alone = shares.size() > 1 && words::as_loaded(shares, most).empty();
        for (std::size_t i = 0; i < how_.axes.size(); ++i) {
            const Hinge hinge = how_.axes[i];
            const Point at = joint_px(hinge);
            NamePlate plate;
            plate.number = quantity(std::abs(result_.muscle(hinge)), Dimension::torque);
            plate.name = shares[i].one;
            if (i == most && is_alone) // what the second ring says
                plate.name += shares[i].both ? ", together the largest torque" : ", largest torque";
            plate.role = Role::ink;
            plate.name_size = TextSize::caption;
            plate.name_role = Role::quiet_ink;
            const Rect room = add_name_plate(
                plate, places_around(at, {text(46.0), text(80.0), text(120.0), text(170.0)}),
                how_.text_scale, board_, shapes());
            const bool at_left = 0.5 * (room.low + room.high).x() < at.x();
            const Point end{at_left ? room.high.x() + 6.0 : room.low.x() - 6.0,
                            std::clamp(at.y(), room.low.y() + 6.0, room.high.y() - 6.0)};
            const Point way = end - at;
            if (way.norm() > 24.0)
                shapes().emplace_back(
                    Line{at + 18.0 * way.normalized(), end, {Role::quiet_ink, 1.0}});
        }
    }

    void add_strip() {
        StripTorques torques{result_.external(chosen()), result_.muscle(chosen()), 0.0};
        torques.load_name = "load and limbs at the " + axis_word(how_.axes, chosen());
        torques.effort_name = "muscles";
        const double side_px = std::min(95.0, 0.1 * stage_.size_px.x());
        add_balance_strip(torques, side_px, stage_.size_px.x() - side_px,
                          stage_.size_px.y() - text(74.0), how_.units, how_.text_scale, shapes());
    }

    const mechanics::BodyCase& case_;
    const mechanics::BodyResult& result_;
    const BodyStage& stage_;
    const BodyDrawing& how_;
    Rect room_; ///< of everything but the heading and the strip
    LabelBoard board_;
    std::vector<SeenForce> forces_;
    Point own_from_ = Point::Zero();
    Point own_to_ = Point::Zero();
    double own_weight_N_ = 0.0;
    bool by_ground_ = false; ///< the line and the arms are those of the ground's push
    Drawing drawing_;
};

} // namespace

Drawing draw_body(const mechanics::BodyCase& body_case, const mechanics::BodyResult& result,
                  const BodyStage& stage, const BodyDrawing& how) {
    return BodyPainter(body_case, result, stage, how).paint();
}

} // namespace steelyard::scene
