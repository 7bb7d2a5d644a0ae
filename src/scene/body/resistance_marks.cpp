#include "scene/body/resistance_marks.h"

#include "scene/marks/force_marks.h"

#include <algorithm>

namespace steelyard::scene {

namespace {

using mechanics::BodyForce;

/// Draws one resistance at the point where its force acts.
class ResistanceMark {
public:
    ResistanceMark(const mechanics::BodyCase& body_case, const mechanics::BodyResult& result,
                   const BodyForce& force, const BodyStage& stage, const Rect& room,
                   std::vector<Shape>& shapes)
        : case_(body_case), result_(result), stage_(stage), room_(room), shapes_(shapes),
          at_(stage.to_sheet(force.point_m)) {}

    template <typename Held>
    void operator()(const Held& /*thing*/) const {} // drawn with the figure

    void operator()(const mechanics::Cable& cable) const { add_cable(cable.pulley_m); }
    void operator()(const mechanics::CableColumn& column) const { add_cable(column.pulley_m); }

    void operator()(const mechanics::Band& band) const {
        Point anchor = at_;
        if (const auto* fixed = std::get_if<Vec3>(&band.anchor)) {
            anchor = stage_.to_sheet(*fixed);
        } else {
            const auto& on_body = std::get<mechanics::BodyPoint>(band.anchor);
            if (const auto local = mechanics::local_point(case_.body, on_body))
                anchor = stage_.to_sheet(result_.placement[on_body.segment].at(*local));
        }
        // Two strands that run together: a loop of rubber.
        const bool runs_out = room_.contains(at_) && !room_.contains(anchor);
        const Point end = runs_out ? room_.last_inside(at_, anchor) : anchor;
        const Point way = end - at_;
        const Point aside = 2.0 * Point(-way.y(), way.x()) / std::max(way.norm(), 1.0);
        for (const double side : {-1.0, 1.0})
            shapes_.emplace_back(
                Line{at_ + side * aside, end + 0.4 * side * aside, {Role::ink, 1.75}});
        if (runs_out)
            add_arrow(end - 18.0 * way.normalized(), end, Tail::plain, {Role::ink, 2.0}, shapes_);
        else
            add_ring(anchor, 5.0, Role::ink);
    }

private:
    void add_cable(const Vec3& pulley_m) const {
        const Point pulley = stage_.to_sheet(pulley_m);
        if (room_.contains(at_) && !room_.contains(pulley)) {
            add_arrow(at_, room_.last_inside(at_, pulley), Tail::plain, {Role::ink, 2.0}, shapes_);
            return;
        }
        add_column(pulley_m);
        shapes_.emplace_back(Line{at_, pulley, {Role::ink, 2.0}});
        add_ring(pulley, std::max(0.035 * stage_.px_per_m, 6.0), Role::ink);
    }

    /// What carries a pulley, where the floor is seen from its edge: a column behind it.
    void add_column(const Vec3& pulley_m) const {
        if (std::abs(stage_.camera.toward_eye().y()) > 0.5)
            return;
        constexpr double kTop_m = 2.15;
        const auto at_height = [&](double up_m) {
            return stage_.to_sheet(Vec3(pulley_m.x(), up_m, pulley_m.z()));
        };
        constexpr double kAboveStrip_px = 10.0; // its end is round
        Point foot = at_height(0.0);
        foot.y() = std::min(foot.y(), room_.high.y() - kAboveStrip_px);
        const Point top = room_.last_inside(foot, at_height(std::max(kTop_m, pulley_m.y() + 0.1)));
        if (room_.contains(foot))
            shapes_.emplace_back(
                Line{foot, top, {Role::pad, std::max(0.05 * stage_.px_per_m, 4.0)}});
    }

    void add_ring(const Point& centre, double radius_px, Role role) const {
        Disc ring;
        ring.centre = centre;
        ring.radius_px = radius_px;
        ring.fill = Role::sheet;
        ring.outline = Stroke{role, 2.5};
        shapes_.emplace_back(ring);
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
