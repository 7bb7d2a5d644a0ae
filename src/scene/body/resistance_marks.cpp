#include "scene/body/resistance_marks.h"

#include "scene/marks/force_marks.h"

#include <algorithm>

namespace steelyard::scene {

namespace {

using mechanics::BodyForce;

/// The last point of a rectangle on the way from a point in it to one outside.
Point last_inside(const Point& from, const Point& to, const Rect& room) {
    double share = 1.0;
    for (int part = 0; part < 2; ++part) {
        const double edge = to[part] > room.high[part]  ? room.high[part]
                            : to[part] < room.low[part] ? room.low[part]
                                                        : to[part];
        if (edge != to[part])
            share = std::min(share, (edge - from[part]) / (to[part] - from[part]));
    }
    return from + share * (to - from);
}

/// Draws one resistance at the point where its force acts.
class ResistanceMark {
public:
    ResistanceMark(const mechanics::BodyCase& body_case, const mechanics::BodyResult& result,
                   const BodyForce& force, const BodyStage& stage, const Rect& room,
                   std::vector<Shape>& shapes)
        : case_(body_case), result_(result), stage_(stage), room_(room), shapes_(shapes),
          at_(stage.to_sheet(force.point_m)) {}

    void operator()(const mechanics::Dumbbell&) const { add_weight(0.055); }
    void operator()(const mechanics::Kettlebell&) const { add_weight(0.075); }
    void operator()(const mechanics::Cuff&) const { add_weight(0.05); }
    void operator()(const mechanics::PlateMachine&) const { add_weight(0.045); }
    void operator()(const mechanics::PartnerPush&) const {}
    void operator()(const mechanics::Barbell&) const {
        add_weight(0.11);
        add_ring(at_, 0.02 * stage_.px_per_m, Role::ink);
    }

    void operator()(const mechanics::Cable& cable) const {
        const Point pulley = stage_.to_sheet(cable.pulley_m);
        if (room_.contains(at_) && !room_.contains(pulley)) {
            add_arrow(at_, last_inside(at_, pulley, room_), Tail::plain, {Role::ink, 2.0}, shapes_);
            return;
        }
        shapes_.emplace_back(Line{at_, pulley, {Role::ink, 2.0}});
        add_ring(pulley, std::max(0.035 * stage_.px_per_m, 8.0), Role::ink);
    }

    void operator()(const mechanics::Band& band) const {
        Point anchor = at_;
        if (const auto* fixed = std::get_if<Vec3>(&band.anchor)) {
            anchor = stage_.to_sheet(*fixed);
        } else {
            const auto& on_body = std::get<mechanics::BodyPoint>(band.anchor);
            if (const auto local = mechanics::local_point(case_.body, on_body))
                anchor = stage_.to_sheet(result_.placement[on_body.segment].at(*local));
        }
        shapes_.emplace_back(Line{at_, anchor, {Role::quiet_ink, 5.0, Dash::dashed, 0.9}});
        add_ring(anchor, 6.0, Role::quiet_ink);
    }

private:
    void add_ring(const Point& centre, double radius_px, Role role) const {
        Disc ring;
        ring.centre = centre;
        ring.radius_px = radius_px;
        ring.fill = Role::sheet;
        ring.outline = Stroke{role, 2.5};
        shapes_.emplace_back(ring);
    }
    void add_weight(double radius_m) const {
        Disc weight;
        weight.centre = at_;
        weight.radius_px = std::max(radius_m * stage_.px_per_m, 7.0);
        weight.fill = Role::sheet;
        weight.fill_opacity = 0.85;
        weight.outline = Stroke{Role::ink, 2.5};
        shapes_.emplace_back(weight);
    }

    const mechanics::BodyCase& case_;
    const mechanics::BodyResult& result_;
    const BodyStage& stage_;
    const Rect& room_;
    std::vector<Shape>& shapes_;
    Point at_;
};

} // namespace

void add_resistance_marks(const mechanics::BodyCase& body_case, const mechanics::BodyResult& result,
                          const BodyStage& stage, const Rect& room, std::vector<Shape>& shapes) {
    for (const BodyForce& force : result.forces) {
        if (force.origin != mechanics::ForceOrigin::resistance)
            continue;
        std::visit(ResistanceMark(body_case, result, force, stage, room, shapes),
                   body_case.resistances[force.index].kind);
    }
}

} // namespace steelyard::scene
