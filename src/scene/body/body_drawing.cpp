#include "scene/body/body_drawing.h"

#include "scene/body/axis_rod.h"
#include "scene/body/body_labels.h"
#include "scene/body/muscle_spindle.h"
#include "scene/body/order_bar.h"
#include "scene/body/resistance_marks.h"
#include "scene/body/support_pad.h"
#include "scene/figure/figure.h"
#include "scene/marks/balance_strip.h"
#include "scene/marks/sheet_cut.h"
#include "scene/marks/text_width.h"
#include "words/body/axis_shares.h"

#include <algorithm>
#include <cmath>

namespace steelyard::scene {

namespace {

using mechanics::Hinge;

/// Length of a resistance's arrow whose size is not given away [px].
constexpr double kNeutralArrow_px = 90.0;
constexpr double kSmallTorque_Nm = 0.05; ///< below it a joint is said to carry nothing
/// Turning of the largest torque [rad]: the others turn in proportion.
constexpr double kLargestTurn_rad = 2.2;
constexpr double kTurnRadius_px = 28.0;
/// An axis is seen end on, so that its turning can be drawn, when it points at the eye this much.
constexpr double kEndOn = 0.5;

class BodyPainter {
public:
    BodyPainter(const mechanics::BodyCase& body_case, const mechanics::BodyResult& result,
                const BodyStage& stage, const BodyDrawing& how, LabelSides& sides)
        : case_(body_case), result_(result), stage_(stage), how_(how),
          sides_(sides), room_{{8.0, how.heading_top_px + how.heading_room_px * how.text_scale},
                               {stage.size_px.x() - 8.0,
                                stage.size_px.y() - (how.strip ? 92.0 * how.text_scale : 8.0)}} {}

    Drawing paint() {
        drawing_.size_px = stage_.size_px;
        drawing_.title = how_.name;
        drawing_.description = how_.sentence;
        add_heading();
        forces_ = shown_forces();
        add_ground();
        if (const auto pad = support_pad(case_, result_.placement, stage_, lowest_floor_px()))
            add_support_pad(*pad, shapes());
        for (const Rect& step : raised_steps(case_, result_.placement, stage_, lowest_floor_px()))
            add_step(step, shapes());
        add_trail();
        const std::size_t before_figure = shapes().size();
        add_figure(case_, result_.placement, stage_, shapes());
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
        if (!how_.close_up) // an enlarged drawing stays on its stage
            cut_to({{0.0, how_.heading_top_px},
                    {stage_.size_px.x(), stage_.size_px.y() - (how_.strip ? text(86.0) : 0.0)}},
                   before_figure, shapes());
        if (how_.close_up) {
            cut_to(room_, before_figure, shapes());
            const auto is_not_told = [&](const BodyArm& arm) {
                return !(arm.chosen || !has_order_bar()) || !room_.contains(joint_px(arm.hinge));
            };
            arms.erase(std::remove_if(arms.begin(), arms.end(), is_not_told), arms.end());
        }
        const std::optional<OwnWeight> own_weight = add_own_weight();
        for (const BodyArm& arm : arms)
            add_arm_mark(arm);
        if (how_.marks.axes) {
            add_axis_rod(result_.placement, chosen(), stage_, room_, shapes());
            add_axes();
        }
        for (const SeenForce& force : forces_)
            add_force(force);
        const std::optional<PullMark> pull = add_close_up();
        add_words(std::move(arms), own_weight, pull);
        if (how_.strip)
            add_strip();
        return std::move(drawing_);
    }

private:
    std::vector<SeenForce> shown_forces() const {
        std::vector<SeenForce> shown;
        for (SeenForce& force : seen_forces(result_, stage_)) {
            if (force.ground && !how_.marks.reaction)
                continue;
            if (how_.close_up && !room_.contains(force.from))
                continue; // it acts on a part that is not shown
            if (!force.ground && !how_.marks.load_sizes)
                force.span = {kNeutralArrow_px * force.span.along_px.normalized(), false};
            if (room_.contains(force.from) && !room_.contains(force.to()))
                force.span = {room_.last_inside(force.from, force.to()) - force.from, true};
            shown.push_back(force);
        }
        return shown;
    }

    std::vector<Shape>& shapes() { return drawing_.shapes; }
    double text(double px) const { return px * how_.text_scale; }
    bool has_order_bar() const { return how_.close_up && how_.close_up->order_bar; }
    /// The load's colour, or that of the ground where it drives the joint.
    Role line_role() const { return by_ground_ ? Role::reaction : Role::load; }
    Hinge chosen() const { return how_.axes[how_.chosen]; }
    Point joint_px(Hinge hinge) const {
        return stage_.to_sheet(result_.placement.axis_point_m(hinge));
    }

    void add_heading() {
        add_heading_line(how_.name, 16.0, TextSize::body, Role::ink, true);
        double down_px = 38.0;
        constexpr double kLine_px = 18.0;
        const double width_px =
            (has_order_bar() ? how_.close_up->order_bar->low.x() : stage_.size_px.x()) - 48.0;
        for (const std::string& line :
             broken_lines(how_.sentence, TextSize::caption, how_.text_scale, width_px)) {
            add_heading_line(line, down_px, TextSize::caption, Role::quiet_ink, false);
            down_px += kLine_px;
        }
        // What is drawn keeps off a heading of more lines, too.
        room_.low.y() = std::max(room_.low.y(), how_.heading_top_px + text(down_px - 8.0));
        if (has_order_bar())
            room_.low.y() = std::max(room_.low.y(), how_.close_up->order_bar->high.y());
    }

    void add_heading_line(const std::string& words, double down_px, TextSize size, Role role,
                          bool strong) {
        if (words.empty())
            return;
        const Point at(24.0, how_.heading_top_px + text(down_px));
        shapes().emplace_back(make_label(at, words, size, role, Align::left, strong));
    }

    /// Below it the strip begins.
    double lowest_floor_px() const { return stage_.size_px.y() - text(96.0); }

    /// The floor, where it is seen from the edge and something stands on it.
    void add_ground() {
        const bool edge_on = std::abs(stage_.camera.toward_eye().y()) < 0.2;
        const double floor_px = stage_.to_sheet(Vec3::Zero()).y();
        if (!edge_on || floor_px > lowest_floor_px())
            return;
        shapes().emplace_back(Line{{0.06 * stage_.size_px.x(), floor_px},
                                   {0.9 * stage_.size_px.x(), floor_px},
                                   {Role::quiet_ink, 2.0}});
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
        std::vector<Outline> flesh;
        for (const Shape& shape : shapes())
            if (const auto* outline = std::get_if<Outline>(&shape);
                outline != nullptr && is_of_figure(outline->fill))
                flesh.push_back(*outline);
        // Near by there is room for bellies, and the pull is an arrow over them.
        const SpindleStyle style{how_.resting_muscles, how_.close_up ? 2.2 : 1.0};
        for (const Spindle& spindle :
             spindles_of(*how_.muscles, case_.body, result_.placement, chosen(), stage_, style)) {
            const Role pulling = how_.close_up ? Role::muscle : Role::effort;
            add_spindle(spindle, flesh, spindle.rests ? Role::resting_muscle : pulling, shapes());
        }
    }

    void add_line_of_action(const mechanics::BodyForce& force) {
        const auto line = action_line(force, how_.axes, result_, stage_);
        if (!line)
            return;
        const Point at = stage_.to_sheet(force.point_m);
        const bool inside = room_.contains(at); // and then not over the heading or the strip
        shapes().emplace_back(Line{inside ? room_.last_inside(at, line->from) : line->from,
                                   inside ? room_.last_inside(at, line->to) : line->to,
                                   {line_role(), 1.5, Dash::dashed, 0.8}});
    }

    void add_arm_mark(const BodyArm& arm) {
        if (arm.mark.shift.norm() > 1.0)
            shapes().emplace_back(Line{arm.mark.axis,
                                       arm.mark.axis + arm.mark.shift,
                                       {Role::quiet_ink, 1.5, Dash::dotted, 0.8}});
        add_arm(arm.mark, {line_role(), arm.chosen ? 3.0 : 1.75, Dash::solid, 1.0}, shapes());
    }

    void add_axes() {
        const std::size_t most = most_turned();
        for (std::size_t i = 0; i < how_.axes.size(); ++i) {
            Disc ring;
            ring.centre = joint_px(how_.axes[i]);
            if (!is_shown(i))
                continue;
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
            add_torque_arc(how_.axes[i]);
        }
    }

    /// Whether the joint of an axis lies on the stage; near by only the chosen one is told of.
    bool is_shown(std::size_t axis) const {
        return !how_.close_up || ((axis == how_.chosen || !has_order_bar()) &&
                                  room_.contains(joint_px(how_.axes[axis])));
    }

    /// What only a close-up has: the muscle's pull, the order bar, the whole person.
    std::optional<PullMark> add_close_up() {
        if (!how_.close_up)
            return std::nullopt;
        std::optional<PullMark> pull;
        if (how_.muscles && how_.torques) {
            pull = pull_mark(*how_.muscles, result_.placement, chosen(), stage_);
            const auto order = lever_order(case_, result_, chosen(), *how_.muscles);
            if (order && has_order_bar())
                add_order_bar(*order, *how_.close_up->order_bar, how_.text_scale, shapes());
        }
        if (pull)
            add_pull_mark(*pull, shapes());
        add_whole_person(case_, result_, stage_, room_, how_.close_up->whole_person, shapes());
        return pull;
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
    }

    void add_force(const SeenForce& force) {
        const Stroke stroke =
            force.ground ? Stroke{Role::reaction, 3.0, Dash::dotted} : Stroke{Role::load, 4.5};
        add_arrow(force.from, force.to(), force.ground ? Tail::plain : Tail::square, stroke,
                  shapes());
        if (force.span.cut)
            add_break(force.from, force.to(), stroke, shapes());
    }

    /// What lies beyond the chosen axis pulls on it too: its weight at its common centre.
    std::optional<OwnWeight> add_own_weight() {
        if (!how_.torques || !how_.marks.load_sizes || !how_.marks.arms)
            return std::nullopt;
        const mechanics::WeightBeyond weight = mechanics::weight_beyond(case_, result_, chosen());
        const Point from = stage_.to_sheet(weight.com_m);
        const ArrowSpan span = ended_above(
            stage_.lowest_tip_px, from,
            arrow_span(stage_.arrow(Vec3(0.0, -weight.weight_N, 0.0)), 0.16 * stage_.size_px.y()));
        if (span.along_px.norm() < 10.0)
            return std::nullopt;
        const Stroke stroke{Role::own_weight, 2.0};
        const Point to = from + span.along_px;
        add_arrow(from, to, Tail::dot, stroke, shapes());
        if (span.cut)
            add_break(from, to, stroke, shapes());
        return OwnWeight{from, to, weight.weight_N};
    }

    /// When all else is drawn, so that the words find what is left of the paper.
    void add_words(std::vector<BodyArm> arms, const std::optional<OwnWeight>& own_weight,
                   const std::optional<PullMark>& pull) {
        LabelBoard board(room_, how_.text_scale);
        for (const Rect& rect : how_.kept_clear)
            board.keep_clear(rect);
        if (how_.close_up)
            board.keep_clear(how_.close_up->whole_person);
        board.keep_clear(shapes());
        add_body_words(
            {case_, result_, stage_, how_, forces_, std::move(arms), line_role(), own_weight, pull},
            sides_, board, shapes());
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
    LabelSides& sides_;
    Rect room_; ///< of everything but the heading and the strip
    std::vector<SeenForce> forces_;
    bool by_ground_ = false; ///< the line and the arms are those of the ground's push
    Drawing drawing_;
};

} // namespace

Drawing draw_body(const mechanics::BodyCase& body_case, const mechanics::BodyResult& result,
                  const BodyStage& stage, const BodyDrawing& how) {
    LabelSides sides;
    return draw_body(body_case, result, stage, how, sides);
}

Drawing draw_body(const mechanics::BodyCase& body_case, const mechanics::BodyResult& result,
                  const BodyStage& stage, const BodyDrawing& how, LabelSides& sides) {
    return BodyPainter(body_case, result, stage, how, sides).paint();
}

} // namespace steelyard::scene
