#include "setup/lever/limb_shape.h"

#include "mechanics/lever/lever_geometry.h"

#include <fmt/format.h>

#include <cmath>

namespace steelyard::setup {
namespace {

/// How far off a joint an axis is still at it, as a part of the lever's length.
constexpr double kAtJoint = 0.05;

} // namespace

const std::vector<std::string_view>& limb_shape_names() {
    static const std::vector<std::string_view> kNames{
        "forearm", "arm", "thigh", "lower_leg", "foot", "jaw", "leg", "trunk", "lower_leg_bent"};
    return kNames;
}

const std::vector<LimbJoint>& joints_of(LimbShape limb) {
    // Ball and ankle along the foot, low back along the trunk: common practice, no source.
    static const std::vector<std::vector<LimbJoint>> kJoints{
        {{"elbow", 0.0}},
        {{"shoulder", 0.0}},
        {{"hip", 0.0}, {"knee", 1.0}},
        {{"knee", 0.0}, {"ankle", 1.0}},
        {{"ball of the foot", 0.27}, {"ankle", 0.76}},
        {{"joint of the jaw", 0.0}},
        {{"hip", 0.0}},
        {{"hip", 0.0}, {"low back", 0.18}},
        {{"knee", 0.0}, {"ankle", 1.0}}};
    return kJoints[static_cast<std::size_t>(limb)];
}

std::optional<std::string_view> joint_at_axis(LimbShape limb, const mechanics::Lever& lever) {
    const double along = lever.axis_at_m / mechanics::path_length(lever.path_m);
    for (const LimbJoint& joint : joints_of(limb))
        if (std::abs(along - joint.along) <= kAtJoint)
            return joint.name;
    return std::nullopt;
}

std::string axis_off_joint(LimbShape limb, const mechanics::Lever& lever) {
    if (joint_at_axis(limb, lever))
        return {};
    std::string joints;
    for (const LimbJoint& joint : joints_of(limb))
        joints += fmt::format("{}{}", joints.empty() ? "" : " or the ", joint.name);
    return fmt::format("Only to think with: nobody has a joint here. This limb turns about the {}.",
                       joints);
}

} // namespace steelyard::setup
