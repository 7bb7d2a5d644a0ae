#include "scene/body/support_pad.h"

#include "mechanics/body/landmarks.h"
#include "scene/figure/flesh.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace steelyard::scene {

namespace {

using mechanics::Segment;

constexpr double kLevel = 0.35;         ///< rise of a segment that lies, as a part of its length
constexpr double kLeastHeight_px = 5.0; ///< of a pad above the floor
constexpr double kPad_px = 16.0;
constexpr double kLeg_px = 5.0;
constexpr double kBesideFoot_m = 0.05; ///< of a box on either side of what stands on it

constexpr std::array kThighs{Segment::right_thigh, Segment::left_thigh};
constexpr std::array kLying{Segment::pelvis, Segment::trunk, Segment::head, Segment::right_thigh,
                            Segment::left_thigh};

/// The segments that may lie on what holds one of them: who is held by the thighs moves the rest.
std::span<const Segment> carried_with(Segment held) {
    if (held == Segment::right_thigh || held == Segment::left_thigh)
        return kThighs;
    if (held == Segment::pelvis || held == Segment::trunk)
        return kLying;
    return {};
}

/// The flesh that touches what one lies on.
Stack stack_of(const Flesh& flesh, Segment segment) {
    if (segment == Segment::pelvis)
        return flesh.pelvis();
    if (segment == Segment::trunk)
        return flesh.trunk();
    if (segment == Segment::head)
        return flesh.head();
    return flesh.leg_of_shorts(kBodySides[segment == Segment::right_thigh ? 0 : 1]);
}

bool floor_is_edge(const BodyStage& stage) {
    return std::abs(stage.camera.toward_eye().y()) < 0.2;
}

double bottom_px(const BodyStage& stage, double lowest_px) {
    return std::min(stage.to_sheet(Vec3::Zero()).y(), lowest_px);
}

/// Grows a room that begins as low > high: nothing.
void take_in(const Ring& outline, Rect& room) {
    for (const Point& corner : outline) {
        room.low.x() = std::min(room.low.x(), corner.x());
        room.high.x() = std::max(room.high.x(), corner.x());
        room.low.y() = std::max(room.low.y(), corner.y()); // its top: under the lowest
    }
}

} // namespace

std::optional<Rect> support_pad(const mechanics::BodyCase& body_case,
                                const mechanics::Placement& placement, const BodyStage& stage,
                                double lowest_px) {
    const auto* held = std::get_if<mechanics::Held>(&body_case.support);
    if (held == nullptr || !floor_is_edge(stage))
        return std::nullopt;
    Rect room{{1e9, -1e9}, {-1e9, bottom_px(stage, lowest_px)}};
    bool lies = false;
    const Flesh flesh(body_case.body, placement, stage.camera);
    for (const Segment segment : carried_with(held->segment)) {
        const auto& frame = placement[segment];
        const Point along =
            stage.to_sheet(frame.at(body_case.body[segment].tip_m)) - stage.to_sheet(frame.joint_m);
        if (std::abs(along.y()) > kLevel * along.norm())
            continue;
        lies = true;
        take_in(loft_outline(stack_of(flesh, segment), stage), room);
    }
    if (!lies)
        return std::nullopt;
    if (held->segment == Segment::pelvis)
        take_in(loft_outline(flesh.pelvis(), stage), room);
    if (room.high.y() - room.low.y() < kLeastHeight_px)
        return std::nullopt;
    return room;
}

std::vector<Rect> raised_steps(const mechanics::BodyCase& body_case,
                               const mechanics::Placement& placement, const BodyStage& stage,
                               double lowest_px) {
    constexpr double kRaised_m = 0.02; // lower is a board that needs no drawing
    std::vector<Rect> steps;
    const auto* on = std::get_if<mechanics::OnContacts>(&body_case.support);
    if (on == nullptr || !floor_is_edge(stage))
        return steps;
    const double beside_px = kBesideFoot_m * stage.px_per_m;
    for (const mechanics::Contact& contact : on->contacts) {
        const bool stands = mechanics::is_foot(contact.segment) ||
                            contact.patch == mechanics::Patch::toes ||
                            contact.patch == mechanics::Patch::knee;
        const auto corners_m = mechanics::patch_corners(body_case.body, contact);
        if (!stands || contact.level_m < kRaised_m || !corners_m)
            continue;
        Rect room{{1e9, stage.to_sheet(Vec3(0.0, contact.level_m, 0.0)).y()},
                  {-1e9, bottom_px(stage, lowest_px)}};
        for (const Vec3& corner_m : *corners_m) {
            const double x = stage.to_sheet(placement[contact.segment].at(corner_m)).x();
            room.low.x() = std::min(room.low.x(), x - beside_px);
            room.high.x() = std::max(room.high.x(), x + beside_px);
        }
        if (room.high.y() > room.low.y())
            steps.push_back(room);
    }
    return steps;
}

namespace {

void add_box(const Rect& at, double corner_px, Role role, std::vector<Shape>& shapes) {
    Box box;
    box.centre = 0.5 * (at.low + at.high);
    box.size_px = at.high - at.low;
    box.corner_px = corner_px;
    box.fill = role;
    shapes.emplace_back(box);
}

} // namespace

void add_step(const Rect& room, std::vector<Shape>& shapes) {
    add_box(room, 2.0, Role::pad, shapes);
}

void add_support_pad(const Rect& room, std::vector<Shape>& shapes) {
    const double height_px = room.high.y() - room.low.y();
    const double pad_px = std::min(kPad_px, height_px);
    add_box({room.low, {room.high.x(), room.low.y() + pad_px}}, std::min(6.0, 0.5 * pad_px),
            Role::pad, shapes);
    const double leg_top_px = room.low.y() + pad_px;
    const double width_px = room.high.x() - room.low.x();
    if (height_px < 2.5 * kPad_px)
        return;
    for (const double share : {0.15, 0.85}) {
        const double x = room.low.x() + share * width_px;
        add_box({{x - 0.5 * kLeg_px, leg_top_px}, {x + 0.5 * kLeg_px, room.high.y()}}, 0.0,
                Role::iron, shapes);
    }
}

} // namespace steelyard::scene
