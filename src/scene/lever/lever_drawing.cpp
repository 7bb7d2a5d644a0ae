#include "scene/lever/lever_drawing.h"

#include "mechanics/constants.h"
#include "mechanics/lever/lever_geometry.h"
#include "scene/lever/arm_words.h"
#include "scene/lever/lever_body.h"
#include "scene/lever/lever_forces.h"
#include "scene/lever/limb_flesh.h"
#include "scene/marks/arm_shelves.h"
#include "scene/marks/balance_strip.h"
#include "scene/marks/dimension_marks.h"
#include "scene/marks/force_marks.h"
#include "scene/marks/label_board.h"
#include "scene/marks/name_plate.h"
#include "setup/units/format_quantity.h"

#include <algorithm>
#include <cmath>

namespace steelyard::scene {

namespace {

using mechanics::Vec2;
using setup::Dimension;

constexpr double kLongestScale_px = 90.0;
constexpr double kStandOff_px = 34.0; ///< words farther off their place have a leader

class LeverPainter {
public:
    LeverPainter(const mechanics::Lever& lever, const mechanics::LeverResult& solved,
                 const StageView& view, const LeverDrawing& how)
        : lever_(lever), solved_(solved), view_(view), how_(how),
          board_(label_room(view, how), how.text_scale) {}

    Drawing paint() {
        drawing_.size_px = view_.size_px;
        drawing_.title = how_.name;
        drawing_.description = how_.sentence;
        if (how_.marks.arrow_scale) // drawn last, but no label may take its room
            board_.keep_clear(Rect{arrow_scale_at() - Point(0.0, text(24.0)),
                                   arrow_scale_at() + Point(kLongestScale_px, 6.0)});
        if (how_.limb) // under all words
            add_body();
        if (how_.marks.heading)
            add_heading();
        const std::vector<DrawnForce> forces = lever_forces(lever_, solved_, view_, how_);
        for (const DrawnForce& force : forces)
            board_.keep_clear(force.from, force.to, 12.0);
        if (how_.marks.lines)
            for (const DrawnForce& force : forces)
                add_line_of_action(force);
        if (!how_.limb)
            add_body();
        for (const DrawnForce& force : forces)
            if (force.role == Role::own_weight) // the axis stays readable above it
                add_force(force);
        if (how_.marks.axis)
            add_axis();
        add_lengths();
        if (how_.marks.turning)
            add_turnings();
        add_couples();
        if (how_.marks.arms)
            add_arms(forces);
        for (const DrawnForce& force : forces)
            if (force.role != Role::own_weight)
                add_force(force);
        // Load and effort first: what is said quietly gives way, or a room takes one for the other.
        for (const bool quiet : {false, true})
            for (const DrawnForce& force : forces)
                if (quiet == (force.role == Role::own_weight || force.role == Role::reaction))
                    add_force_label(force);
        if (how_.marks.ruler) // its numbers take the room that is left
            add_ruler();
        if (how_.marks.strip && !tips())
            add_strip();
        if (how_.marks.arrow_scale)
            add_arrow_scale();
        return std::move(drawing_);
    }

private:
    /// Where labels may stand: below the heading and above the strip.
    static Rect label_room(const StageView& view, const LeverDrawing& how) {
        const double top_px = how.heading_top_px + (how.marks.heading ? how.heading_room_px : 0.0);
        const double strip_px = how.marks.strip ? 92.0 * how.text_scale : 8.0;
        return {{8.0, top_px}, {view.size_px.x() - 8.0, view.size_px.y() - strip_px}};
    }

    std::vector<Shape>& shapes() { return drawing_.shapes; }
    double text(double px) const { return px * how_.text_scale; }
    std::string quantity(double value, Dimension dimension) const {
        return setup::format_quantity(value, dimension, how_.units);
    }

    Point tilted(const Vec2& point_m) const {
        return tilted_point(view_, solved_, how_.pose, point_m);
    }

    Point arrow_scale_at() const { return {24.0, view_.size_px.y() - text(128.0)}; }

    void add_heading() {
        Label name = make_label({24.0, how_.heading_top_px + text(16.0)}, how_.name, TextSize::body,
                                Role::ink, Align::left, true);
        board_.keep_clear(room_of(name, how_.text_scale));
        shapes().emplace_back(std::move(name));
        if (how_.sentence.empty())
            return;
        Label sentence = make_label({24.0, how_.heading_top_px + text(38.0)}, how_.sentence,
                                    TextSize::caption, Role::quiet_ink, Align::left);
        board_.keep_clear(room_of(sentence, how_.text_scale));
        shapes().emplace_back(std::move(sentence));
    }

    void add_line_of_action(const DrawnForce& force) {
        if (!force.has_line)
            return;
        const Point point = view_.to_sheet(force.reading.point_m);
        const Point foot = view_.to_sheet(force.reading.foot_m);
        const Point along{force.direction.x(), -force.direction.y()};
        const double at_foot = (foot - point).dot(along);
        const double at_tip = (force.to - force.from).dot(along);
        const double first = std::min({0.0, at_foot, at_tip}) - 70.0;
        const double last = std::max({0.0, at_foot, at_tip}) + 46.0;
        shapes().emplace_back(Line{
            point + first * along, point + last * along, {force.role, 1.5, Dash::dashed, 0.7}});
        board_.keep_clear(point + first * along, point + last * along, 1.0);
    }

    void add_body() {
        std::vector<Point> corners;
        for (const Vec2& corner : lever_.path_m)
            corners.push_back(tilted(corner));
        if (how_.limb)
            add_limb(*how_.limb, corners, view_.size_px, board_, shapes());
        else
            add_lever_beam(std::move(corners), kStageLever, board_, shapes());
    }

    void add_axis() {
        add_stand(solved_.axis_m,
                  how_.axis_name.empty() ? mechanics::axis_name(lever_) : how_.axis_name);
        if (mechanics::rests_on_two(lever_))
            add_stand(solved_.effort.point_m, lever_.effort.name);
    }

    void add_stand(const Vec2& at_m, const std::string& name) {
        const Point at = view_.to_sheet(at_m);
        const bool on_stand = !how_.limb; // a joint needs none
        const Point base = at + Point(0.0, on_stand ? kStageLever.stand_px : 10.0);
        add_lever_axis(at, on_stand, kStageLever, board_, shapes());
        const double line = text(20.0);
        say({make_label(base + Point(0.0, line), name, TextSize::body, Role::ink, Align::centre),
             make_label(base + Point(-28.0, 0.0), name, TextSize::body, Role::ink, Align::right),
             make_label(base + Point(28.0, 0.0), name, TextSize::body, Role::ink, Align::left)},
            at);
    }

    void add_leader(const Point& from, const Rect& room) {
        if (const Point end = leader_end(from, room); (end - from).norm() > kStandOff_px)
            shapes().emplace_back(Line{from, end, {Role::quiet_ink, 1.0}});
    }

    /// Words of a place; of a limb where they cover nothing, even farther off, with a leader.
    void say(const std::vector<Label>& ways, const Point& place) {
        const auto free = how_.limb ? board_.place_free(ways, place) : std::nullopt;
        if (free)
            add_leader(place, room_of(*free, how_.text_scale));
        shapes().emplace_back(free ? *free : board_.place(ways));
    }

    void add_turnings() {
        const double load_Nm = solved_.torque_load_Nm;
        const double effort_Nm = mechanics::torque_about(
            solved_.axis_m,
            {solved_.effort.point_m, mechanics::unit_vector(lever_.effort.direction_rad) *
                                         shown_effort_N(solved_, how_.pose)});
        const double larger = std::max({std::abs(load_Nm), std::abs(effort_Nm), 1e-12});
        const bool same_way = load_Nm * effort_Nm > 0.0;
        const Point at = view_.to_sheet(solved_.axis_m);
        // Counter-clockwise in the world is counter-clockwise on the sheet: negative there.
        const double most_rad = 80.0 * mechanics::kDegree_rad;
        add_turning(at, 38.0, -most_rad * load_Nm / larger, {Role::load, 3.0}, shapes());
        if (how_.marks.effort_size)
            add_turning(at, same_way ? 50.0 : 38.0, -most_rad * effort_Nm / larger,
                        {Role::effort, 3.0}, shapes());
        board_.keep_clear({at - Point(40.0, 40.0), at + Point(40.0, 0.0)});
    }

    /// A couple has no place: it is shown as a turning about the axis, with its name.
    void add_couples() {
        const Point at = view_.to_sheet(solved_.axis_m);
        double radius_px = 62.0;
        for (const mechanics::Load& load : lever_.loads) {
            const auto* couple = std::get_if<mechanics::Couple>(&load.action);
            if (couple == nullptr || couple->torque_Nm == 0.0)
                continue;
            const double turn_rad =
                std::copysign(100.0 * mechanics::kDegree_rad, -couple->torque_Nm);
            add_turning(at, radius_px, turn_rad, {Role::load, 4.0}, shapes());
            std::string words = load.name;
            if (how_.marks.load_sizes)
                words += " " + quantity(std::abs(couple->torque_Nm), Dimension::torque);
            const double side = turn_rad > 0.0 ? 1.0 : -1.0;
            shapes().emplace_back(board_.place(
                {make_label(at + Point(side * (radius_px + 10.0), -text(24.0)), words,
                            TextSize::body, Role::load, side > 0.0 ? Align::left : Align::right),
                 make_label(at + Point(0.0, -radius_px - text(12.0)), words, TextSize::body,
                            Role::load, Align::centre)}));
            radius_px += 18.0;
        }
    }

    void add_arms(const std::vector<DrawnForce>& forces) {
        ArmShelves shelves(view_.to_sheet(solved_.axis_m));
        for (const DrawnForce& force : forces) {
            if (!force.has_arm || force.reading.arm_m * view_.px_per_m < 3.0)
                continue;
            const Point along{force.direction.x(), -force.direction.y()};
            const ArmMark arm = shelves.shelve(view_.to_sheet(force.reading.foot_m),
                                               view_.to_sheet(force.reading.point_m), along);
            add_arm(arm, {force.role, 2.5}, shapes());
            board_.keep_clear(arm.axis + arm.shift, arm.foot + arm.shift, 2.5);
            const Point corner = 11.0 * along; // bracket and right angle at the line of action
            board_.keep_clear(arm.foot + arm.shift - corner, arm.foot + arm.shift + corner, 2.5);
            add_arm_words({arm, force.role, quantity(force.reading.arm_m, Dimension::length)},
                          how_.text_scale, board_, shapes());
        }
    }

    void add_force(const DrawnForce& force) {
        if ((force.to - force.from).norm() < 8.0 && force.tail == Tail::plain)
            return;
        add_arrow(force.from, force.to, force.tail, force.stroke, shapes());
        if (force.cut)
            add_break(force.from, force.to, force.stroke, shapes());
    }

    /// A force's size and name stand together.
    void add_force_label(const DrawnForce& force) {
        if ((force.to - force.from).norm() < 8.0 && force.tail == Tail::plain)
            return;
        const std::vector<WordPlace> places = places_beside(force.from, force.to, how_.text_scale);
        if (force.quiet || force.size.empty()) {
            const std::string words = force.name + (force.size.empty() ? "" : " ") + force.size;
            const TextSize size = force.quiet ? how_.smallest : TextSize::body;
            say(labels_at(places, words, size, force.role), 0.5 * (force.from + force.to));
            return;
        }
        const NamePlate plate{force.size, force.name, force.role, TextSize::body, force.role};
        const Point middle = 0.5 * (force.from + force.to);
        if (how_.limb)
            if (const auto room =
                    add_free_name_plate(plate, places, middle, how_.text_scale, board_, shapes()))
                return add_leader(middle, *room);
        add_name_plate(plate, places, how_.text_scale, board_, shapes());
    }

    /// Ticks along the lever, at round distances from its first end.
    void add_ruler() {
        const double length_m = mechanics::path_length(lever_.path_m);
        const double unit_m = how_.units == setup::UnitSystem::us ? mechanics::kInch_m : 0.01;
        const double step_m = unit_m * std::max(1.0, round_step_below(length_m / unit_m / 6.0));
        const bool upright = lever_.path_m.size() == 2;
        for (int i = 0; i * step_m <= length_m * (1.0 + 1e-9); ++i) {
            const double at_m = std::min(i * step_m, length_m);
            const Point at = tilted(mechanics::point_at(lever_.path_m, at_m));
            const double ahead_m = at_m + 1e-4 * length_m;
            const double behind_m = at_m - 1e-4 * length_m;
            const Point side = (tilted(mechanics::point_at(lever_.path_m, ahead_m)) -
                                tilted(mechanics::point_at(lever_.path_m, behind_m)))
                                   .normalized();
            const Point down =
                side.x() >= 0.0 ? Point(-side.y(), side.x()) : Point(side.y(), -side.x());
            shapes().emplace_back(Line{at + 12.0 * down, at + 18.0 * down, {Role::quiet_ink, 1.0}});
            if (i % 2 != 0 || !upright || std::abs(at_m - lever_.axis_at_m) < 0.5 * step_m)
                continue;
            const Label place = make_label(at + 32.0 * down + Point(0.0, text(3.0)),
                                           i == 0 ? "0" : quantity(at_m, Dimension::length),
                                           TextSize::caption, Role::quiet_ink, Align::centre);
            if (board_.is_free(place)) // a tick can do without its number
                shapes().emplace_back(board_.place({place}));
        }
    }

    void add_lengths() {
        std::vector<DimensionLine> dimensions;
        for (const LengthMark& length : how_.lengths)
            dimensions.push_back({view_.to_sheet(length.from_m), view_.to_sheet(length.to_m),
                                  length.text, length.role, length.role});
        // Below the axis and its name, which thin lines would cross.
        const DimensionStyle style{86.0, how_.text_scale, 1.5, false};
        add_dimension_marks(std::move(dimensions), style, board_, shapes());
    }

    /// A beam that leaves one of its supports is no balance to be shown.
    bool tips() const {
        return solved_.status == mechanics::LeverStatus::first_support_lifts ||
               solved_.status == mechanics::LeverStatus::second_support_lifts;
    }

    void add_strip() {
        StripTorques torques;
        torques.load_Nm = solved_.torque_load_Nm;
        if (mechanics::rests_on_two(lever_)) {
            torques.load_name += " about " + mechanics::axis_name(lever_);
            torques.effort_name = "torque of " + lever_.effort.name;
        }
        torques.effort_Nm = solved_.torque_effort_Nm;
        torques.friction_Nm = std::abs(solved_.torque_friction_Nm);
        if (how_.pose.hand_N) {
            const mechanics::HandBalance hand =
                mechanics::balance_by_hand(lever_, solved_, *how_.pose.hand_N);
            torques.effort_Nm = hand.torque_effort_Nm;
            torques.friction_Nm = lever_.friction.coefficient * lever_.friction.radius_m *
                                  hand.axis_reaction_N.norm();
        }
        const double side_px = std::min(150.0, 0.1 * view_.size_px.x());
        add_balance_strip(torques, side_px, view_.size_px.x() - side_px,
                          view_.size_px.y() - text(74.0), how_.units, how_.text_scale, shapes());
    }

    /// The one scale of all arrows, stated at the lower left.
    void add_arrow_scale() {
        const double unit_N = how_.units == setup::UnitSystem::us ? mechanics::kPoundForce_N : 1.0;
        const double force_N =
            unit_N * round_step_below(kLongestScale_px / view_.px_per_N / unit_N);
        const Point at = arrow_scale_at();
        const Point end = at + Point(force_N * view_.px_per_N, 0.0);
        shapes().emplace_back(Line{at, end, {Role::quiet_ink, 1.5}});
        for (const Point& tick : {at, end})
            shapes().emplace_back(
                Line{tick - Point(0.0, 4.0), tick + Point(0.0, 4.0), {Role::quiet_ink, 1.5}});
        shapes().emplace_back(make_label(at + Point(0.0, -text(9.0)),
                                         quantity(force_N, Dimension::force), TextSize::caption,
                                         Role::quiet_ink, Align::left));
    }

    const mechanics::Lever& lever_;
    const mechanics::LeverResult& solved_;
    const StageView& view_;
    const LeverDrawing& how_;
    LabelBoard board_;
    Drawing drawing_;
};

} // namespace

Drawing draw_lever(const mechanics::Lever& lever, const mechanics::LeverResult& solved,
                   const StageView& view, const LeverDrawing& how) {
    return LeverPainter(lever, solved, view, how).paint();
}

} // namespace steelyard::scene
