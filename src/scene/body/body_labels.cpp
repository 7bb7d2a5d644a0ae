#include "scene/body/body_labels.h"

#include "scene/marks/name_plate.h"
#include "setup/units/format_quantity.h"
#include "words/body/axis_shares.h"
#include "words/body/rope_words.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace steelyard::scene {

namespace {

using mechanics::Hinge;
using setup::Dimension;

/// Words farther than this from what they belong to have a leader [px].
constexpr double kStandOff_px = 30.0;
constexpr double kJoint_px = 14.0; ///< from a joint's middle to the start of its leader

class Writer {
public:
    Writer(const BodyWords& words, LabelSides& sides, LabelBoard& board, std::vector<Shape>& shapes)
        : words_(words), how_(words.how), sides_(sides), board_(board), shapes_(shapes) {}

    /// In the order of their importance: what comes first finds the best room.
    void write() {
        const std::vector<std::size_t> axes = axes_by_torque();
        const auto is_chosen = [&](std::size_t axis) { return axis == how_.chosen; };
        if (how_.torques && how_.marks.axes && !axes.empty())
            add_axis(how_.chosen);
        for (const SeenForce& force : words_.forces)
            if (!force.ground)
                add_force(force);
        if (words_.pull)
            add_pull(*words_.pull);
        for (const BodyArm& arm : words_.arms)
            if (arm.chosen)
                add_arm(arm);
        const bool one_joint = how_.close_up && how_.close_up->order_bar;
        if (how_.torques && how_.marks.axes && !one_joint)
            for (const std::size_t axis : axes)
                if (!is_chosen(axis))
                    add_axis(axis);
        for (const BodyArm& arm : words_.arms)
            if (!arm.chosen)
                add_arm(arm);
        if (words_.own_weight)
            add_own_weight(*words_.own_weight);
    }

private:
    double text(double px) const { return px * how_.text_scale; }
    std::string quantity(double value, Dimension dimension) const {
        return setup::format_quantity(value, dimension, how_.units);
    }

    /// The axes, those of the largest torque first.
    std::vector<std::size_t> axes_by_torque() const {
        std::vector<std::size_t> axes(how_.axes.size());
        std::iota(axes.begin(), axes.end(), std::size_t{0});
        const auto torque_Nm = [&](std::size_t axis) {
            return std::abs(words_.result.muscle(how_.axes[axis]));
        };
        std::stable_sort(axes.begin(), axes.end(),
                         [&](std::size_t a, std::size_t b) { return torque_Nm(a) > torque_Nm(b); });
        return axes;
    }

    void add_leader(const Point& from, const Rect& room) {
        shapes_.emplace_back(Line{from, leader_end(from, room), {Role::quiet_ink, 1.0}});
    }

    void add_axis(std::size_t axis) {
        const auto shares = words::axis_shares(how_.axes, words_.result);
        const std::size_t most = words::most_loaded(shares);
        const Hinge hinge = how_.axes[axis];
        const Point at = words_.stage.to_sheet(words_.result.placement.axis_point_m(hinge));
        NamePlate plate;
        plate.number = quantity(std::abs(words_.result.muscle(hinge)), Dimension::torque);
        plate.name = shares[axis].one;
        const bool is_alone = shares.size() > 1 && words::as_loaded(shares, most).empty();
        if (axis == most && is_alone) // what the second ring says
            plate.name += shares[axis].both ? ", together the largest torque" : ", largest torque";
        plate.role = Role::ink;
        plate.name_size = TextSize::caption;
        plate.name_role = Role::quiet_ink;
        const Rect room = add_plate(shares[axis].one, plate,
                                    places_around(at, {text(46.0), text(80.0), text(120.0)}), at,
                                    axis == how_.chosen);
        const Point way = leader_end(at, room) - at;
        if (way.norm() > kStandOff_px)
            add_leader(at + kJoint_px * way.normalized(), room);
    }

    /// @param always  without its name where there is room for the number alone
    /// @return its room; around the anchor where there is none
    Rect add_plate(const std::string& of, const NamePlate& plate, std::vector<WordPlace> places,
                   const Point& anchor, bool always) {
        prefer_side(of, anchor, places);
        if (const auto room =
                add_free_name_plate(plate, places, anchor, how_.text_scale, board_, shapes_)) {
            keep_side(of, anchor, *room);
            return *room;
        }
        if (always)
            if (const auto number = board_.place_free(
                    labels_at(places, plate.number, TextSize::body, plate.role, true), anchor)) {
                shapes_.emplace_back(*number);
                return room_of(*number, how_.text_scale);
            }
        return {anchor, anchor};
    }

    /// Places on the side where the words stood before come first.
    void prefer_side(const std::string& of, const Point& anchor,
                     std::vector<WordPlace>& places) const {
        const auto kept = sides_.find(of);
        if (kept == sides_.end() || kept->second == 0)
            return;
        std::stable_partition(places.begin(), places.end(), [&](const WordPlace& place) {
            return (place.at.x() - anchor.x()) * kept->second > 0.0;
        });
    }

    void keep_side(const std::string& of, const Point& anchor, const Rect& room) {
        constexpr double kBeside_px = 12.0; // nearer it stands above or below
        const double off_px = 0.5 * (room.low.x() + room.high.x()) - anchor.x();
        const int side = off_px < 0.0 ? -1 : 1;
        sides_[of] = std::abs(off_px) < kBeside_px ? 0 : side;
    }

    void add_force(const SeenForce& force) {
        const Point middle = 0.5 * (force.from + force.to());
        const auto places = places_beside(force.from, force.to(), how_.text_scale);
        const mechanics::Resistance& resistance = words_.body_case.resistances[force.force.index];
        std::string name = resistance.name;
        if (!how_.marks.load_sizes) {
            add_label("force " + name, labels_at(places, name, TextSize::body, Role::load),
                      force.from, force.to());
            return;
        }
        const std::string size = quantity(force.force.force_N.norm(), Dimension::force);
        if (const std::string stack = words::stack_words(resistance, how_.units); !stack.empty())
            name += ", " + stack;
        const Rect room =
            add_plate("force " + name, {size, name, Role::load, TextSize::body, Role::load}, places,
                      middle, true);
        add_leader_from(force.from, force.to(), room);
    }

    /// A muscle's pull and its moment arm.
    void add_pull(const PullMark& pull) {
        const Rect room = add_plate("pull",
                                    {quantity(pull.tension_N, Dimension::force), pull.name,
                                     Role::effort, TextSize::body, Role::effort},
                                    places_beside(pull.from, pull.to(), how_.text_scale),
                                    0.5 * (pull.from + pull.to()), true);
        add_leader_from(pull.from, pull.to(), room);
        const Point middle = 0.5 * (pull.arm.axis + pull.arm.foot);
        add_label(
            "pull arm",
            labels_at(places_around(middle, {text(40.0), text(70.0), text(110.0)}),
                      "moment arm, " + pull.name + " " + quantity(pull.arm_m, Dimension::length),
                      TextSize::body, Role::effort, true),
            pull.arm.axis, pull.arm.foot);
    }

    /// A leader from the nearest point of a stroke, where the words stand off it.
    void add_leader_from(const Point& from, const Point& to, const Rect& room) {
        const Point middle = 0.5 * (from + to);
        const Point end = leader_end(middle, room);
        const Point along = to - from;
        const double share =
            std::clamp((end - from).dot(along) / std::max(along.squaredNorm(), 1.0), 0.0, 1.0);
        if ((from + share * along - end).norm() > kStandOff_px)
            add_leader(middle, room);
    }

    /// Words of a stroke.
    /// @return false where there is no room for them
    bool add_label(const std::string& of, const std::vector<Label>& labels, const Point& from,
                   const Point& to) {
        const std::optional<Label> placed = board_.place_free(labels, 0.5 * (from + to));
        if (!placed)
            return false;
        shapes_.emplace_back(*placed);
        const Rect room = room_of(*placed, how_.text_scale);
        keep_side(of, 0.5 * (from + to), room);
        add_leader_from(from, to, room);
        return true;
    }

    void add_arm(const BodyArm& arm) {
        const Point from = arm.mark.axis + arm.mark.shift;
        const Point to = arm.mark.foot + arm.mark.shift;
        const std::string length = quantity(arm.arm_m, Dimension::length);
        const std::string words = "moment arm, " + axis_word(how_.axes, arm.hinge) + ' ' + length +
                                  (arm.end_on ? ", seen end-on" : "");
        const Point middle = 0.5 * (from + to);
        const Point outward = (to - from).normalized();
        std::vector<WordPlace> places{{middle - Point(0.0, 10.0 + text(4.0)), Align::centre},
                                      {middle + Point(0.0, 10.0 + text(12.0)), Align::centre}};
        // Past the line of action, then past the joint.
        for (const double down : {5.0, -12.0, 22.0, -30.0, 40.0, -48.0})
            for (const Point& end : {Point(to + 10.0 * outward), Point(from - 18.0 * outward)}) {
                const bool at_right = (end - middle).x() >= 0.0;
                places.push_back(
                    {end + Point(0.0, text(down)), at_right ? Align::left : Align::right});
            }
        const std::string of = "arm " + std::to_string(static_cast<int>(arm.hinge));
        prefer_side(of, middle, places);
        const auto tell = [&](const std::string& told) {
            return add_label(of,
                             labels_at(places, told, TextSize::body, words_.line_role, arm.chosen),
                             from, to);
        };
        if (!tell(words) && arm.chosen)
            tell(length);
    }

    /// Beside its arrow or nowhere: farther off nobody would know whose words these are.
    void add_own_weight(const OwnWeight& own) {
        const std::string words = "own weight " + quantity(own.weight_N, Dimension::force);
        for (const Label& label : labels_at(places_beside(own.from, own.to, how_.text_scale), words,
                                            TextSize::caption, Role::own_weight))
            if ((label.at - own.to).norm() < text(48.0) && board_.is_free(label)) {
                shapes_.emplace_back(board_.place({label}));
                return;
            }
    }

    const BodyWords& words_;
    const BodyDrawing& how_;
    LabelSides& sides_;
    LabelBoard& board_;
    std::vector<Shape>& shapes_;
};

} // namespace

void add_body_words(const BodyWords& words, LabelSides& sides, LabelBoard& board,
                    std::vector<Shape>& shapes) {
    Writer(words, sides, board, shapes).write();
}

} // namespace steelyard::scene
