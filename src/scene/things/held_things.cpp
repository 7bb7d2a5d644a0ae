#include "scene/things/held_things.h"

#include "scene/figure/ring_union.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string_view>

namespace steelyard::scene {

namespace {

using mechanics::Segment;
using mechanics::SegmentFrame;

constexpr double kEdge_px = 2.5;       ///< of a thing against what lies behind it; half is seen
constexpr double kBarRadius_m = 0.014; ///< of handles and bars
constexpr double kHalfGrip_m = 0.062;  ///< of a dumbbell, from the middle to its ends
constexpr double kHalfBar_m = 0.62;    ///< from the middle of a bar to its inner plate
constexpr double kBarEnd_m = 0.12;     ///< and on from there
constexpr double kLargePlate_m = 0.225;
/// A plate that shows more of its face than this is drawn as a ring: what is behind it matters.
constexpr double kFaceOn = 0.6;
constexpr double kCrateHalf_m[] = {0.15, 0.13, 0.19}; ///< deep, high, wide

/// A round bar, or a round plate where it is thick: from one place to another.
Stack cylinder(const Vec3& from_m, const Vec3& to_m, double radius_m) {
    const Vec3 along = (to_m - from_m).normalized();
    const Vec3 any = std::abs(along.y()) < 0.9 ? Vec3::UnitY() : Vec3::UnitX();
    const Vec3 across = along.cross(any).normalized();
    const Vec3 third = along.cross(across);
    Stack stack;
    for (const Vec3& place_m : {from_m, to_m})
        stack.push_back({place_m, radius_m * across, radius_m * third, -radius_m * third});
    return stack;
}

Vec3 place_of(const mechanics::BodyPoint& point, const mechanics::BodyCase& body_case,
              const mechanics::Placement& placement) {
    const auto local = mechanics::local_point(body_case.body, point);
    return placement[point.segment].at(local.value_or(Vec3::Zero()));
}

Vec3 grip_of(Segment hand, const mechanics::BodyCase& body_case,
             const mechanics::Placement& placement) {
    return place_of({hand, mechanics::Spot::grip, 0.0, Vec3::Zero()}, body_case, placement);
}

/// A bar in both hands or on a back, with its plates.
struct HeldBar {
    Vec3 middle_m;
    Vec3 along;     ///< unit
    double half_m;  ///< from the middle to the inner plate
    double plate_m; ///< radius
};

HeldBar held_bar(const mechanics::BodyCase& body_case, const mechanics::Placement& placement,
                 const mechanics::Barbell& bar) {
    const Vec3 right_m = bar.resting_on ? place_of(*bar.resting_on, body_case, placement)
                                        : grip_of(Segment::right_hand, body_case, placement);
    const Vec3 left_m =
        bar.resting_on ? right_m : grip_of(Segment::left_hand, body_case, placement);
    const Vec3 span_m = right_m - left_m;
    const double plate_m = bar.mass_kg >= 30.0
                               ? kLargePlate_m
                               : std::clamp(0.036 * std::cbrt(bar.mass_kg) + 0.02, 0.05, 0.14);
    return {0.5 * (right_m + left_m),
            span_m.norm() > 0.1 ? Vec3(span_m.normalized())
                                : Vec3(placement[Segment::trunk].rotation.col(2)),
            std::max(kHalfBar_m, 0.5 * span_m.norm() + 0.16), plate_m};
}

/// The ends of a fixed bar that both hands hold on to.
std::optional<std::array<Vec3, 2>> fixed_bar(const mechanics::BodyCase& body_case,
                                             const mechanics::Placement& placement) {
    const auto* ground = std::get_if<mechanics::OnContacts>(&body_case.support);
    const auto holds = [&](Segment hand) {
        return ground != nullptr && std::any_of(ground->contacts.begin(), ground->contacts.end(),
                                                [&](const mechanics::Contact& contact) {
                                                    return contact.segment == hand &&
                                                           contact.patch == mechanics::Patch::grip;
                                                });
    };
    if (!holds(Segment::right_hand) || !holds(Segment::left_hand))
        return std::nullopt;
    const Vec3 right_m = grip_of(Segment::right_hand, body_case, placement);
    const Vec3 left_m = grip_of(Segment::left_hand, body_case, placement);
    const Vec3 beyond_m = 0.22 * (right_m - left_m).normalized();
    return std::array{Vec3(right_m + beyond_m), Vec3(left_m - beyond_m)};
}

struct DumbbellSize {
    double radius_m;
    double thick_m; ///< of one end
};
DumbbellSize dumbbell_size(double mass_kg) {
    const double radius_m = std::clamp(0.031 * std::cbrt(mass_kg), 0.03, 0.10);
    return {radius_m, 1.1 * radius_m};
}

/// True when a thing in both hands is a bar, by what it is called.
bool is_bar(std::string_view name) {
    constexpr std::array kOthers{"crate", "box", "kettlebell", "dumbbell", "plate"};
    return std::none_of(kOthers.begin(), kOthers.end(), [&](std::string_view other) {
        return name.find(other) != std::string_view::npos;
    });
}

class ThingMaker {
public:
    ThingMaker(const mechanics::BodyCase& body_case, const mechanics::Placement& placement,
               const Flesh& flesh, const BodyStage& stage, std::vector<ThingPart>& parts)
        : case_(body_case), placement_(placement), flesh_(flesh), stage_(stage), parts_(parts) {}

    void operator()(const mechanics::Dumbbell& bell) const {
        add_dumbbell(grip(bell.hand), placement_[bell.hand].rotation.col(2), bell.mass_kg);
    }

    /// One thing in both hands, or a bar across the back. What it is called tells which.
    void operator()(const mechanics::Barbell& bar) const {
        const HeldBar held = held_bar(case_, placement_, bar);
        const Vec3& middle_m = held.middle_m;
        const Vec3& along = held.along;
        const SegmentFrame& trunk = placement_[Segment::trunk];
        if (is_called("crate") || is_called("box"))
            add_crate(middle_m, along);
        else if (is_called("kettlebell"))
            add_kettlebell(middle_m, -Vec3::UnitY(), along, 0.0, bar.mass_kg);
        else if (is_called("dumbbell"))
            add_dumbbell(middle_m, along, bar.mass_kg);
        else if (is_called("plate"))
            add_cylinder(middle_m - 0.02 * trunk.rotation.col(0),
                         middle_m + 0.02 * trunk.rotation.col(0),
                         std::clamp(0.075 * std::cbrt(bar.mass_kg), 0.08, kLargePlate_m), -0.04);
        else
            add_barbell(held);
    }

    void make_fixed_bar() const {
        if (const auto bar = fixed_bar(case_, placement_))
            add_cylinder((*bar)[0], (*bar)[1], kBarRadius_m, -0.05);
    }

    void operator()(const mechanics::Kettlebell& bell) const {
        const SegmentFrame& hand = placement_[bell.hand];
        const Vec3 down = bell.follows_hand ? Vec3(hand.rotation * bell.direction.normalized())
                                            : Vec3(-Vec3::UnitY());
        Vec3 across = hand.rotation.col(2) - hand.rotation.col(2).dot(down) * down;
        across = across.norm() > 0.2 ? Vec3(across.normalized()) : Vec3(hand.rotation.col(0));
        add_kettlebell(grip(bell.hand), down, across, bell.offset_m, bell.mass_kg);
    }

    void operator()(const mechanics::Cuff& cuff) const {
        const SegmentFrame& limb = placement_[cuff.at.segment];
        const Vec3 middle_m = place(cuff.at);
        const double radius_m = flesh_.stout(is_leg(cuff.at.segment) ? 0.052 : 0.042);
        const Vec3 along = limb.rotation.col(1);
        add_cylinder(middle_m - 0.035 * along, middle_m + 0.035 * along, radius_m, 0.06);
    }

    void operator()(const mechanics::PlateMachine& machine) const {
        const SegmentFrame& limb = placement_[machine.pad.segment];
        const Vec3 at_m = place(machine.pad);
        const Vec3 axis = placement_.axis(machine.hinge);
        const Vec3 axis_m = placement_.axis_point_m(machine.hinge);
        // The pad lies on the side from which it pushes.
        const Vec3 arm_m = at_m - axis_m - axis.dot(at_m - axis_m) * axis;
        const Vec3 push = machine.pushes * axis.cross(arm_m).normalized();
        const double radius_m = 0.045;
        const double flesh_m = flesh_.stout(is_leg(machine.pad.segment) ? 0.042 : 0.034);
        const Vec3 middle_m = at_m - (flesh_m + radius_m) * push;
        const Vec3 across = limb.rotation.col(2);
        const double outward =
            machine.pad.segment == mechanics::segment_info(machine.pad.segment).mirror ? 1.0
            : (middle_m - placement_[Segment::pelvis].joint_m).dot(across) > 0.0       ? 1.0
                                                                                       : -1.0;
        // The machine's arm turns about the same axis, beside the limb.
        const Vec3 beside = outward * 0.11 * across;
        add_cylinder(axis_m + beside, middle_m + beside, 0.018, -0.02);
        add_cylinder(middle_m - 0.11 * across, middle_m + 0.11 * across, radius_m);
    }

    void operator()(const mechanics::Cable& cable) const { add_handle(cable.at); }
    void operator()(const mechanics::CableColumn& column) const { add_handle(column.at); }
    void operator()(const mechanics::Band& band) const { add_handle(band.at); }
    void operator()(const mechanics::PartnerPush& /*push*/) const {}

    void make(const mechanics::Resistance& resistance) {
        name_ = resistance.name;
        std::visit(*this, resistance.kind);
    }

private:
    bool is_called(std::string_view word) const {
        return name_.find(word) != std::string_view::npos;
    }

    void add_dumbbell(const Vec3& grip_m, const Vec3& across, double mass_kg) const {
        const auto [radius_m, thick_m] = dumbbell_size(mass_kg);
        add_cylinder(grip_m - 0.07 * across, grip_m + 0.07 * across, kBarRadius_m, -0.05);
        for (const double side : {-1.0, 1.0})
            add_cylinder(grip_m + side * kHalfGrip_m * across,
                         grip_m + side * (kHalfGrip_m + thick_m) * across, radius_m);
    }

    void add_barbell(const HeldBar& bar) const {
        const Vec3 half_m = (bar.half_m + kBarEnd_m) * bar.along;
        add_cylinder(bar.middle_m - half_m, bar.middle_m + half_m, kBarRadius_m, -0.04);
        for (const double side : {-1.0, 1.0})
            add_plate(bar.middle_m + side * bar.half_m * bar.along, side * bar.along, bar.plate_m);
    }

    /// @param across    of the handle, unit
    /// @param offset_m  of the ball's middle from the grip, at least what the handle needs
    void add_kettlebell(const Vec3& grip_m, const Vec3& down, const Vec3& across, double offset_m,
                        double mass_kg) const {
        const double radius_m = std::clamp(0.046 * std::cbrt(mass_kg), 0.05, 0.13);
        const Vec3 middle_m = grip_m + std::max(offset_m, radius_m + 0.03) * down;
        // The handle: across the palm, and down on both sides into the ball.
        const std::array horn_m{Vec3(middle_m - 0.75 * radius_m * across),
                                Vec3(grip_m - 0.055 * across), Vec3(grip_m + 0.055 * across),
                                Vec3(middle_m + 0.75 * radius_m * across)};
        std::vector<Ring> handle;
        for (std::size_t i = 0; i + 1 < horn_m.size(); ++i)
            handle.push_back(
                loft_outline(std::array{ball(horn_m[i], kBarRadius_m, stage_.camera),
                                        ball(horn_m[i + 1], kBarRadius_m, stage_.camera)},
                             stage_));
        add_part({ball_at(grip_m, 0.05, -0.05)}, std::move(handle));
        add_part({ball_at(middle_m, radius_m, 0.0)},
                 {loft_outline(std::array{ball(middle_m, radius_m, stage_.camera),
                                          ball(middle_m + 0.002 * down, radius_m, stage_.camera)},
                               stage_)});
    }

    static bool is_leg(Segment segment) {
        return mechanics::is_at_or_beyond(segment, Segment::right_thigh) ||
               mechanics::is_at_or_beyond(segment, Segment::left_thigh);
    }

    Vec3 place(const mechanics::BodyPoint& point) const {
        return place_of(point, case_, placement_);
    }
    Vec3 grip(Segment hand) const { return grip_of(hand, case_, placement_); }

    DepthBall ball_at(const Vec3& place_m, double radius_m, double nearer_m) const {
        return {stage_.to_sheet(place_m), radius_m * stage_.px_per_m,
                stage_.depth(place_m) + nearer_m};
    }

    void add_part(DepthBalls balls, std::vector<Ring> rings, Role role = Role::iron) const {
        ThingPart part{std::move(balls), {}};
        rings = union_of(std::move(rings));
        for (const Ring& ring : rings) {
            Polyline edge{ring, {Role::sheet, kEdge_px}};
            edge.corners.push_back(ring.front());
            part.shapes.emplace_back(std::move(edge));
        }
        part.shapes.emplace_back(Outline{std::move(rings), role});
        parts_.push_back(std::move(part));
    }

    /// @param nearer_m  how much nearer than it is it counts: a handle lies in the hand
    void add_cylinder(const Vec3& from_m, const Vec3& to_m, double radius_m,
                      double nearer_m = 0.0) const {
        DepthBalls balls;
        const int count = 1 + static_cast<int>((to_m - from_m).norm() / (2.0 * radius_m + 0.04));
        for (int i = 0; i < count; ++i)
            balls.push_back(
                ball_at(from_m + (i + 0.5) / count * (to_m - from_m), radius_m, nearer_m));
        add_part(std::move(balls), {loft_outline(cylinder(from_m, to_m, radius_m), stage_)});
    }

    void add_plate(const Vec3& inner_m, const Vec3& outward, double radius_m) const {
        const Vec3 outer_m = inner_m + 0.04 * outward;
        if (std::abs(stage_.camera.toward_eye().dot(outward)) < kFaceOn) {
            add_cylinder(inner_m, outer_m, radius_m);
            return;
        }
        // Farther than all else or nearer: a ring hides nothing.
        ThingPart part{{ball_at(inner_m, radius_m, 0.0)}, {}};
        Ring rim = loft_outline(cylinder(inner_m, outer_m, radius_m), stage_);
        rim.push_back(rim.front());
        part.shapes.emplace_back(Polyline{rim, {Role::sheet, 6.0, Dash::solid, 0.6}});
        part.shapes.emplace_back(Polyline{std::move(rim), {Role::iron, 3.5}});
        Disc hub;
        hub.centre = stage_.to_sheet(outer_m);
        hub.radius_px = std::max(0.025 * stage_.px_per_m, 3.0);
        hub.fill = Role::iron;
        part.shapes.emplace_back(hub);
        parts_.push_back(std::move(part));
    }

    void add_crate(const Vec3& middle_m, const Vec3& along) const {
        const Vec3 forward = Vec3::UnitY().cross(along).normalized();
        Ring corners;
        for (const double deep : {-1.0, 1.0})
            for (const double high : {-1.0, 1.0})
                for (const double wide : {-1.0, 1.0})
                    corners.push_back(stage_.to_sheet(middle_m + deep * kCrateHalf_m[0] * forward +
                                                      Vec3(0.0, high * kCrateHalf_m[1], 0.0) +
                                                      wide * kCrateHalf_m[2] * along));
        Ring rim = loft_outline(std::array{corners, corners}, Point(1.0, 0.0));
        add_part({ball_at(middle_m, 0.12, -0.03)}, {rim}, Role::pad);
        rim.push_back(rim.front());
        parts_.back().shapes.emplace_back(Polyline{std::move(rim), {Role::iron, 2.0}});
        // Two boards.
        for (const double high : {-0.33, 0.33}) {
            const double up_m = high * kCrateHalf_m[1];
            const Vec3 face =
                (stage_.camera.toward_eye().dot(along) > 0.5 ? kCrateHalf_m[2] : 0.0) * along;
            const Vec3 half =
                face.norm() > 0.0 ? Vec3(kCrateHalf_m[0] * forward) : Vec3(kCrateHalf_m[2] * along);
            const Vec3 level_m =
                middle_m + face + Vec3(0.0, up_m, 0.0) +
                (face.norm() > 0.0 ? Vec3(Vec3::Zero()) : Vec3(kCrateHalf_m[0] * forward));
            parts_.back().shapes.emplace_back(Line{stage_.to_sheet(level_m - half),
                                                   stage_.to_sheet(level_m + half),
                                                   {Role::iron, 1.25, Dash::solid, 0.6}});
        }
    }

    /// What a cable or band ends in: a handle in a hand, a cuff around a limb.
    void add_handle(const mechanics::BodyPoint& at) const {
        const SegmentFrame& frame = placement_[at.segment];
        const Vec3 middle_m = place(at);
        const bool in_hand = at.segment == Segment::right_hand || at.segment == Segment::left_hand;
        if (in_hand) {
            const Vec3 across = frame.rotation.col(2);
            add_cylinder(middle_m - 0.065 * across, middle_m + 0.065 * across, kBarRadius_m, -0.05);
        } else if (at.segment != Segment::head && at.segment != Segment::trunk &&
                   at.segment != Segment::pelvis) {
            const Vec3 along = frame.rotation.col(1);
            const double radius_m = flesh_.stout(is_leg(at.segment) ? 0.048 : 0.036);
            add_cylinder(middle_m - 0.02 * along, middle_m + 0.02 * along, radius_m, 0.06);
        }
    }

    const mechanics::BodyCase& case_;
    const mechanics::Placement& placement_;
    const Flesh& flesh_;
    const BodyStage& stage_;
    std::vector<ThingPart>& parts_;
    std::string_view name_; ///< of what is being made
};

} // namespace

std::vector<ThingPart> held_things(const mechanics::BodyCase& body_case,
                                   const mechanics::Placement& placement, const Flesh& flesh,
                                   const BodyStage& stage) {
    std::vector<ThingPart> parts;
    ThingMaker maker(body_case, placement, flesh, stage, parts);
    for (const mechanics::Resistance& resistance : body_case.resistances)
        maker.make(resistance);
    maker.make_fixed_bar();
    return parts;
}

std::vector<ThingReach> reaches_of_things(const mechanics::BodyCase& body_case,
                                          const mechanics::Placement& placement) {
    std::vector<ThingReach> reaches;
    const auto add_both_ends = [&](const Vec3& middle_m, const Vec3& half_m, double radius_m) {
        reaches.push_back({middle_m + half_m, radius_m});
        reaches.push_back({middle_m - half_m, radius_m});
    };
    for (const mechanics::Resistance& resistance : body_case.resistances) {
        if (const auto* bar = std::get_if<mechanics::Barbell>(&resistance.kind);
            bar != nullptr && is_bar(resistance.name)) {
            const HeldBar held = held_bar(body_case, placement, *bar);
            add_both_ends(held.middle_m, (held.half_m + kBarEnd_m) * held.along, held.plate_m);
        }
        if (const auto* bell = std::get_if<mechanics::Dumbbell>(&resistance.kind)) {
            const auto [radius_m, thick_m] = dumbbell_size(bell->mass_kg);
            add_both_ends(grip_of(bell->hand, body_case, placement),
                          (kHalfGrip_m + thick_m) * placement[bell->hand].rotation.col(2),
                          radius_m);
        }
    }
    if (const auto bar = fixed_bar(body_case, placement))
        for (const Vec3& end_m : *bar)
            reaches.push_back({end_m, kBarRadius_m});
    return reaches;
}

} // namespace steelyard::scene
