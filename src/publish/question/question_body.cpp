#include "publish/question/question_body.h"

#include "scene/body/body_drawing.h"
#include "scene/body/resistance_marks.h"
#include "scene/figure/figure.h"
#include "scene/marks/force_marks.h"
#include "scene/marks/label_board.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>
#include <vector>

namespace steelyard::publish {
namespace {

using mechanics::Vec2;
using problems::BodyPicture;
using scene::Align;
using scene::Point;
using scene::Role;

constexpr double kArrow_px = 40.0;

/// "dumbbell" as "the dumbbell"; "your pull" and "the rope" as they are.
std::string with_article(const std::string& name) {
    const bool has_one = name.rfind("the ", 0) == 0 || name.rfind("your ", 0) == 0;
    return has_one ? name : "the " + name;
}

class OpenBodyPainter {
public:
    OpenBodyPainter(const BodyPicture& picture, const mechanics::BodyResult& result,
                    const scene::BodyStage& stage)
        : picture_(picture), result_(result), stage_(stage),
          board_({{2.0, 2.0}, stage.size_px - Point(2.0, 2.0)}, 1.0) {
        drawing_.size_px = stage.size_px;
    }

    scene::Drawing paint() {
        drawing_.title = "Drawing of the question";
        drawing_.description = "A person, drawn to scale.";
        scene::add_figure(picture_.body_case, result_.placement, stage_, drawing_.shapes);
        scene::add_resistance_marks(picture_.body_case, result_, stage_,
                                    {Point::Zero(), stage_.size_px}, drawing_.shapes);
        for (const problems::DrawnQuantity& line : picture_.labels)
            add_length(line);
        for (const problems::BodyPicture::Weight& weight : picture_.weights)
            add_arrow(at(weight.at_m), Point(0.0, 1.0), scene::Tail::dot, Role::own_weight,
                      weight.name, "the weight of the " + weight.name);
        for (const mechanics::BodyForce& force : result_.forces)
            if (force.origin == mechanics::ForceOrigin::resistance)
                add_load(force);
        for (const BodyPicture::Axis& axis : picture_.axes)
            add_axis(axis);
        board_.keep_clear(drawing_.shapes);
        for (const Words& words : words_)
            set(words);
        return std::move(drawing_);
    }

private:
    /// Words that are set when all else is drawn.
    struct Words {
        Point place;
        std::vector<scene::Label> ways;
    };

    /// A place in the plane of the view.
    Point at(const Vec2& seen_m) const {
        return stage_.origin_px + stage_.px_per_m * Point(seen_m.x(), -seen_m.y());
    }

    static scene::Label label_at(const Point& at, const std::string& text, Role role, Align align) {
        return scene::make_label(at, text, scene::TextSize::body, role, align);
    }

    /// Words of a place, with a thin line to it where they found room only farther away.
    void set(const Words& words) {
        constexpr double kNear_px = 20.0;
        const auto free = board_.place_free(words.ways, words.place);
        const scene::Label label = free ? *free : board_.place(words.ways);
        const scene::Rect room = scene::room_of(label, 1.0);
        const Point edge = words.place.cwiseMax(room.low).cwiseMin(room.high);
        if ((edge - words.place).norm() > kNear_px)
            drawing_.shapes.emplace_back(
                scene::Line{words.place, edge, {Role::quiet_ink, 1.0, scene::Dash::solid, 0.7}});
        drawing_.shapes.emplace_back(label);
    }

    /// Words beside a place, on any side of it.
    void say(const Point& place, const std::string& text, Role role, double away_px) {
        if (text.empty())
            return;
        std::vector<scene::Label> ways;
        for (const double factor : {1.0, 2.2, 4.0, 6.0}) {
            const double px = factor * away_px;
            ways.push_back(label_at(place + Point(px, 5.0), text, role, Align::left));
            ways.push_back(label_at(place + Point(-px, 5.0), text, role, Align::right));
            ways.push_back(label_at(place + Point(0.0, -px), text, role, Align::centre));
            ways.push_back(label_at(place + Point(0.0, px + 10.0), text, role, Align::centre));
            for (const double up : {-1.0, 1.0}) {
                ways.push_back(label_at(place + Point(px, 5.0 + up * px), text, role, Align::left));
                ways.push_back(
                    label_at(place + Point(-px, 5.0 + up * px), text, role, Align::right));
            }
        }
        words_.push_back({place, std::move(ways)});
    }

    void add_axis(const BodyPicture::Axis& axis) {
        scene::Disc ring;
        ring.centre = stage_.to_sheet(result_.placement.axis_point_m(axis.hinge));
        ring.radius_px = 6.0;
        ring.fill = Role::sheet;
        ring.outline = scene::Stroke{Role::ink, 2.5};
        drawing_.shapes.emplace_back(ring);
        say(ring.centre, axis.name, Role::ink, 13.0);
        drawing_.description += fmt::format(" A ring marks the {}.", axis.name);
    }

    /// @param what  acts there, in the drawing's words
    void add_arrow(const Point& place, const Point& along, scene::Tail tail, Role role,
                   const std::string& name, const std::string& what) {
        const Point tip = place + kArrow_px * along;
        scene::add_arrow(place, tip, tail, {role, tail == scene::Tail::dot ? 2.5 : 4.0},
                         drawing_.shapes);
        say(tip, name, role, 12.0);
        if (!name.empty())
            drawing_.description += fmt::format(" An arrow shows where {} acts.", what);
    }

    /// What hangs in both hands is two forces and one thing to name; the same where two things of
    /// one name are seen behind one another.
    std::string name_once(const mechanics::BodyForce& force, const Point& place) {
        constexpr double kBehind_px = 24.0;
        const std::string& name = picture_.body_case.resistances[force.index].name;
        const bool named = std::any_of(named_.begin(), named_.end(), [&](const Named& other) {
            return other.index == force.index ||
                   (other.name == name && (other.place - place).norm() < kBehind_px);
        });
        named_.push_back({force.index, name, place});
        return named ? std::string() : name;
    }

    /// One force; what points at the eye turns nothing in this view and is named only.
    void add_load(const mechanics::BodyForce& force) {
        const scene::Camera& camera = stage_.camera;
        const Point seen(camera.right.dot(force.force_N), -camera.up.dot(force.force_N));
        const Point place = stage_.to_sheet(force.point_m);
        const std::string name = name_once(force, place);
        if (seen.norm() < 0.2 * force.force_N.norm() || seen.norm() <= 0.0)
            say(place, name, Role::load, 14.0);
        else
            add_arrow(place, seen.normalized(), scene::Tail::square, Role::load, name,
                      with_article(name));
    }

    void add_length(const problems::DrawnQuantity& line) {
        const Point from = at(line.from_m);
        const Point to = at(line.to_m);
        const Point along = (to - from).normalized();
        const Point across(along.y(), -along.x());
        const Point shift = (20.0 + 16.0 * static_cast<double>(lengths_++)) * across;
        drawing_.shapes.emplace_back(
            scene::Line{from + shift, to + shift, {Role::quiet_ink, 1.25}});
        for (const Point& end : {from, to})
            drawing_.shapes.emplace_back(scene::Line{
                end + shift - 5.0 * across, end + shift + 5.0 * across, {Role::quiet_ink, 1.25}});
        say(0.5 * (from + to) + shift, line.text, Role::quiet_ink, 8.0);
        drawing_.description += fmt::format(" A length of {} is marked.", line.text);
    }

    /// A resistance that has its name on the drawing, and where.
    struct Named {
        unsigned char index;
        std::string name;
        Point place;
    };

    const BodyPicture& picture_;
    const mechanics::BodyResult& result_;
    const scene::BodyStage& stage_;
    scene::LabelBoard board_;
    scene::Drawing drawing_;
    std::vector<Words> words_;
    std::vector<Named> named_;
    int lengths_ = 0;
};

} // namespace

scene::Drawing open_body_figure(const BodyPicture& picture, const Point& size_px) {
    const auto result = mechanics::solve_body(picture.body_case);
    if (!result) {
        scene::Drawing empty;
        empty.size_px = size_px;
        return empty;
    }
    const scene::BodyMargins margins{50.0, 50.0, 26.0, 34.0};
    const scene::BodyStage stage = scene::fit_body(
        picture.body_case, {*result}, scene::camera_of(picture.view), size_px, margins);
    return OpenBodyPainter(picture, *result, stage).paint();
}

scene::Drawing solved_body_drawing(const BodyPicture& picture, const Point& size_px,
                                   double text_scale, double top_px, const std::string& sentence,
                                   setup::UnitSystem units) {
    const auto result = mechanics::solve_body(picture.body_case);
    if (!result)
        return {};
    scene::BodyDrawing how;
    how.units = units;
    how.sentence = sentence;
    how.text_scale = text_scale;
    how.heading_top_px = top_px;
    for (const BodyPicture::Axis& axis : picture.axes)
        how.axes.push_back(axis.hinge);
    const scene::BodyMargins margins{60.0, 60.0, top_px + 60.0 * text_scale, 130.0 * text_scale};
    const scene::BodyStage stage = scene::fit_body(
        picture.body_case, {*result}, scene::camera_of(picture.view), size_px, margins);
    return scene::draw_body(picture.body_case, *result, stage, how);
}

} // namespace steelyard::publish
