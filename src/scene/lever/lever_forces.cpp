#include "scene/lever/lever_forces.h"

#include "mechanics/lever/lever_geometry.h"
#include "setup/units/format_quantity.h"

namespace steelyard::scene {

namespace {

using mechanics::Vec2;
using setup::Dimension;

class ForceCollector {
public:
    ForceCollector(const mechanics::Lever& lever, const mechanics::LeverResult& solved,
                   const StageView& view, const LeverDrawing& how)
        : lever_(lever), solved_(solved), view_(view), how_(how) {}

    void set_span(DrawnForce& force) const {
        force.from = tilted_point(view_, solved_, how_.pose, force.reading.point_m);
        const ArrowSpan span =
            arrow_span(arrow_px(view_, force.reading.force_N), longest_arrow_px(view_));
        force.cut = span.cut;
        force.to = force.from + span.along_px;
    }

    std::vector<DrawnForce> collect() const {
        std::vector<DrawnForce> forces;
        for (std::size_t i = 0; i < lever_.loads.size(); ++i)
            if (!std::holds_alternative<mechanics::Couple>(lever_.loads[i].action))
                forces.push_back(load_force(i));
        if (how_.marks.own_weight && lever_.own_weight.mass_kg > 0.0)
            forces.push_back(own_weight_force());
        if (mechanics::rests_on_two(lever_)) { // its effort is the second support's push
            if (how_.marks.effort_size) {
                forces.push_back(push_of(solved_.axis_m, solved_.axis_reaction_N));
                forces.push_back(push_of(solved_.effort.point_m, solved_.effort.force_N));
            }
            return forces;
        }
        if (how_.marks.effort)
            forces.push_back(effort_force());
        if (how_.marks.reaction)
            forces.push_back(reaction_force());
        return forces;
    }

private:
    DrawnForce load_force(std::size_t index) const {
        const mechanics::Load& load = lever_.loads[index];
        DrawnForce force;
        force.role = Role::load;
        force.tail = Tail::square;
        force.stroke = {Role::load, 4.5};
        force.reading = solved_.loads[index];
        force.name = load.name;
        force.direction = {0.0, -1.0};
        if (const auto* pull = std::get_if<mechanics::PointForce>(&load.action))
            force.direction = mechanics::unit_vector(pull->direction_rad);
        const auto* weight = std::get_if<mechanics::Weight>(&load.action);
        const bool is_sought = mechanics::sought_load(lever_) == index;
        if (is_sought && solved_.status == mechanics::LeverStatus::load_reversed)
            force.name += ", would have to pull this way";
        else if (weight != nullptr && how_.marks.load_sizes)
            force.name +=
                (is_sought ? ", found: " : ", ") + quantity(weight->mass_kg, Dimension::mass);
        else if (is_sought)
            force.name += ", found";
        if (how_.marks.load_sizes)
            force.size = quantity(force.reading.force_N.norm(), Dimension::force);
        set_span(force);
        return force;
    }

    DrawnForce own_weight_force() const {
        DrawnForce force;
        force.role = Role::own_weight;
        force.tail = Tail::dot;
        force.stroke = {Role::own_weight, 2.5};
        force.reading = solved_.own_weight;
        force.direction = {0.0, -1.0};
        force.name = "own weight";
        force.size = quantity(force.reading.force_N.norm(), Dimension::force);
        force.has_arm = false;
        force.quiet = true;
        set_span(force);
        return force;
    }

    DrawnForce effort_force() const {
        DrawnForce force;
        force.role = Role::effort;
        force.tail = Tail::plain;
        force.stroke = {Role::effort, 4.5};
        force.reading = solved_.effort;
        force.name = lever_.effort.name;
        force.direction = mechanics::unit_vector(lever_.effort.direction_rad);
        force.reading.force_N = force.direction * shown_effort_N(solved_, how_.pose);
        const bool has_size = how_.pose.hand_N || solved_.effort_N;
        if (mechanics::sought_load(lever_))
            force.name += ", known";
        if (has_size && how_.marks.effort_size)
            force.size = quantity(force.reading.force_N.norm(), Dimension::force);
        set_span(force);
        const bool hidden = !how_.marks.effort_size;
        if (hidden || (force.to - force.from).norm() < 0.5 * kStubArrow_px) {
            // Without a size the arrow still says which way the effort pulls.
            const double sign = !hidden && shown_effort_N(solved_, how_.pose) < 0.0 ? -1.0 : 1.0;
            force.to = force.from + sign * (hidden ? 1.6 : 1.0) * kStubArrow_px *
                                        Point(force.direction.x(), -force.direction.y());
            force.cut = false;
        }
        return force;
    }

    /// What one of two supports does.
    DrawnForce push_of(const Vec2& point_m, const Vec2& force_N) const {
        DrawnForce force;
        force.role = Role::reaction;
        force.tail = Tail::plain;
        force.stroke = {Role::reaction, 4.0, Dash::dotted};
        force.reading.point_m = point_m;
        force.reading.force_N = force_N;
        force.size = quantity(force_N.norm(), Dimension::force);
        force.name = force_N.y() < 0.0 ? "must hold down" : "push";
        force.has_arm = false;
        force.has_line = false;
        set_span(force);
        return force;
    }

    DrawnForce reaction_force() const {
        Vec2 reaction_N = solved_.axis_reaction_N;
        if (how_.pose.hand_N)
            reaction_N =
                mechanics::balance_by_hand(lever_, solved_, *how_.pose.hand_N).axis_reaction_N;
        DrawnForce force;
        force.role = Role::reaction;
        force.tail = Tail::plain;
        force.stroke = {Role::reaction, 4.0, Dash::dotted};
        force.reading.point_m = solved_.axis_m;
        force.reading.force_N = reaction_N;
        force.size = quantity(reaction_N.norm(), Dimension::force);
        force.name = "reaction";
        force.has_arm = false;
        force.has_line = false;
        force.quiet = true;
        set_span(force);
        return force;
    }

    std::string quantity(double value, Dimension dimension) const {
        return setup::format_quantity(value, dimension, how_.units);
    }

    const mechanics::Lever& lever_;
    const mechanics::LeverResult& solved_;
    const StageView& view_;
    const LeverDrawing& how_;
};

} // namespace

std::vector<DrawnForce> lever_forces(const mechanics::Lever& lever,
                                     const mechanics::LeverResult& solved, const StageView& view,
                                     const LeverDrawing& how) {
    return ForceCollector(lever, solved, view, how).collect();
}

} // namespace steelyard::scene
