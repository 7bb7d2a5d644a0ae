#pragma once
// The parts of the body, its joints and hinges, by their anatomical names.
//
// World frame: x forward, y up, z to the right of a person who faces +x; right-handed, as the
// International Society of Biomechanics recommends (Wu & Cavanagh 1995, J Biomech 28:1257; from
// memory). Seen from the person's right side, x points right and y up with counter-clockwise turns
// positive about z: that view is the plane of the two-dimensional bench.
//
// Zero position: standing, arms hanging, palms forward (anatomical position). In it every segment's
// frame has the axes of the world; its origin lies in its proximal joint, for the pelvis midway
// between the hips.
//
// The body is a tree that starts at the pelvis. *Distal* always means away from the pelvis, also
// when a foot or a hand carries the body. The joint's hinges turn the distal segment, in the order
// of their numbers: flexion first, then abduction or side bend, then rotation about the long axis;
// in the shoulder girdle protraction, then elevation, then rotation about the collar bone.
// So at 90 degrees of shoulder flexion the abduction axis stands vertical and abduction becomes
// what the trade calls horizontal abduction.

#include <Eigen/Core>

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

namespace steelyard::mechanics {

using Vec3 = Eigen::Vector3d;
using Mat3 = Eigen::Matrix3d;

enum class Segment : unsigned char {
    pelvis,
    trunk,        ///< all between the lumbar joint and the neck, without the arms
    head,         ///< head and neck
    right_girdle, ///< collar bone and shoulder blade, taken as one
    right_upper_arm,
    right_forearm,
    right_hand,
    left_girdle,
    left_upper_arm,
    left_forearm,
    left_hand,
    right_thigh,
    right_shank,
    right_foot, ///< heel to ball of the foot
    right_toes, ///< in front of the ball of the foot
    left_thigh,
    left_shank,
    left_foot,
    left_toes,
};
inline constexpr std::size_t kSegmentCount = 19;

/// Each joint carries one segment: joint number j the segment number j + 1.
enum class Joint : unsigned char {
    lumbar,       ///< lumbosacral, L5/S1
    neck,         ///< at the seventh cervical vertebra
    right_girdle, ///< sternoclavicular: the collar bone at the breastbone
    right_shoulder,
    right_elbow,
    right_wrist,
    left_girdle,
    left_shoulder,
    left_elbow,
    left_wrist,
    right_hip,
    right_knee,
    right_ankle,
    right_ball_of_foot,
    left_hip,
    left_knee,
    left_ankle,
    left_ball_of_foot,
};
inline constexpr std::size_t kJointCount = 18;

/// One turning axis of a joint. Signs, ranges and their sources: hinge_info and README.md.
enum class Hinge : unsigned char {
    lumbar_flexion,
    lumbar_side_bend,
    lumbar_rotation,
    neck_flexion,
    neck_side_bend,
    neck_rotation,
    right_girdle_protraction,
    right_girdle_elevation,
    right_girdle_rotation,
    right_shoulder_flexion,
    right_shoulder_abduction,
    right_shoulder_rotation,
    right_elbow_flexion,
    right_forearm_rotation,
    right_wrist_flexion,
    right_wrist_deviation,
    left_girdle_protraction,
    left_girdle_elevation,
    left_girdle_rotation,
    left_shoulder_flexion,
    left_shoulder_abduction,
    left_shoulder_rotation,
    left_elbow_flexion,
    left_forearm_rotation,
    left_wrist_flexion,
    left_wrist_deviation,
    right_hip_flexion,
    right_hip_abduction,
    right_hip_rotation,
    right_knee_flexion,
    right_ankle_flexion,
    right_ankle_inversion,
    right_toe_extension,
    left_hip_flexion,
    left_hip_abduction,
    left_hip_rotation,
    left_knee_flexion,
    left_ankle_flexion,
    left_ankle_inversion,
    left_toe_extension,
};
inline constexpr std::size_t kHingeCount = 40;

constexpr std::size_t index_of(Segment segment) {
    return static_cast<std::size_t>(segment);
}
constexpr std::size_t index_of(Joint joint) {
    return static_cast<std::size_t>(joint);
}
constexpr std::size_t index_of(Hinge hinge) {
    return static_cast<std::size_t>(hinge);
}

/// One number for each hinge, in the order of the enumeration: angles [rad], torques [N·m], ...
using PerHinge = std::array<double, kHingeCount>;

struct SegmentInfo {
    Segment segment;
    std::string_view name;     ///< as in the enumeration; the spelling in files
    std::string_view label;    ///< for people: "right upper arm"
    Segment parent;            ///< the neighbour towards the pelvis; the pelvis names itself
    Segment mirror;            ///< the same part of the other side; itself in the middle
    unsigned char first_hinge; ///< number of the first hinge of its joint
    unsigned char hinge_count; ///< 0 for the pelvis, otherwise 1 to 3
};

struct JointInfo {
    Joint joint;
    std::string_view name;
    std::string_view label;
    Segment segment; ///< the segment it carries, on its distal side
    Joint mirror;
};

struct HingeInfo {
    Hinge hinge;
    std::string_view name;     ///< "right_elbow_flexion"
    std::string_view label;    ///< "right elbow flexion"
    std::string_view positive; ///< what a positive angle or torque is called: "flexion"
    std::string_view negative; ///< "extension"
    Joint joint;
    unsigned char axis; ///< 0, 1, 2: x, y or z of the frame left by the joint's earlier hinges
    signed char sign;   ///< +1 or -1: the positive turn is about +axis or about -axis
    double least_rad;   ///< end of the range of motion, healthy adult [rad]
    double most_rad;
    Hinge mirror;
};

const SegmentInfo& segment_info(Segment segment);
const JointInfo& joint_info(Joint joint);
/// Ranges: common practice of joint measurement (close to the American Academy of Orthopaedic
/// Surgeons' figures, from memory), widened where exercises load the joint past the free range
/// (ankle in a deep squat) or where one hinge here stands for many (lumbar for the whole spine).
const HingeInfo& hinge_info(Hinge hinge);

const std::array<SegmentInfo, kSegmentCount>& all_segments();
const std::array<JointInfo, kJointCount>& all_joints();
const std::array<HingeInfo, kHingeCount>& all_hinges();

/// By the name in files ("right_forearm"); empty when there is none of that name.
std::optional<Segment> segment_named(std::string_view name);
std::optional<Joint> joint_named(std::string_view name);
std::optional<Hinge> hinge_named(std::string_view name);

/// The joint at the proximal end of a segment. The pelvis has none.
std::optional<Joint> joint_of(Segment segment);

/// True when `distal` is `proximal` itself or lies beyond it, seen from the pelvis.
bool is_at_or_beyond(Segment distal, Segment proximal);

} // namespace steelyard::mechanics
