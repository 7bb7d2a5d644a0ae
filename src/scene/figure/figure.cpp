#include "scene/figure/figure.h"

#include "mechanics/resistance/resistance_kinds.h"
#include "scene/figure/head_shapes.h"
#include "scene/figure/paint_order.h"
#include "scene/figure/ring_union.h"
#include "scene/things/held_things.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

namespace steelyard::scene {

namespace {

using mechanics::Segment;

constexpr double kHairline_px = 1.25; ///< seen of it; as much lies under the limb
/// Nearer to its joint than this a limb runs into what carries it, without a hairline [m].
constexpr double kShoulder_m = 0.092;
constexpr double kHip_m = 0.150;
constexpr double kElbow_m = 0.056;
constexpr double kKnee_m = 0.075;
/// Flesh and soles give way by as much [m]; what lies deeper is shown, for it is said, too.
constexpr double kGivesWay_m = 0.03;
/// How far a side must be behind the middle to be in shade [m].
constexpr double kShade_m = 0.05;

/// The parts that are painted one over another.
enum Part : std::size_t {
    core,
    head,
    right_thigh,
    right_shank,
    left_thigh,
    left_shank,
    right_upper_arm,
    right_forearm,
    left_upper_arm,
    left_forearm,
    part_count
};

bool is_arm(Part part) {
    return part >= right_upper_arm;
}
bool is_upper(Part part) {
    return part >= right_thigh && (part - right_thigh) % 2 == 0;
}
const BodySide& side_of(Part part) {
    return kBodySides[(part - right_thigh) / 2 % 2];
}

/// Where a floor that carries a body is seen as a line; empty without one.
std::optional<double> floor_under(const mechanics::BodyCase& body_case, const BodyStage& stage) {
    constexpr double kLevel = 1.0e-6; // an eye within a millionth of level
    const auto* on = std::get_if<mechanics::OnContacts>(&body_case.support);
    const auto is_on_floor = [](const mechanics::Contact& contact) {
        return contact.level_m == 0.0;
    };
    if (on == nullptr || std::abs(stage.camera.toward_eye().y()) > kLevel ||
        std::none_of(on->contacts.begin(), on->contacts.end(), is_on_floor))
        return std::nullopt;
    return stage.to_sheet(Vec3::Zero()).y();
}

class FigurePainter {
public:
    FigurePainter(const mechanics::BodyCase& body_case, const mechanics::Placement& placement,
                  const BodyStage& stage, std::vector<Shape>& shapes)
        : case_(body_case), body_(body_case.body), placement_(placement), stage_(stage),
          shapes_(shapes), flesh_(body_case.body, placement, stage.camera),
          floor_px_(floor_under(body_case, stage)) {}

    void paint() {
        std::vector<DepthBalls> balls;
        for (std::size_t part = 0; part < part_count; ++part)
            balls.push_back(balls_of(static_cast<Part>(part)));
        std::vector<ThingPart> things = held_things(case_, placement_, flesh_, stage_);
        for (const ThingPart& thing : things)
            balls.push_back(thing.balls);
        const std::vector<std::size_t> order = paint_order(balls);
        for (std::size_t i = 0; i < order.size(); ++i) {
            if (order[i] >= part_count) {
                for (Shape& shape : things[order[i] - part_count].shapes)
                    shapes_.emplace_back(std::move(shape));
                continue;
            }
            const auto part = static_cast<Part>(order[i]);
            if (part == core) {
                add_core();
            } else if (part == head) {
                add_head(flesh_, placement_, stage_, shapes_);
            } else if (i + 1 < order.size() &&
                       are_one_limb(part, static_cast<Part>(order[i + 1]))) {
                add_limb(is_upper(part) ? part : static_cast<Part>(part - 1), true, true);
                ++i;
            } else {
                add_limb(part, is_upper(part), !is_upper(part));
            }
        }
    }

private:
    static bool are_one_limb(Part one, Part other) {
        const Part low = std::min(one, other);
        return low >= right_thigh && std::max(one, other) < part_count && is_upper(low) &&
               std::max(one, other) == low + 1;
    }

    // --- which lies before which --------------------------------------------------------------

    void add_balls(const Vec3& from_m, const Vec3& to_m, double radius_m, double first,
                   DepthBalls& balls) const {
        constexpr int kBalls = 6;
        for (int i = 0; i < kBalls; ++i) {
            const Vec3 at_m = from_m + std::lerp(first, 1.0, (i + 0.5) / kBalls) * (to_m - from_m);
            balls.push_back(
                {stage_.to_sheet(at_m), radius_m * stage_.px_per_m, stage_.depth(at_m)});
        }
    }

    void add_balls(Segment segment, double radius_m, double first, DepthBalls& balls) const {
        const auto& frame = placement_[segment];
        add_balls(frame.joint_m, frame.at(body_[segment].tip_m), radius_m, first, balls);
    }

    DepthBalls balls_of(Part part) const {
        DepthBalls balls;
        if (part == core) {
            for (const Segment segment : {Segment::pelvis, Segment::trunk})
                for (const double across_m : {-0.09, 0.0, 0.09}) {
                    const auto& frame = placement_[segment];
                    const Vec3 aside_m = across_m * frame.rotation.col(2);
                    add_balls(frame.joint_m + aside_m, frame.at(body_[segment].tip_m) + aside_m,
                              flesh_.stout(0.07), 0.0, balls);
                }
        } else if (part == head) {
            add_balls(Segment::head, flesh_.tall(0.08), 0.4, balls);
        } else {
            const BodySide& side = side_of(part);
            // The root of a limb lies in what carries it.
            if (is_arm(part) && is_upper(part)) {
                add_balls(side.upper_arm, flesh_.stout(0.04), 0.35, balls);
            } else if (is_arm(part)) {
                add_balls(side.forearm, flesh_.stout(0.035), 0.1, balls);
                add_balls(side.hand, flesh_.tall(0.04), 0.0, balls);
            } else if (is_upper(part)) {
                add_balls(side.thigh, flesh_.stout(0.07), 0.35, balls);
            } else {
                add_balls(side.shank, flesh_.stout(0.045), 0.1, balls);
                add_balls(side.foot, flesh_.tall(0.04), 0.0, balls);
            }
        }
        return balls;
    }

    // --- trunk --------------------------------------------------------------------------------

    /// The outline of a part. What presses on the floor is flat there, as flesh is: where the floor
    /// is seen from its edge, no line of it lies below.
    Ring outline(const Stack& stack) const {
        Ring ring = loft_outline(stack, stage_);
        if (!floor_px_)
            return ring;
        const double most_px = *floor_px_ + kGivesWay_m * stage_.px_per_m;
        const auto is_deep = [&](const Point& corner) { return corner.y() > most_px; };
        if (std::none_of(ring.begin(), ring.end(), is_deep))
            for (Point& corner : ring)
                corner.y() = std::min(corner.y(), *floor_px_);
        return ring;
    }

    void add_core() {
        const bool from_behind =
            stage_.camera.toward_eye().dot(placement_[Segment::trunk].rotation.col(0)) < -0.05;
        std::vector<Ring> shorts{outline(flesh_.pelvis())};
        shapes_.emplace_back(Outline{std::move(shorts), Role::shorts});
        if (from_behind)
            shapes_.emplace_back(Outline{{outline(flesh_.neck())}, Role::skin});
        std::vector<Ring> shirt{outline(flesh_.trunk()), outline(flesh_.waist())};
        for (const BodySide& side : kBodySides) {
            shirt.push_back(outline(flesh_.shoulder(side)));
            shirt.push_back(outline(flesh_.armpit(side)));
        }
        shapes_.emplace_back(Outline{union_of(std::move(shirt)), Role::shirt});
        if (!from_behind)
            shapes_.emplace_back(Outline{{outline(flesh_.neck())}, Role::skin});
    }

    // --- limbs --------------------------------------------------------------------------------

    bool is_in_shade(const BodySide& side) const {
        const Vec3 outward = side.outward * placement_[Segment::pelvis].rotation.col(2);
        return stage_.camera.toward_eye().dot(outward) * 0.09 < -kShade_m;
    }

    void add_limb(Part part, bool upper, bool lower) {
        const BodySide& side = side_of(part);
        if (is_arm(part))
            add_arm(side, upper, lower);
        else
            add_leg(side, upper, lower);
    }

    void add_arm(const BodySide& side, bool upper, bool lower) {
        std::vector<Ring> skin{outline(flesh_.elbow(side))};
        std::vector<Ring> cloth;
        if (upper) {
            skin.push_back(outline(flesh_.upper_arm(side)));
            cloth.push_back(outline(flesh_.sleeve(side)));
        }
        if (lower) {
            skin.push_back(outline(flesh_.forearm(side)));
            skin.push_back(outline(flesh_.wrist(side)));
            for (const Stack& part : flesh_.hand(side, hand_form(case_, side.hand)))
                skin.push_back(outline(part));
        }
        joints_.clear();
        add_joint(upper ? side.upper_arm : side.forearm, upper ? kShoulder_m : kElbow_m);
        if (!lower)
            add_joint(side.forearm, kElbow_m);
        const bool shade = is_in_shade(side);
        add_dressed(side.upper_arm,
                    {union_of(std::move(skin)), shade ? Role::far_skin : Role::skin},
                    {std::move(cloth), shade ? Role::far_shirt : Role::shirt});
    }

    void add_leg(const BodySide& side, bool upper, bool lower) {
        std::vector<Ring> skin{outline(flesh_.knee(side))};
        std::vector<Ring> cloth;
        std::vector<Ring> shoe;
        if (upper) {
            skin.push_back(outline(flesh_.thigh(side)));
            cloth.push_back(outline(flesh_.leg_of_shorts(side)));
        }
        if (lower) {
            skin.push_back(outline(flesh_.shank(side)));
            skin.push_back(outline(flesh_.ankle(side)));
            for (const Stack& part : flesh_.shoe(side))
                shoe.push_back(outline(part));
            shoe = union_of(std::move(shoe));
        }
        joints_.clear();
        add_joint(upper ? side.thigh : side.shank, upper ? kHip_m : kKnee_m);
        if (!lower)
            add_joint(side.shank, kKnee_m);
        const bool shade = is_in_shade(side);
        add_hairlines(shoe);
        add_dressed(side.thigh, {union_of(std::move(skin)), shade ? Role::far_skin : Role::skin},
                    {std::move(cloth), shade ? Role::far_shorts : Role::shorts});
        if (lower)
            shapes_.emplace_back(Outline{std::move(shoe), shade ? Role::far_shoe : Role::shoe});
    }

    /// The bare part of a limb comes out of its cloth towards the eye, or goes into it from there.
    void add_dressed(Segment clothed, Outline skin, Outline cloth) {
        add_hairlines(skin.rings);
        add_hairlines(cloth.rings);
        const Vec3 along = placement_[clothed].rotation * body_[clothed].tip_m;
        const bool comes_nearer = stage_.camera.toward_eye().dot(along) > 0.0;
        Outline& below = comes_nearer ? cloth : skin;
        Outline& above = comes_nearer ? skin : cloth;
        for (Outline* one : {&below, &above})
            if (!one->rings.empty())
                shapes_.emplace_back(std::move(*one));
    }

    // --- hairlines ----------------------------------------------------------------------------

    struct Joint {
        Point at;
        double radius_px;
    };

    void add_joint(Segment segment, double radius_m) {
        joints_.push_back({stage_.to_sheet(placement_[segment].joint_m),
                           flesh_.stout(radius_m) * stage_.px_per_m});
    }

    /// How far a point lies from the limb's joints, as a part of the room around the nearest.
    double apart(const Point& point) const {
        double least = std::numeric_limits<double>::max();
        for (const Joint& joint : joints_)
            least = std::min(least, (point - joint.at).norm() / joint.radius_px);
        return least;
    }

    /// Lines along the outlines that fade where the limb runs into its neighbour.
    void add_hairlines(const std::vector<Ring>& rings) {
        for (const Ring& ring : rings)
            for (const auto& [room, part] :
                 {std::pair{1.0, 0.4}, std::pair{1.15, 0.7}, std::pair{1.3, 1.0}})
                add_hairline(ring, room, {Role::sheet, 2.0 * part * kHairline_px});
    }

    void add_hairline(const Ring& ring, double room, const Stroke& stroke) {
        std::size_t start = 0; // a corner at a joint, so that no run goes past the ring's end
        while (start < ring.size() && apart(ring[start]) >= room)
            ++start;
        Polyline line{{}, stroke};
        const auto end_run = [&] {
            if (line.corners.size() > 1)
                shapes_.emplace_back(line);
            line.corners.clear();
        };
        for (std::size_t i = 0; i <= ring.size(); ++i) {
            const Point& corner = ring[(start + i) % ring.size()];
            if (apart(corner) < room)
                end_run();
            else
                line.corners.push_back(corner);
        }
        end_run();
    }

    const mechanics::BodyCase& case_;
    const mechanics::Body& body_;
    const mechanics::Placement& placement_;
    const BodyStage& stage_;
    std::vector<Shape>& shapes_;
    Flesh flesh_;
    std::optional<double> floor_px_; ///< of a floor that carries the figure
    std::vector<Joint> joints_;
};

} // namespace

bool is_of_figure(Role role) {
    switch (role) {
    case Role::skin:
    case Role::far_skin:
    case Role::shirt:
    case Role::far_shirt:
    case Role::shorts:
    case Role::far_shorts:
    case Role::shoe:
    case Role::far_shoe:
        return true;
    default:
        return false;
    }
}

HandForm hand_form(const mechanics::BodyCase& body_case, Segment hand) {
    for (const mechanics::Resistance& resistance : body_case.resistances) {
        const bool in_both = std::holds_alternative<mechanics::Barbell>(resistance.kind);
        if (in_both || mechanics::carrier_of(resistance).segment == hand)
            return HandForm::gripping;
    }
    if (const auto* ground = std::get_if<mechanics::OnContacts>(&body_case.support))
        for (const mechanics::Contact& contact : ground->contacts)
            if (contact.segment == hand)
                return contact.patch == mechanics::Patch::grip ? HandForm::gripping
                                                               : HandForm::flat;
    return HandForm::relaxed;
}

void add_figure(const mechanics::BodyCase& body_case, const mechanics::Placement& placement,
                const BodyStage& stage, std::vector<Shape>& shapes) {
    FigurePainter(body_case, placement, stage, shapes).paint();
}

} // namespace steelyard::scene
