#include "publish/question/question_figure.h"

#include "mechanics/lever/lever_geometry.h"
#include "publish/figures/dimension_marks.h"
#include "publish/question/question_body.h"
#include "publish/question/question_view.h"
#include "scene/marks/force_marks.h"
#include "scene/marks/label_board.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace steelyard::publish {
namespace {

using mechanics::Vec2;
using problems::LeverPicture;
using problems::Question;
using scene::Align;
using scene::Point;
using scene::Role;

constexpr double kBeam_px = 9.0;
constexpr double kSpotRadius_px = 10.0;

scene::Label label_at(const Point& at, const std::string& text, Role role, Align align,
                      bool strong = false) {
    scene::Label label;
    label.at = at;
    label.text = text;
    label.role = role;
    label.align = align;
    label.strong = strong;
    return label;
}

class QuestionPainter {
public:
    QuestionPainter(const Question& question, const LeverPicture& picture, const Point& size_px)
        : question_(question), picture_(picture), view_(*question_figure_view(question, size_px)),
          board_({{2.0, 2.0}, size_px - Point(2.0, 2.0)}, 1.0) {
        drawing_.size_px = size_px;
    }

    scene::Drawing paint() {
        describe();
        add_beam();
        if (picture_.show_axis) {
            add_axis();
        }
        for (const mechanics::Load& load : picture_.lever.loads) {
            add_load(load);
        }
        add_own_weight();
        if (picture_.show_effort) {
            add_effort();
        } else if (const auto* place = problems::wanted_place(question_);
                   place != nullptr && place->target == problems::PlaceTarget::effort_line) {
            add_effort_point();
        }
        add_dimensions();
        for (const problems::Spot& spot : problems::spots_of(question_)) {
            add_spot(spot);
        }
        for (const std::vector<scene::Label>& ways : words_) {
            drawing_.shapes.emplace_back(board_.place(ways));
        }
        return std::move(drawing_);
    }

private:
    Point at(double at_m) const {
        return view_.to_sheet(mechanics::point_at(picture_.lever.path_m, at_m));
    }
    Point axis() const { return at(picture_.lever.axis_at_m); }

    void describe() {
        drawing_.title = "Drawing of the question";
        std::string parts;
        if (picture_.show_axis) {
            parts += fmt::format(" The axis is {}.", picture_.axis_name);
        }
        for (const mechanics::Load& load : picture_.lever.loads) {
            parts += fmt::format(" A load: {}.", load.name);
        }
        if (picture_.show_effort) {
            parts += fmt::format(" The effort: {}.", picture_.lever.effort.name);
        }
        for (const problems::DrawnQuantity& line : picture_.labels) {
            parts += fmt::format(" A length of {} is marked.", line.text);
        }
        drawing_.description = "A lever, drawn to scale." + parts;
    }

    void add_beam() {
        scene::Polyline outer{{}, {Role::ink, kBeam_px}};
        for (const Vec2& corner : picture_.lever.path_m) {
            outer.corners.push_back(view_.to_sheet(corner));
        }
        scene::Polyline inner = outer;
        inner.stroke = {Role::beam, kBeam_px - 4.0};
        for (std::size_t i = 1; i < outer.corners.size(); ++i) {
            board_.keep_clear(outer.corners[i - 1], outer.corners[i], kBeam_px);
        }
        drawing_.shapes.emplace_back(std::move(outer));
        drawing_.shapes.emplace_back(std::move(inner));
    }

    void add_axis() {
        const Point pin = axis();
        const double half = 15.0;
        const double height = 30.0;
        if (!picture_.from_above) {
            drawing_.shapes.emplace_back(scene::Triangle{pin, pin + Point(-half, height),
                                                         pin + Point(half, height), Role::ink});
            board_.keep_clear({pin - Point(half, 0.0), pin + Point(half, height)});
        }
        scene::Disc disc;
        disc.centre = pin;
        disc.radius_px = 5.0;
        disc.fill = Role::sheet;
        disc.outline = scene::Stroke{Role::ink, 2.5};
        drawing_.shapes.emplace_back(disc);
        board_.keep_clear({pin - Point(7.0, 7.0), pin + Point(7.0, 7.0)});
        const Point under = pin + Point(0.0, picture_.from_above ? 26.0 : height + 18.0);
        std::vector<scene::Label> ways{
            label_at(under, picture_.axis_name, Role::ink, Align::centre),
            label_at(under - Point(half, 0.0), picture_.axis_name, Role::ink, Align::left),
            label_at(under + Point(half, 0.0), picture_.axis_name, Role::ink, Align::right)};
        for (const Align align : {Align::centre, Align::left, Align::right}) {
            ways.push_back(label_at(pin - Point(0.0, 14.0), picture_.axis_name, Role::ink, align));
        }
        // Between arrows that leave no room for it: lower than they reach.
        for (const Align align : {Align::centre, Align::left}) {
            ways.push_back(label_at({under.x(), pin.y() + kQuestionArrow_px + 20.0},
                                    picture_.axis_name, Role::ink, align));
        }
        say(std::move(ways));
    }

    void add_load(const mechanics::Load& load) {
        if (const auto* weight = std::get_if<mechanics::Weight>(&load.action)) {
            if (picture_.from_above) {
                add_weight_from_above(at(weight->at_m), load.name);
            } else {
                add_force(at(weight->at_m), mechanics::kDown_rad, scene::Tail::square, Role::load,
                          load.name);
            }
        } else if (const auto* force = std::get_if<mechanics::PointForce>(&load.action)) {
            add_force(at(force->at_m), force->direction_rad, scene::Tail::square, Role::load,
                      load.name);
        }
    }

    void add_own_weight() {
        const mechanics::OwnWeight& own = picture_.lever.own_weight;
        if (own.mass_kg <= 0.0 || picture_.from_above) {
            return;
        }
        const Point place = own.centre_at_m
                                ? at(*own.centre_at_m)
                                : view_.to_sheet(mechanics::path_centroid(picture_.lever.path_m));
        add_force(place, mechanics::kDown_rad, scene::Tail::dot, Role::own_weight, "own weight");
    }

    void add_effort() {
        for (const problems::Given& given : question_.given) {
            if (given.name == "effort_angle") {
                add_effort_angle(given);
            }
        }
        const mechanics::Effort& effort = picture_.lever.effort;
        add_force(at(effort.at_m), effort.direction_rad, scene::Tail::plain, Role::effort,
                  effort.name);
    }

    /// Where the effort acts, while the question asks which way.
    void add_effort_point() {
        const Point place = at(picture_.lever.effort.at_m);
        scene::Disc dot;
        dot.centre = place;
        dot.radius_px = 5.0;
        dot.fill = Role::effort;
        drawing_.shapes.emplace_back(dot);
        board_.keep_clear({place - Point(7.0, 7.0), place + Point(7.0, 7.0)});
        const std::string& name = picture_.lever.effort.name;
        say({label_at(place + Point(0.0, 26.0), name, Role::effort, Align::centre),
             label_at(place + Point(10.0, 20.0), name, Role::effort, Align::left),
             label_at(place - Point(0.0, 16.0), name, Role::effort, Align::centre)});
    }

    /// A force that points into the sheet: a disc with a cross, the feathers of the arrow.
    void add_weight_from_above(const Point& place, const std::string& name) {
        const double radius = 9.0;
        scene::Disc disc;
        disc.centre = place;
        disc.radius_px = radius;
        disc.fill = Role::sheet;
        disc.outline = scene::Stroke{Role::load, 2.5};
        drawing_.shapes.emplace_back(disc);
        const double reach = radius * std::sqrt(0.5);
        for (const double side : {-1.0, 1.0}) {
            drawing_.shapes.emplace_back(scene::Line{place + Point(-reach, -side * reach),
                                                     place + Point(reach, side * reach),
                                                     {Role::load, 2.5}});
        }
        board_.keep_clear({place - Point(radius, radius), place + Point(radius, radius)});
        say({label_at(place + Point(0.0, -16.0), name, Role::load, Align::centre),
             label_at(place + Point(0.0, 28.0), name, Role::load, Align::centre)});
    }

    void add_force(const Point& place, double direction_rad, scene::Tail tail, Role role,
                   const std::string& name) {
        const Vec2 pull = mechanics::unit_vector(direction_rad);
        const Point along{pull.x(), -pull.y()};
        const Point tip = place + kQuestionArrow_px * along;
        const double width_px = tail == scene::Tail::dot ? 2.5 : 4.0;
        scene::add_arrow(place, tip, tail, {role, width_px}, drawing_.shapes);
        board_.keep_clear(place, tip, 12.0);
        const scene::Label past =
            label_at(tip + (along.y() < 0.0 ? 8.0 : 17.0) * along, name, role, Align::centre);
        std::vector<scene::Label> ways;
        if (along.y() < 0.0) {
            ways.push_back(past);
        }
        for (const double share : {0.85, 0.6, 1.0, 0.35}) {
            for (const Align align : {Align::left, Align::right}) {
                const double side = align == Align::left ? 14.0 : -14.0;
                ways.push_back(
                    label_at(place + share * kQuestionArrow_px * along + Point(side, 5.0), name,
                             role, align));
            }
        }
        ways.push_back(past);
        // On the other side of the lever, over the place where the force acts.
        const double over = along.y() > 0.0 ? -14.0 : 26.0;
        for (const Align align : {Align::centre, Align::left, Align::right}) {
            ways.push_back(label_at(place + Point(0.0, over), name, role, align));
        }
        say(std::move(ways));
    }

    /// The angle between the pull and the lever, on the side on which it has the stated size.
    void add_effort_angle(const problems::Given& given) {
        const mechanics::Effort& effort = picture_.lever.effort;
        const Point place = at(effort.at_m);
        const double length_m = mechanics::path_length(picture_.lever.path_m);
        const double step_m = effort.at_m > 0.5 * length_m ? -0.01 * length_m : 0.01 * length_m;
        const Point inward = (at(effort.at_m + step_m) - place).normalized();
        const Vec2 pull = mechanics::unit_vector(effort.direction_rad);
        const double pull_rad = std::atan2(-pull.y(), pull.x());
        for (const double side : {1.0, -1.0}) {
            const double lever_rad = std::atan2(side * inward.y(), side * inward.x());
            const double turn_rad = std::remainder(pull_rad - lever_rad, 2.0 * mechanics::kPi);
            if (std::abs(std::abs(turn_rad) - given.value_si) > 1.0e-6) {
                continue;
            }
            const double radius = 30.0;
            drawing_.shapes.emplace_back(
                scene::Arc{place, radius, lever_rad, lever_rad + turn_rad, {Role::effort, 1.5}});
            const double middle_rad = lever_rad + 0.5 * turn_rad;
            const Point where =
                place + (radius + 16.0) * Point(std::cos(middle_rad), std::sin(middle_rad));
            const Point beside = place + 30.0 * Point(std::cos(pull_rad), std::sin(pull_rad)) +
                                 Point(0.0, pull.y() > 0.0 ? -12.0 : 22.0);
            say({label_at(where + Point(0.0, 5.0), given.text, Role::effort, Align::centre),
                 label_at(beside, given.text, Role::effort, Align::centre),
                 label_at(where + Point(-6.0, 5.0), given.text, Role::effort, Align::right),
                 label_at(where + Point(6.0, 5.0), given.text, Role::effort, Align::left)});
            return;
        }
    }

    void add_dimensions() {
        std::vector<DimensionLine> dimensions;
        for (const problems::DrawnQuantity& line : picture_.labels) {
            dimensions.push_back(
                {view_.to_sheet(line.from_m), view_.to_sheet(line.to_m), line.text});
        }
        add_dimension_marks(std::move(dimensions), first_shelf_px(picture_), board_,
                            drawing_.shapes);
    }

    void add_spot(const problems::Spot& spot) {
        const Point centre = view_.to_sheet(spot.at_m);
        scene::Disc disc;
        disc.centre = centre;
        disc.radius_px = kSpotRadius_px;
        disc.fill = Role::sheet;
        disc.outline = scene::Stroke{Role::ink, 1.5};
        drawing_.shapes.emplace_back(disc);
        scene::Label letter =
            label_at(centre + Point(0.0, 4.7), spot.letter, Role::ink, Align::centre, true);
        letter.size = scene::TextSize::caption;
        drawing_.shapes.emplace_back(std::move(letter));
        board_.keep_clear({centre - Point(kSpotRadius_px, kSpotRadius_px),
                           centre + Point(kSpotRadius_px, kSpotRadius_px)});
    }

    /// Words are set last, when everything that they must not cover has its place.
    void say(std::vector<scene::Label> ways) { words_.push_back(std::move(ways)); }

    const Question& question_;
    const LeverPicture& picture_;
    scene::StageView view_;
    scene::LabelBoard board_;
    scene::Drawing drawing_;
    std::vector<std::vector<scene::Label>> words_; ///< for each, the ways to set it
};

} // namespace

bool has_figure(const Question& question) {
    return !std::holds_alternative<std::monostate>(question.picture);
}

scene::Drawing question_figure(const Question& question, const Point& size_px) {
    if (const auto* picture = std::get_if<LeverPicture>(&question.picture)) {
        return QuestionPainter(question, *picture, size_px).paint();
    }
    if (const auto* body = std::get_if<problems::BodyPicture>(&question.picture)) {
        return open_body_figure(*body, size_px);
    }
    scene::Drawing empty;
    empty.size_px = size_px;
    return empty;
}

} // namespace steelyard::publish
