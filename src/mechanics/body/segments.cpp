#include "mechanics/body/segments.h"

#include "mechanics/body/tree.h"
#include "mechanics/constants.h"

namespace steelyard::mechanics {
namespace {

constexpr SegmentInfo segment_row(Segment segment, std::string_view name, std::string_view label,
                                  Segment mirror) {
    const std::size_t i = index_of(segment);
    return {segment,
            name,
            label,
            static_cast<Segment>(tree::kParent[i]),
            mirror,
            tree::kFirstHinge[i],
            tree::kHingesOf[i]};
}

constexpr HingeInfo hinge_row(Hinge hinge, std::string_view name, std::string_view label,
                              std::string_view positive, std::string_view negative, Joint joint,
                              double least_deg, double most_deg, Hinge mirror) {
    const tree::Turn turn = tree::kTurn[index_of(hinge)];
    return {hinge,
            name,
            label,
            positive,
            negative,
            joint,
            turn.axis,
            turn.sign,
            least_deg * kPi / 180.0,
            most_deg * kPi / 180.0,
            mirror};
}

using S = Segment;
constexpr std::array<SegmentInfo, kSegmentCount> kSegments{{
    segment_row(S::pelvis, "pelvis", "pelvis", S::pelvis),
    segment_row(S::trunk, "trunk", "trunk", S::trunk),
    segment_row(S::head, "head", "head", S::head),
    segment_row(S::right_girdle, "right_girdle", "right shoulder girdle", S::left_girdle),
    segment_row(S::right_upper_arm, "right_upper_arm", "right upper arm", S::left_upper_arm),
    segment_row(S::right_forearm, "right_forearm", "right forearm", S::left_forearm),
    segment_row(S::right_hand, "right_hand", "right hand", S::left_hand),
    segment_row(S::left_girdle, "left_girdle", "left shoulder girdle", S::right_girdle),
    segment_row(S::left_upper_arm, "left_upper_arm", "left upper arm", S::right_upper_arm),
    segment_row(S::left_forearm, "left_forearm", "left forearm", S::right_forearm),
    segment_row(S::left_hand, "left_hand", "left hand", S::right_hand),
    segment_row(S::right_thigh, "right_thigh", "right thigh", S::left_thigh),
    segment_row(S::right_shank, "right_shank", "right lower leg", S::left_shank),
    segment_row(S::right_foot, "right_foot", "right foot", S::left_foot),
    segment_row(S::right_toes, "right_toes", "right toes", S::left_toes),
    segment_row(S::left_thigh, "left_thigh", "left thigh", S::right_thigh),
    segment_row(S::left_shank, "left_shank", "left lower leg", S::right_shank),
    segment_row(S::left_foot, "left_foot", "left foot", S::right_foot),
    segment_row(S::left_toes, "left_toes", "left toes", S::right_toes),
}};

using J = Joint;
constexpr std::array<JointInfo, kJointCount> kJoints{{
    {J::lumbar, "lumbar", "lumbar", S::trunk, J::lumbar},
    {J::neck, "neck", "neck", S::head, J::neck},
    {J::right_girdle, "right_girdle", "right shoulder girdle", S::right_girdle, J::left_girdle},
    {J::right_shoulder, "right_shoulder", "right shoulder", S::right_upper_arm, J::left_shoulder},
    {J::right_elbow, "right_elbow", "right elbow", S::right_forearm, J::left_elbow},
    {J::right_wrist, "right_wrist", "right wrist", S::right_hand, J::left_wrist},
    {J::left_girdle, "left_girdle", "left shoulder girdle", S::left_girdle, J::right_girdle},
    {J::left_shoulder, "left_shoulder", "left shoulder", S::left_upper_arm, J::right_shoulder},
    {J::left_elbow, "left_elbow", "left elbow", S::left_forearm, J::right_elbow},
    {J::left_wrist, "left_wrist", "left wrist", S::left_hand, J::right_wrist},
    {J::right_hip, "right_hip", "right hip", S::right_thigh, J::left_hip},
    {J::right_knee, "right_knee", "right knee", S::right_shank, J::left_knee},
    {J::right_ankle, "right_ankle", "right ankle", S::right_foot, J::left_ankle},
    {J::right_ball_of_foot, "right_ball_of_foot", "right ball of foot", S::right_toes,
     J::left_ball_of_foot},
    {J::left_hip, "left_hip", "left hip", S::left_thigh, J::right_hip},
    {J::left_knee, "left_knee", "left knee", S::left_shank, J::right_knee},
    {J::left_ankle, "left_ankle", "left ankle", S::left_foot, J::right_ankle},
    {J::left_ball_of_foot, "left_ball_of_foot", "left ball of foot", S::left_toes,
     J::right_ball_of_foot},
}};

using H = Hinge;
constexpr std::array<HingeInfo, kHingeCount> kHinges{{
    hinge_row(H::lumbar_flexion, "lumbar_flexion", "lumbar flexion", "flexion", "extension",
              J::lumbar, -30, 80, H::lumbar_flexion),
    hinge_row(H::lumbar_side_bend, "lumbar_side_bend", "lumbar side bend", "side bend right",
              "side bend left", J::lumbar, -35, 35, H::lumbar_side_bend),
    hinge_row(H::lumbar_rotation, "lumbar_rotation", "lumbar rotation", "rotation right",
              "rotation left", J::lumbar, -45, 45, H::lumbar_rotation),
    hinge_row(H::neck_flexion, "neck_flexion", "neck flexion", "flexion", "extension", J::neck, -60,
              60, H::neck_flexion),
    hinge_row(H::neck_side_bend, "neck_side_bend", "neck side bend", "side bend right",
              "side bend left", J::neck, -45, 45, H::neck_side_bend),
    hinge_row(H::neck_rotation, "neck_rotation", "neck rotation", "rotation right", "rotation left",
              J::neck, -80, 80, H::neck_rotation),
    hinge_row(H::right_girdle_protraction, "right_girdle_protraction",
              "right shoulder girdle protraction", "protraction", "retraction", J::right_girdle,
              -25, 30, H::left_girdle_protraction),
    hinge_row(H::right_girdle_elevation, "right_girdle_elevation",
              "right shoulder girdle elevation", "elevation", "depression", J::right_girdle, -10,
              45, H::left_girdle_elevation),
    hinge_row(H::right_girdle_rotation, "right_girdle_rotation", "right shoulder girdle rotation",
              "backward rotation", "forward rotation", J::right_girdle, -10, 50,
              H::left_girdle_rotation),
    hinge_row(H::right_shoulder_flexion, "right_shoulder_flexion", "right shoulder flexion",
              "flexion", "extension", J::right_shoulder, -60, 180, H::left_shoulder_flexion),
    hinge_row(H::right_shoulder_abduction, "right_shoulder_abduction", "right shoulder abduction",
              "abduction", "adduction", J::right_shoulder, -50, 180, H::left_shoulder_abduction),
    hinge_row(H::right_shoulder_rotation, "right_shoulder_rotation", "right shoulder rotation",
              "internal rotation", "external rotation", J::right_shoulder, -100, 100,
              H::left_shoulder_rotation),
    hinge_row(H::right_elbow_flexion, "right_elbow_flexion", "right elbow flexion", "flexion",
              "extension", J::right_elbow, -10, 150, H::left_elbow_flexion),
    hinge_row(H::right_forearm_rotation, "right_forearm_rotation", "right forearm rotation",
              "pronation", "supination", J::right_elbow, -10, 170, H::left_forearm_rotation),
    hinge_row(H::right_wrist_flexion, "right_wrist_flexion", "right wrist flexion", "flexion",
              "extension", J::right_wrist, -90, 80, H::left_wrist_flexion),
    hinge_row(H::right_wrist_deviation, "right_wrist_deviation", "right wrist deviation",
              "radial deviation", "ulnar deviation", J::right_wrist, -35, 25,
              H::left_wrist_deviation),
    hinge_row(H::left_girdle_protraction, "left_girdle_protraction",
              "left shoulder girdle protraction", "protraction", "retraction", J::left_girdle, -25,
              30, H::right_girdle_protraction),
    hinge_row(H::left_girdle_elevation, "left_girdle_elevation", "left shoulder girdle elevation",
              "elevation", "depression", J::left_girdle, -10, 45, H::right_girdle_elevation),
    hinge_row(H::left_girdle_rotation, "left_girdle_rotation", "left shoulder girdle rotation",
              "backward rotation", "forward rotation", J::left_girdle, -10, 50,
              H::right_girdle_rotation),
    hinge_row(H::left_shoulder_flexion, "left_shoulder_flexion", "left shoulder flexion", "flexion",
              "extension", J::left_shoulder, -60, 180, H::right_shoulder_flexion),
    hinge_row(H::left_shoulder_abduction, "left_shoulder_abduction", "left shoulder abduction",
              "abduction", "adduction", J::left_shoulder, -50, 180, H::right_shoulder_abduction),
    hinge_row(H::left_shoulder_rotation, "left_shoulder_rotation", "left shoulder rotation",
              "internal rotation", "external rotation", J::left_shoulder, -100, 100,
              H::right_shoulder_rotation),
    hinge_row(H::left_elbow_flexion, "left_elbow_flexion", "left elbow flexion", "flexion",
              "extension", J::left_elbow, -10, 150, H::right_elbow_flexion),
    hinge_row(H::left_forearm_rotation, "left_forearm_rotation", "left forearm rotation",
              "pronation", "supination", J::left_elbow, -10, 170, H::right_forearm_rotation),
    hinge_row(H::left_wrist_flexion, "left_wrist_flexion", "left wrist flexion", "flexion",
              "extension", J::left_wrist, -90, 80, H::right_wrist_flexion),
    hinge_row(H::left_wrist_deviation, "left_wrist_deviation", "left wrist deviation",
              "radial deviation", "ulnar deviation", J::left_wrist, -35, 25,
              H::right_wrist_deviation),
    hinge_row(H::right_hip_flexion, "right_hip_flexion", "right hip flexion", "flexion",
              "extension", J::right_hip, -30, 130, H::left_hip_flexion),
    hinge_row(H::right_hip_abduction, "right_hip_abduction", "right hip abduction", "abduction",
              "adduction", J::right_hip, -35, 60, H::left_hip_abduction),
    hinge_row(H::right_hip_rotation, "right_hip_rotation", "right hip rotation",
              "internal rotation", "external rotation", J::right_hip, -60, 45,
              H::left_hip_rotation),
    hinge_row(H::right_knee_flexion, "right_knee_flexion", "right knee flexion", "flexion",
              "extension", J::right_knee, -10, 150, H::left_knee_flexion),
    hinge_row(H::right_ankle_flexion, "right_ankle_flexion", "right ankle flexion", "dorsiflexion",
              "plantarflexion", J::right_ankle, -55, 45, H::left_ankle_flexion),
    hinge_row(H::right_ankle_inversion, "right_ankle_inversion", "right ankle inversion",
              "inversion", "eversion", J::right_ankle, -25, 40, H::left_ankle_inversion),
    hinge_row(H::right_toe_extension, "right_toe_extension", "right toe extension", "extension",
              "flexion", J::right_ball_of_foot, -45, 90, H::left_toe_extension),
    hinge_row(H::left_hip_flexion, "left_hip_flexion", "left hip flexion", "flexion", "extension",
              J::left_hip, -30, 130, H::right_hip_flexion),
    hinge_row(H::left_hip_abduction, "left_hip_abduction", "left hip abduction", "abduction",
              "adduction", J::left_hip, -35, 60, H::right_hip_abduction),
    hinge_row(H::left_hip_rotation, "left_hip_rotation", "left hip rotation", "internal rotation",
              "external rotation", J::left_hip, -60, 45, H::right_hip_rotation),
    hinge_row(H::left_knee_flexion, "left_knee_flexion", "left knee flexion", "flexion",
              "extension", J::left_knee, -10, 150, H::right_knee_flexion),
    hinge_row(H::left_ankle_flexion, "left_ankle_flexion", "left ankle flexion", "dorsiflexion",
              "plantarflexion", J::left_ankle, -55, 45, H::right_ankle_flexion),
    hinge_row(H::left_ankle_inversion, "left_ankle_inversion", "left ankle inversion", "inversion",
              "eversion", J::left_ankle, -25, 40, H::right_ankle_inversion),
    hinge_row(H::left_toe_extension, "left_toe_extension", "left toe extension", "extension",
              "flexion", J::left_ball_of_foot, -45, 90, H::right_toe_extension),
}};

template <typename Row, std::size_t n>
const Row* row_named(const std::array<Row, n>& rows, std::string_view name) {
    for (const Row& row : rows)
        if (row.name == name)
            return &row;
    return nullptr;
}

} // namespace

const SegmentInfo& segment_info(Segment segment) {
    return kSegments[index_of(segment)];
}
const JointInfo& joint_info(Joint joint) {
    return kJoints[index_of(joint)];
}
const HingeInfo& hinge_info(Hinge hinge) {
    return kHinges[index_of(hinge)];
}

const std::array<SegmentInfo, kSegmentCount>& all_segments() {
    return kSegments;
}
const std::array<JointInfo, kJointCount>& all_joints() {
    return kJoints;
}
const std::array<HingeInfo, kHingeCount>& all_hinges() {
    return kHinges;
}

std::optional<Segment> segment_named(std::string_view name) {
    const SegmentInfo* row = row_named(kSegments, name);
    return row ? std::optional(row->segment) : std::nullopt;
}

std::optional<Joint> joint_named(std::string_view name) {
    const JointInfo* row = row_named(kJoints, name);
    return row ? std::optional(row->joint) : std::nullopt;
}

std::optional<Hinge> hinge_named(std::string_view name) {
    const HingeInfo* row = row_named(kHinges, name);
    return row ? std::optional(row->hinge) : std::nullopt;
}

std::optional<Joint> joint_of(Segment segment) {
    if (segment == Segment::pelvis)
        return std::nullopt;
    return static_cast<Joint>(index_of(segment) - 1);
}

bool is_at_or_beyond(Segment distal, Segment proximal) {
    std::size_t i = index_of(distal);
    const std::size_t wanted = index_of(proximal);
    while (i > wanted)
        i = tree::kParent[i];
    return i == wanted;
}

} // namespace steelyard::mechanics
