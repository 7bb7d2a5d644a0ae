#pragma once
// Which kind of part a segment is, and where its surface lies.

#include "mechanics/body/segments.h"

namespace steelyard::mechanics {

constexpr bool is_hand(Segment segment) {
    return segment == Segment::right_hand || segment == Segment::left_hand;
}
constexpr bool is_foot(Segment segment) {
    return segment == Segment::right_foot || segment == Segment::left_foot;
}
constexpr bool is_forearm(Segment segment) {
    return segment == Segment::right_forearm || segment == Segment::left_forearm;
}
constexpr bool is_toes(Segment segment) {
    return segment == Segment::right_toes || segment == Segment::left_toes;
}
constexpr bool is_girdle(Segment segment) {
    return segment == Segment::right_girdle || segment == Segment::left_girdle;
}
constexpr bool is_shank(Segment segment) {
    return segment == Segment::right_shank || segment == Segment::left_shank;
}

/// Distances from joint centres to the surface of the body, fractions of height [-]. From memory of
/// usual body proportions, no source; they place contacts and a bar across the back.
inline constexpr double kSeatBelowHips = 0.05;    ///< sitting bones below the hip joints
inline constexpr double kBackBehindSpine = 0.055; ///< skin of the back behind the trunk's axis
inline constexpr double kKneeBeforeJoint = 0.030; ///< front of the knee before its axis
inline constexpr double kFootBreadth = 0.055;     ///< Drillis & Contini 1966, foot breadth
inline constexpr double kHandBreadth = 0.05;      ///< across the knuckles
inline constexpr double kSeatBreadth = 0.191;     ///< Drillis & Contini 1966, hip breadth
inline constexpr double kSeatDepth = 0.15;        ///< from the buttocks forward under the thighs

/// Joint of collar bone and breastbone, as fractions of height [-]: 2.5 cm beside the middle and 4
/// cm before the middle of the shoulder in a person of 1.75 m, at the shoulder's height. From
/// memory.
inline constexpr double kSternoclavicularBeside = 0.0143;
inline constexpr double kSternoclavicularBefore = 0.0229;

inline constexpr double kForearmBelowAxis = 0.02; ///< little-finger side of the forearm's axis

/// Half the depth of a hand's hold on a bar [m]: a fist turned about the bar carries a little.
/// Assumption.
inline constexpr double kHalfGrip_m = 0.03;

/// Half the length of a contact at the ball of the foot, and below a knee [m]. Assumptions.
inline constexpr double kHalfBall_m = 0.02;
inline constexpr double kHalfKnee_m = 0.04;

} // namespace steelyard::mechanics
