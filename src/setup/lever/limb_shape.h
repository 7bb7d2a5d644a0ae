#pragma once
// A lever that is a limb: which one it is drawn as, and where along it a person has joints.

#include "mechanics/lever/lever.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::setup {

/// What a lever is drawn as instead of a beam. Its path runs from the first place named to the
/// last.
enum class LimbShape {
    forearm,        ///< elbow to fist
    arm,            ///< shoulder to fist, straight
    thigh,          ///< hip to knee
    lower_leg,      ///< knee to ankle
    foot,           ///< tip of the toes to heel
    jaw,            ///< joint of the jaw to chin
    leg,            ///< hip to ankle, straight
    trunk,          ///< hip to the line of the shoulders
    lower_leg_bent, ///< knee to ankle, raised behind a hanging thigh
};

/// A limb on a lever: where along it the limb's first and last places are, in parts of the lever's
/// length. It may reach beyond the lever's ends, or run against its path.
struct Limb {
    LimbShape shape;
    double from;
    double to;

    /// All along the lever, unless said otherwise.
    Limb(LimbShape of_shape, double from_part = 0.0, double to_part = 1.0)
        : shape(of_shape), from(from_part), to(to_part) {}
};

/// Names in files, in the order of the enumeration.
const std::vector<std::string_view>& limb_shape_names();

/// A joint of a limb, by its place along the path, 0 at the first end and 1 at the last.
struct LimbJoint {
    std::string_view name;
    double along = 0.0;
};
const std::vector<LimbJoint>& joints_of(LimbShape limb);

/// The joint at which a lever's axis is, within a twentieth of its length; empty where a person has
/// none: the axis then stands there to think with.
std::optional<std::string_view> joint_at_axis(LimbShape limb, const mechanics::Lever& lever);

/// Says that the axis is where the limb has no joint, and where its joints are; empty where it is
/// at one.
std::string axis_off_joint(LimbShape limb, const mechanics::Lever& lever);

} // namespace steelyard::setup
