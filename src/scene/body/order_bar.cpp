#include "scene/body/order_bar.h"

#include "scene/body/close_up.h"
#include "scene/marks/force_marks.h"
#include "scene/marks/text_width.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace steelyard::scene {

namespace {

using mechanics::Vec3;

/// The load that turns most against the muscle.
const mechanics::NamedForce* main_load(const mechanics::MuscleLever& lever,
                                       const mechanics::FreeBody& body) {
    const mechanics::NamedForce* main = nullptr;
    double most_Nm = 0.0;
    for (const mechanics::NamedForce& load : lever.loads) {
        const double turn_Nm =
            (load.point_m - lever.pivot_m).cross(load.force_N).dot(body.axis_direction);
        const double against_Nm = -std::copysign(1.0, lever.effort_torque_Nm) * turn_Nm;
        if (against_Nm > most_Nm) {
            most_Nm = against_Nm;
            main = &load;
        }
    }
    return main;
}

double arm_m(const mechanics::NamedForce& load, const mechanics::MuscleLever& lever,
             const mechanics::FreeBody& body) {
    const Vec3 moment = (load.point_m - lever.pivot_m).cross(load.force_N);
    return std::abs(moment.dot(body.axis_direction)) / std::max(load.force_N.norm(), 1e-9);
}

/// The line with its three marks.
class Bar {
public:
    Bar(const LeverOrder& order, const Rect& room, double text_scale, std::vector<Shape>& shapes)
        : order_(order), scale_(text_scale), shapes_(shapes) {
        const double low_m = std::min({0.0, order.effort_m, order.load_m});
        const double high_m = std::max({0.0, order.effort_m, order.load_m});
        const double side_px = text(40.0);
        const double span_px = std::max(room.high.x() - room.low.x() - 2.0 * side_px, 60.0);
        px_per_m_ = span_px / std::max(high_m - low_m, 1e-6);
        left_ = {room.low.x() + side_px, room.low.y() + text(60.0)};
        low_m_ = low_m;
        right_x_ = left_.x() + span_px;
        top_px_ = room.low.y();
    }

    void add() {
        const double past_px = text(16.0);
        shapes_.emplace_back(
            Line{left_ - Point(past_px, 0.0), {right_x_ + past_px, left_.y()}, {Role::ink, 3.0}});
        add_axis();
        add_effort();
        add_load();
        say({0.5 * (left_.x() + right_x_), top_px_ + text(14.0)}, words_of(order_), TextSize::body,
            Role::ink, true);
    }

private:
    double text(double px) const { return px * scale_; }
    Point at(double along_m) const { return left_ + Point((along_m - low_m_) * px_per_m_, 0.0); }

    void say(const Point& place, std::string_view words, TextSize size, Role role, bool strong) {
        shapes_.emplace_back(
            make_label(place, std::string(words), size, role, Align::centre, strong));
    }

    void add_axis() {
        const Point pin = at(0.0);
        const Point foot = pin + Point(0.0, text(14.0));
        const Point half(text(9.0), 0.0);
        shapes_.emplace_back(Triangle{pin, foot - half, foot + half, Role::ink});
        say(below(0.0, order_.load_m, "axis"), "axis", TextSize::caption, Role::ink, false);
    }

    void add_effort() {
        const Point from = at(order_.effort_m);
        const Point to = from - Point(0.0, text(22.0));
        add_arrow(from, to, Tail::plain, {Role::effort, 4.0}, shapes_);
        say(to - Point(0.0, text(5.0)), "effort", TextSize::caption, Role::effort, false);
    }

    void add_load() {
        const Point from = at(order_.load_m);
        add_arrow(from, from + Point(0.0, text(22.0)), Tail::square, {Role::load, 4.0}, shapes_);
        say(below(order_.load_m, 0.0, "load"), "load", TextSize::caption, Role::load, false);
    }

    /// Where the words of a place below the line stand, apart from those of another one.
    Point below(double along_m, double other_m, std::string_view words) const {
        const double apart_px =
            text(8.0) + text_width_px("axisload", TextSize::caption, false, scale_) * 0.5;
        Point place = at(along_m) + Point(0.0, text(40.0));
        const double gap_px = at(along_m).x() - at(other_m).x();
        if (std::abs(gap_px) < apart_px)
            place.x() += std::copysign(0.5 * (apart_px - std::abs(gap_px)),
                                       gap_px == 0.0 && words == "axis" ? -1.0 : gap_px);
        return place;
    }

    const LeverOrder& order_;
    double scale_;
    std::vector<Shape>& shapes_;
    double px_per_m_ = 1.0;
    Point left_ = Point::Zero();
    double right_x_ = 0.0;
    double low_m_ = 0.0;
    double top_px_ = 0.0;
};

} // namespace

std::string words_of(const LeverOrder& order) {
    static constexpr std::array<std::string_view, 4> kWords{"", "axis in the middle: first class",
                                                            "load in the middle: second class",
                                                            "effort in the middle: third class"};
    return std::string(kWords.at(static_cast<std::size_t>(order.lever_class)));
}

std::optional<LeverOrder> lever_order(const mechanics::BodyCase& body_case,
                                      const mechanics::BodyResult& result, mechanics::Hinge hinge,
                                      const mechanics::HingeMuscles& muscles) {
    const auto strongest = strongest_pull(muscles);
    if (!strongest)
        return std::nullopt;
    const mechanics::MuscleLever& lever = *muscles.levers[*strongest];
    if (!lever.of_whole.lever_class)
        return std::nullopt;
    const mechanics::FreeBody body = mechanics::free_body_at(body_case, result, hinge);
    const mechanics::NamedForce* load = main_load(lever, body);
    if (load == nullptr)
        return std::nullopt;
    LeverOrder order;
    order.lever_class = *lever.of_whole.lever_class;
    if (body.bar == mechanics::LeverBar::vertebra) {
        order.effort_m = -lever.effort_arm_m;
        order.load_m = arm_m(*load, lever, body);
        return order;
    }
    const auto along_m = [&](const mechanics::NamedForce& force) {
        return force.beyond_bone ? body.bone_m : (force.point_m - lever.pivot_m).dot(body.along);
    };
    order.effort_m = along_m(lever.effort);
    order.load_m = along_m(*load);
    if (order.load_m < 0.0) { // a bone may be read either way
        order.load_m = -order.load_m;
        order.effort_m = -order.effort_m;
    }
    return order;
}

void add_order_bar(const LeverOrder& order, const Rect& room, double text_scale,
                   std::vector<Shape>& shapes) {
    Bar(order, room, text_scale, shapes).add();
}

} // namespace steelyard::scene
