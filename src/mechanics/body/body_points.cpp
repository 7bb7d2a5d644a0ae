// Named places on the body.

#include "mechanics/body/body.h"
#include "mechanics/body/landmarks.h"
#include "mechanics/bounds.h"

namespace steelyard::mechanics {

namespace {

constexpr std::array<std::string_view, 11> kSpotNames{
    "along", "centre_of_mass", "grip", "palm",       "sole",      "heel",
    "ball",  "toe_tip",        "seat", "upper_back", "knee_front"};

/// Farthest that a point may lie from the body part it belongs to [m].
constexpr double kMostOffset_m = 3.0;

/// The parts that have a spot, as a phrase; empty when every segment has it.
std::string_view owner_of(Spot spot) {
    switch (spot) {
    case Spot::along:
    case Spot::centre_of_mass:
        return "";
    case Spot::grip:
    case Spot::palm:
        return "a hand for this spot";
    case Spot::sole:
    case Spot::heel:
    case Spot::ball:
        return "a foot for this spot";
    case Spot::toe_tip:
        return "toes for this spot";
    case Spot::seat:
        return "the pelvis for this spot";
    case Spot::upper_back:
        return "the trunk for this spot";
    case Spot::knee_front:
        return "a lower leg for this spot";
    }
    return "";
}

bool has_spot(Segment segment, Spot spot) {
    switch (spot) {
    case Spot::along:
    case Spot::centre_of_mass:
        return true;
    case Spot::grip:
    case Spot::palm:
        return is_hand(segment);
    case Spot::sole:
    case Spot::heel:
    case Spot::ball:
        return is_foot(segment);
    case Spot::toe_tip:
        return is_toes(segment);
    case Spot::seat:
        return segment == Segment::pelvis;
    case Spot::upper_back:
        return segment == Segment::trunk;
    case Spot::knee_front:
        return is_shank(segment);
    }
    return false;
}

Vec3 spot_of(const Body& body, const BodyPoint& point) {
    const SegmentBody& segment = body[point.segment];
    switch (point.spot) {
    case Spot::along:
        return point.along * segment.tip_m;
    case Spot::centre_of_mass:
        return segment.com_m;
    case Spot::grip:
        return {0.0, -body.grip_from_wrist_m, 0.0};
    case Spot::palm:
        return {0.0, -0.5 * body.fingertip_from_wrist_m, 0.0};
    case Spot::sole:
        return {0.0, -body.ankle_height_m, 0.0};
    case Spot::heel:
        return {-body.heel_behind_ankle_m, -body.ankle_height_m, 0.0};
    case Spot::ball:
        return {body.ball_before_ankle_m, -body.ankle_height_m, 0.0};
    case Spot::toe_tip:
        return {body.toe_tip_before_ball_m, 0.0, 0.0};
    case Spot::seat:
        return {0.0, -kSeatBelowHips * body.height_m, 0.0};
    case Spot::upper_back:
        return {-kBackBehindSpine * body.height_m, segment.tip_m.y(), 0.0};
    case Spot::knee_front:
        return {kKneeBeforeJoint * body.height_m, 0.0, 0.0};
    }
    return Vec3::Zero();
}

} // namespace

tl::expected<Vec3, MechanicsError> local_point(const Body& body, const BodyPoint& point) {
    if (index_of(point.segment) >= kSegmentCount)
        return tl::unexpected(
            MechanicsError{Fault::unknown_name, "segment", "a segment of the body"});
    if (!has_spot(point.segment, point.spot))
        return tl::unexpected(
            MechanicsError{Fault::inconsistent, "segment", std::string(owner_of(point.spot))});
    if (point.spot == Spot::along)
        if (auto fault = outside(point.along, -1.0, 2.0, "along",
                                 "a fraction of the segment's length from -1 to 2"))
            return tl::unexpected(*std::move(fault));
    for (const double part : point.offset_m)
        if (auto fault =
                outside(part, -kMostOffset_m, kMostOffset_m, "offset", "an offset of at most 3 m"))
            return tl::unexpected(*std::move(fault));
    return Vec3(spot_of(body, point) + point.offset_m);
}

std::optional<Spot> spot_named(std::string_view name) {
    for (std::size_t i = 0; i < kSpotNames.size(); ++i)
        if (kSpotNames[i] == name)
            return static_cast<Spot>(i);
    return std::nullopt;
}

std::string_view spot_name(Spot spot) {
    return kSpotNames[static_cast<std::size_t>(spot)];
}

} // namespace steelyard::mechanics
