#include "publish/question/question_body.h"

#include "scene/body/body_drawing.h"
#include "scene/body/resistance_marks.h"
#include "scene/figure/figure.h"
#include "scene/marks/force_marks.h"
#include "scene/marks/label_board.h"
#include "scene/marks/sheet_cut.h"

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

/// How the body of a question lies on its drawing.
struct Shown {
    scene::BodyStage stage;
    std::optional<scene::Rect> whole_person; ///< where it stands small beside a part of it
};

/// The places in the plane of the view that a question is about: ends of the lengths that it
/// states, weights that count.
std::vector<mechanics::Vec3> asked_places_m(const BodyPicture& picture,
                                            const scene::Camera& camera) {
    std::vector<mechanics::Vec3> places;
    const auto add = [&](const Vec2& seen_m) {
        places.push_back(seen_m.x() * camera.right + seen_m.y() * camera.up);
    };
    for (const problems::DrawnQuantity& line : picture.labels) {
        add(line.from_m);
        add(line.to_m);
    }
    for (const BodyPicture::Weight& weight : picture.weights)
        add(weight.at_m);
    return places;
}

/// The joints asked about, large, with the whole person small beside them; all of the person where
/// that would be hardly smaller.
/// @param margins  around all of the person
Shown shown_part(const BodyPicture& picture, const mechanics::BodyResult& result,
                 const Point& size_px, const scene::BodyMargins& margins) {
    constexpr double kWorthIt = 1.25; // so much larger than all of the person
    const scene::Camera camera = scene::camera_of(picture.view);
    const scene::BodyStage all =
        scene::fit_body(picture.body_case, {result}, camera, size_px, margins);
    std::vector<mechanics::Hinge> hinges;
    for (const BodyPicture::Axis& axis : picture.axes)
        hinges.push_back(axis.hinge);
    std::vector<mechanics::Vec3> places_m = asked_places_m(picture, camera);
    for (const mechanics::BodyForce& force : result.forces)
        if (force.origin == mechanics::ForceOrigin::resistance)
            places_m.push_back(force.point_m);
    constexpr double kEdge_px = 10.0;
    const double person_px = std::clamp(0.17 * size_px.x(), 48.0, 150.0);
    scene::BodyMargins beside = margins;
    beside.left_px = std::max(margins.left_px, person_px + 2.0 * kEdge_px + 12.0);
    const scene::BodyStage part =
        scene::fit_part(picture.body_case, {result}, hinges, places_m, camera, size_px, beside);
    if (part.px_per_m < kWorthIt * all.px_per_m)
        return {all, std::nullopt};
    const Point low(kEdge_px, margins.top_px > 60.0 ? margins.top_px : kEdge_px);
    const Point high = low + Point(person_px, std::min(1.8 * person_px, 0.4 * size_px.y()));
    return {part, scene::Rect{low, high}};
}

class OpenBodyPainter {
public:
    OpenBodyPainter(const BodyPicture& picture, const mechanics::BodyResult& result,
                    const Shown& shown)
        : picture_(picture), result_(result), shown_(shown), stage_(shown.stage),
          board_({{2.0, 2.0}, stage_.size_px - Point(2.0, 2.0)}, 1.0) {
        drawing_.size_px = stage_.size_px;
    }

    scene::Drawing paint() {
        drawing_.title = "Drawing of the question";
        drawing_.description = "A person, drawn to scale.";
        const scene::Rect sheet{Point::Zero(), stage_.size_px};
        scene::add_figure(picture_.body_case, result_.placement, stage_, drawing_.shapes);
        scene::add_resistance_marks(picture_.body_case, result_, stage_, sheet, drawing_.shapes);
        if (shown_.whole_person) {
            scene::cut_to(sheet, 0, drawing_.shapes);
            scene::add_whole_person(picture_.body_case, result_, stage_, sheet,
                                    *shown_.whole_person, drawing_.shapes);
        }
        figure_ink_.emplace(stage_.size_px, drawing_.shapes);
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

    /// Unit vector from a stroke to the side on which less is drawn beside it.
    Point emptier_side(const Point& from, const Point& to) const {
        constexpr double kNear_px = 44.0;
        constexpr int kSteps = 8;
        const Point along = (to - from).normalized();
        const Point across(along.y(), -along.x());
        const auto ink_px2 = [&](const Point& side) {
            double sum_px2 = 0.0;
            for (int i = 0; i <= kSteps; ++i) {
                const Point at = from + (static_cast<double>(i) / kSteps) * (to - from);
                const Point end = at + kNear_px * side;
                sum_px2 += figure_ink_->ink_px2(at.cwiseMin(end), at.cwiseMax(end));
            }
            return sum_px2;
        };
        return ink_px2(-across) < ink_px2(across) ? Point(-across) : across;
    }

    void add_length(const problems::DrawnQuantity& line) {
        const Point from = at(line.from_m);
        const Point to = at(line.to_m);
        const Point across = emptier_side(from, to);
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
    const Shown& shown_;
    const scene::BodyStage& stage_;
    scene::LabelBoard board_;
    scene::Drawing drawing_;
    std::optional<scene::InkMap> figure_ink_;
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
    const Shown shown = shown_part(picture, *result, size_px, {50.0, 50.0, 26.0, 34.0});
    return OpenBodyPainter(picture, *result, shown).paint();
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
    // Only what the question has: no balance where it asks for no muscle, and a push of the ground
    // only where it stands on it.
    how.strip = !picture.effort_name.empty();
    how.marks.reaction = std::holds_alternative<mechanics::OnContacts>(picture.body_case.support);
    const double bottom_px = (how.strip ? 130.0 : 50.0) * text_scale;
    const Shown shown =
        shown_part(picture, *result, size_px, {60.0, 60.0, top_px + 60.0 * text_scale, bottom_px});
    if (shown.whole_person)
        how.close_up = scene::CloseUp{*shown.whole_person, {}};
    return scene::draw_body(picture.body_case, *result, shown.stage, how);
}

} // namespace steelyard::publish
