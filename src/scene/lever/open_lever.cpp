#include "scene/lever/open_lever.h"

#include "mechanics/lever/lever_geometry.h"
#include "scene/lever/lever_body.h"
#include "scene/lever/limb_flesh.h"
#include "scene/marks/dimension_marks.h"
#include "scene/marks/force_marks.h"
#include "scene/marks/label_board.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace steelyard::scene {
namespace {

using mechanics::Vec2;

constexpr double kSpotRadius_px = 10.0;

Label label_at(const Point& at, const std::string& text, Role role, Align align,
               bool strong = false) {
    return make_label(at, text, TextSize::body, role, align, strong);
}

class OpenLeverPainter {
public:
    OpenLeverPainter(const mechanics::Lever& lever, const StageView& view, const OpenLever& how)
        : lever_(lever), view_(view), how_(how),
          board_({{2.0, 2.0}, view.size_px - Point(2.0, 2.0)}, 1.0) {
        drawing_.size_px = view.size_px;
        drawing_.title = how.title;
        drawing_.description = how.description;
    }

    Drawing paint() {
        add_beam();
        if (how_.show_axis)
            add_axis();
        for (const mechanics::Load& load : lever_.loads)
            add_load(load);
        add_own_weight();
        if (how_.show_effort)
            add_effort();
        else if (how_.show_effort_place)
            add_effort_point();
        const std::size_t before = drawing_.shapes.size();
        add_dimensions();
        hold_back_words(before);
        const Point around = Point::Constant(kSpotRadius_px);
        for (const LetteredSpot& spot : how_.spots)
            board_.keep_clear(
                {view_.to_sheet(spot.at_m) - around, view_.to_sheet(spot.at_m) + around});
        for (const Words& words : words_)
            set(words);
        for (const LetteredSpot& spot : how_.spots) // above leaders
            add_spot(spot);
        for (Label& number : numbers_)
            set(std::move(number));
        return std::move(drawing_);
    }

private:
    /// Words of a place, with the ways to set them.
    struct Words {
        std::vector<Label> ways;
        Point place;
    };

    Point at(double at_m) const { return view_.to_sheet(mechanics::point_at(lever_.path_m, at_m)); }
    Point axis() const { return at(lever_.axis_at_m); }

    void add_beam() {
        std::vector<Point> corners;
        for (const Vec2& corner : lever_.path_m)
            corners.push_back(view_.to_sheet(corner));
        if (how_.limb)
            add_limb(*how_.limb, corners, view_.size_px, board_, drawing_.shapes);
        else
            add_lever_beam(std::move(corners), kFigureLever, board_, drawing_.shapes);
    }

    void add_axis() { add_stand(axis(), how_.axis_name); }

    void add_stand(const Point& pin, const std::string& name) {
        const double half = kFigureLever.stand_half_px;
        const double height = kFigureLever.stand_px;
        const bool on_stand = !how_.from_above && !how_.limb; // a joint needs none
        add_lever_axis(pin, on_stand, kFigureLever, board_, drawing_.shapes);
        const Point under = pin + Point(0.0, on_stand ? height + 18.0 : 26.0);
        std::vector<Label> ways{label_at(under, name, Role::ink, Align::centre),
                                label_at(under - Point(half, 0.0), name, Role::ink, Align::left),
                                label_at(under + Point(half, 0.0), name, Role::ink, Align::right)};
        for (const Align align : {Align::centre, Align::left, Align::right})
            ways.push_back(label_at(pin - Point(0.0, 14.0), name, Role::ink, align));
        // Between arrows that leave no room for it: lower than they reach.
        for (const Align align : {Align::centre, Align::left}) {
            ways.push_back(
                label_at({under.x(), pin.y() + kOpenArrow_px + 20.0}, name, Role::ink, align));
        }
        say(std::move(ways), pin);
    }

    void add_load(const mechanics::Load& load) {
        if (const auto* weight = std::get_if<mechanics::Weight>(&load.action)) {
            if (how_.from_above) {
                add_weight_from_above(at(weight->at_m), load.name);
            } else {
                add_force(at(weight->at_m), mechanics::kDown_rad, Tail::square, Role::load,
                          load.name);
            }
        } else if (const auto* force = std::get_if<mechanics::PointForce>(&load.action)) {
            add_force(at(force->at_m), force->direction_rad, Tail::square, Role::load, load.name);
        }
    }

    void add_own_weight() {
        const mechanics::OwnWeight& own = lever_.own_weight;
        if (own.mass_kg <= 0.0 || how_.from_above)
            return;
        const Point place = own.centre_at_m
                                ? at(*own.centre_at_m)
                                : view_.to_sheet(mechanics::path_centroid(lever_.path_m));
        add_force(place, mechanics::kDown_rad, Tail::dot, Role::own_weight, "own weight");
    }

    void add_effort() {
        if (mechanics::rests_on_two(lever_))
            return add_stand(at(lever_.effort.at_m), lever_.effort.name);
        if (how_.effort_angle)
            add_effort_angle(*how_.effort_angle);
        const mechanics::Effort& effort = lever_.effort;
        add_force(at(effort.at_m), effort.direction_rad, Tail::plain, Role::effort, effort.name);
    }

    /// Where the effort acts, while the question asks which way.
    void add_effort_point() {
        const Point place = at(lever_.effort.at_m);
        Disc dot;
        dot.centre = place;
        dot.radius_px = 5.0;
        dot.fill = Role::effort;
        drawing_.shapes.emplace_back(dot);
        board_.keep_clear({place - Point(7.0, 7.0), place + Point(7.0, 7.0)});
        const std::string& name = lever_.effort.name;
        say({label_at(place + Point(0.0, 26.0), name, Role::effort, Align::centre),
             label_at(place + Point(10.0, 20.0), name, Role::effort, Align::left),
             label_at(place - Point(0.0, 16.0), name, Role::effort, Align::centre)},
            place);
    }

    void add_weight_from_above(const Point& place, const std::string& name) {
        constexpr double kRadius_px = 9.0;
        add_force_inward(place, kRadius_px, {Role::load, 2.5}, drawing_.shapes);
        board_.keep_clear(
            {place - Point(kRadius_px, kRadius_px), place + Point(kRadius_px, kRadius_px)});
        say({label_at(place + Point(0.0, -16.0), name, Role::load, Align::centre),
             label_at(place + Point(0.0, 28.0), name, Role::load, Align::centre)},
            place);
    }

    void add_force(const Point& place, double direction_rad, Tail tail, Role role,
                   const std::string& name) {
        const Vec2 pull = mechanics::unit_vector(direction_rad);
        const Point along{pull.x(), -pull.y()};
        const Point tip = place + kOpenArrow_px * along;
        const double width_px = tail == Tail::dot ? 2.5 : 4.0;
        add_arrow(place, tip, tail, {role, width_px}, drawing_.shapes);
        board_.keep_clear(place, tip, 12.0);
        const Label past =
            label_at(tip + (along.y() < 0.0 ? 8.0 : 17.0) * along, name, role, Align::centre);
        std::vector<Label> ways;
        if (along.y() < 0.0 || how_.limb) // off the flesh
            ways.push_back(past);
        for (const double share : {0.85, 0.6, 1.0, 0.35}) {
            for (const Align align : {Align::left, Align::right}) {
                const double side = align == Align::left ? 14.0 : -14.0;
                ways.push_back(label_at(place + share * kOpenArrow_px * along + Point(side, 5.0),
                                        name, role, align));
            }
        }
        ways.push_back(past);
        // On the other side of the lever, over the place where the force acts.
        const double over = along.y() > 0.0 ? -14.0 : 26.0;
        for (const Align align : {Align::centre, Align::left, Align::right})
            ways.push_back(label_at(place + Point(0.0, over), name, role, align));
        say(std::move(ways), 0.5 * (place + tip));
    }

    /// The angle between the pull and the lever, on the side on which it has the stated size.
    void add_effort_angle(const StatedAngle& angle) {
        const mechanics::Effort& effort = lever_.effort;
        const Point place = at(effort.at_m);
        const double length_m = mechanics::path_length(lever_.path_m);
        const double step_m = effort.at_m > 0.5 * length_m ? -0.01 * length_m : 0.01 * length_m;
        const Point inward = (at(effort.at_m + step_m) - place).normalized();
        const Vec2 pull = mechanics::unit_vector(effort.direction_rad);
        const double pull_rad = std::atan2(-pull.y(), pull.x());
        for (const double side : {1.0, -1.0}) {
            const double lever_rad = std::atan2(side * inward.y(), side * inward.x());
            const double turn_rad = std::remainder(pull_rad - lever_rad, 2.0 * mechanics::kPi);
            if (std::abs(std::abs(turn_rad) - angle.size_rad) > 1.0e-6)
                continue;
            const double radius = 30.0;
            drawing_.shapes.emplace_back(
                Arc{place, radius, lever_rad, lever_rad + turn_rad, {Role::effort, 1.5}});
            const double middle_rad = lever_rad + 0.5 * turn_rad;
            const Point where =
                place + (radius + 16.0) * Point(std::cos(middle_rad), std::sin(middle_rad));
            const Point beside = place + 30.0 * Point(std::cos(pull_rad), std::sin(pull_rad)) +
                                 Point(0.0, pull.y() > 0.0 ? -12.0 : 22.0);
            say({label_at(where + Point(0.0, 5.0), angle.text, Role::effort, Align::centre),
                 label_at(beside, angle.text, Role::effort, Align::centre),
                 label_at(where + Point(-6.0, 5.0), angle.text, Role::effort, Align::right),
                 label_at(where + Point(6.0, 5.0), angle.text, Role::effort, Align::left)},
                where);
            return;
        }
    }

    void add_dimensions() {
        std::vector<DimensionLine> dimensions;
        for (const LengthMark& length : how_.lengths) {
            dimensions.push_back({view_.to_sheet(length.from_m), view_.to_sheet(length.to_m),
                                  length.text, length.role, Role::ink});
        }
        add_dimension_marks(std::move(dimensions), {how_.first_shelf_px}, board_, drawing_.shapes);
    }

    void add_spot(const LetteredSpot& spot) {
        const Point centre = view_.to_sheet(spot.at_m);
        Disc disc;
        disc.centre = centre;
        disc.radius_px = kSpotRadius_px;
        disc.fill = Role::sheet;
        disc.outline = Stroke{Role::ink, 1.5};
        drawing_.shapes.emplace_back(disc);
        Label letter =
            label_at(centre + Point(0.0, 4.7), spot.letter, Role::ink, Align::centre, true);
        letter.size = TextSize::caption;
        drawing_.shapes.emplace_back(std::move(letter));
    }

    /// Takes the level words among the shapes from an index on, to be set above all lines.
    void hold_back_words(std::size_t from) {
        auto& shapes = drawing_.shapes;
        for (std::size_t i = from; i < shapes.size(); ++i)
            if (const auto* label = std::get_if<Label>(&shapes[i]))
                if (label->turn_rad == 0.0)
                    numbers_.push_back(*label);
        const auto is_held = [](const Shape& shape) {
            const auto* label = std::get_if<Label>(&shape);
            return label != nullptr && label->turn_rad == 0.0;
        };
        shapes.erase(std::remove_if(shapes.begin() + static_cast<std::ptrdiff_t>(from),
                                    shapes.end(), is_held),
                     shapes.end());
    }

    /// Words on a plate in the colour of the sheet: a thin line to a length below ends at it.
    void set(Label label) {
        const Rect room = room_of(label, 1.0);
        Box plate;
        plate.centre = 0.5 * (room.low + room.high);
        plate.size_px = room.high - room.low;
        plate.fill = Role::sheet;
        if (label.turn_rad == 0.0)
            drawing_.shapes.emplace_back(plate);
        drawing_.shapes.emplace_back(std::move(label));
    }

    /// A limb takes more room than a beam: there words stand where they cover nothing, even farther
    /// off, with a thin leader.
    void set(const Words& words) {
        const auto free = how_.limb ? board_.place_free(words.ways, words.place) : std::nullopt;
        const Label label = free ? *free : board_.place(words.ways);
        constexpr double kStandOff_px = 30.0;
        const Point end = leader_end(words.place, room_of(label, 1.0));
        if (free && (end - words.place).norm() > kStandOff_px)
            drawing_.shapes.emplace_back(Line{words.place, end, {Role::quiet_ink, 1.0}});
        set(label);
    }

    /// Words are set last, when everything that they must not cover has its place.
    void say(std::vector<Label> ways, const Point& place) {
        words_.push_back({std::move(ways), place});
    }

    const mechanics::Lever& lever_;
    const StageView& view_;
    const OpenLever& how_;
    LabelBoard board_;
    Drawing drawing_;
    std::vector<Label> numbers_; ///< of lengths
    std::vector<Words> words_;
};

} // namespace

Drawing draw_open_lever(const mechanics::Lever& lever, const StageView& view,
                        const OpenLever& how) {
    return OpenLeverPainter(lever, view, how).paint();
}

} // namespace steelyard::scene
