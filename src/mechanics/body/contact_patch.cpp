// Where contacts lie on the body.

#include "mechanics/body/landmarks.h"
#include "mechanics/body/support.h"

namespace steelyard::mechanics {

namespace {

constexpr std::array<std::string_view, 9> kPatchNames{"sole", "ball", "toes",    "palm", "seat",
                                                      "knee", "back", "forearm", "grip"};

/// A rectangle in a plane of the segment's frame: from rear to front, half its breadth to each
/// side (z). Right-hand limbs and left-hand limbs alike.
std::array<Vec3, 4> rectangle(const Vec3& rear_m, const Vec3& front_m, double breadth_m) {
    const Vec3 half = 0.5 * breadth_m * Vec3::UnitZ();
    return {rear_m - half, rear_m + half, front_m + half, front_m - half};
}

std::string_view owner_of(Patch patch) {
    switch (patch) {
    case Patch::sole:
    case Patch::ball:
        return "a foot for this patch";
    case Patch::toes:
        return "toes for this patch";
    case Patch::palm:
    case Patch::grip:
        return "a hand for this patch";
    case Patch::forearm:
        return "a forearm for this patch";
    case Patch::seat:
        return "the pelvis for this patch";
    case Patch::knee:
        return "a lower leg for this patch";
    case Patch::back:
        return "the trunk for this patch";
    }
    return "";
}

bool has_patch(Segment segment, Patch patch) {
    switch (patch) {
    case Patch::sole:
    case Patch::ball:
        return is_foot(segment);
    case Patch::toes:
        return is_toes(segment);
    case Patch::palm:
    case Patch::grip:
        return is_hand(segment);
    case Patch::forearm:
        return is_forearm(segment);
    case Patch::seat:
        return segment == Segment::pelvis;
    case Patch::knee:
        return is_shank(segment);
    case Patch::back:
        return segment == Segment::trunk;
    }
    return false;
}

/// The little-finger side lies inwards of the axis in the zero position: palms forward.
std::array<Vec3, 4> forearm_corners(const Body& body, Segment segment) {
    const double inwards = segment == Segment::right_forearm ? -1.0 : 1.0;
    const double side_m = inwards * kForearmBelowAxis * body.height_m;
    const Vec3 half_m(0.5 * kHandBreadth * body.height_m, 0.0, 0.0);
    const Vec3 elbow_m(0.0, 0.0, side_m);
    const Vec3 wrist_m(0.0, body[segment].tip_m.y(), side_m);
    return {elbow_m - half_m, elbow_m + half_m, wrist_m + half_m, wrist_m - half_m};
}

std::array<Vec3, 4> corners_of(const Body& body, const Contact& contact) {
    const double height_m = body.height_m;
    const double sole_m = -body.ankle_height_m;
    const double ball_m = body.ball_before_ankle_m;
    switch (contact.patch) {
    case Patch::sole:
        return rectangle({-body.heel_behind_ankle_m, sole_m, 0.0},
                         {ball_m + body.toe_tip_before_ball_m, sole_m, 0.0},
                         kFootBreadth * height_m);
    case Patch::ball:
        return rectangle({ball_m - kHalfBall_m, sole_m, 0.0}, {ball_m + kHalfBall_m, sole_m, 0.0},
                         kFootBreadth * height_m);
    case Patch::toes:
        return rectangle(Vec3::Zero(), {body.toe_tip_before_ball_m, 0.0, 0.0},
                         kFootBreadth * height_m);
    case Patch::palm:
        return rectangle(Vec3::Zero(), {0.0, -body.fingertip_from_wrist_m, 0.0},
                         kHandBreadth * height_m);
    case Patch::grip:
        return rectangle({-kHalfGrip_m, -body.grip_from_wrist_m, 0.0},
                         {kHalfGrip_m, -body.grip_from_wrist_m, 0.0}, kHandBreadth * height_m);
    case Patch::forearm:
        return forearm_corners(body, contact.segment);
    case Patch::seat: {
        const double seat_m = -kSeatBelowHips * height_m;
        const double half_depth_m = 0.5 * kSeatDepth * height_m;
        return rectangle({-half_depth_m, seat_m, 0.0}, {half_depth_m, seat_m, 0.0},
                         kSeatBreadth * height_m);
    }
    case Patch::knee: {
        const double front_m = kKneeBeforeJoint * height_m;
        return rectangle({front_m, kHalfKnee_m, 0.0}, {front_m, -kHalfKnee_m, 0.0},
                         kFootBreadth * height_m);
    }
    case Patch::back: {
        const double back_m = -kBackBehindSpine * height_m;
        return rectangle({back_m, 0.0, 0.0}, {back_m, body[Segment::trunk].tip_m.y(), 0.0},
                         kSeatBreadth * height_m);
    }
    }
    return {};
}

} // namespace

tl::expected<std::array<Vec3, 4>, MechanicsError> patch_corners(const Body& body,
                                                                const Contact& contact) {
    if (index_of(contact.segment) >= kSegmentCount)
        return tl::unexpected(
            MechanicsError{Fault::unknown_name, "segment", "a segment of the body"});
    if (!has_patch(contact.segment, contact.patch))
        return tl::unexpected(
            MechanicsError{Fault::inconsistent, "segment", std::string(owner_of(contact.patch))});
    return corners_of(body, contact);
}

std::vector<Vec3> touching_points(const Body& body, const Contact& contact) {
    const auto corners = patch_corners(body, contact);
    if (!corners)
        return {};
    const auto& [rear_left, rear_right, front_right, front_left] = *corners;
    if (!contact.tilts)
        return {rear_left, rear_right, front_right, front_left};
    const double at = contact.pressure_at.value_or(0.5);
    return {(1.0 - at) * rear_left + at * front_left, (1.0 - at) * rear_right + at * front_right};
}

std::optional<Patch> patch_named(std::string_view name) {
    for (std::size_t i = 0; i < kPatchNames.size(); ++i)
        if (kPatchNames[i] == name)
            return static_cast<Patch>(i);
    return std::nullopt;
}

std::string_view patch_name(Patch patch) {
    return kPatchNames[static_cast<std::size_t>(patch)];
}

} // namespace steelyard::mechanics
