#pragma once
// A muscle as a value: what it is called, what it turns, how far from the axis it pulls.

#include "mechanics/body/body.h"
#include "mechanics/muscle/line_of_pull.h"
#include "mechanics/muscle/moment_arm_curve.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::mechanics {

/// Physiological cross-section: what a muscle's force at equal stress is in proportion to.
struct CrossSection {
    double area_m2 = 0.0; ///< [m²], > 0
    Citation citation;
};

/// Convention "attachment points" on the right side of any body.
struct AttachmentsOnBody {
    BodyPoint origin;
    BodyPoint insertion;
    std::optional<WrapCylinder> wrap;
};

/// Convention "fixed angle to the bone" on the right side of any body.
struct FixedAngleOnBody {
    BodyPoint insertion;
    double angle_to_bone_rad = 0.5 * kPi; ///< as in FixedAngleLine
    TurnSense turns = TurnSense::positive;
};

using LineOnBody = std::variant<AttachmentsOnBody, FixedAngleOnBody>;

/// A muscle, or several that share a tendon and are taken as one, stated for one hinge: a muscle
/// that crosses two joints is stated for each of them and solved there by itself.
/// It has arms, a line of pull, or both. With both, the arms give the torque and the line only the
/// direction in which the force acts on the joint.
struct Muscle {
    std::string name;  ///< "biceps"
    std::string group; ///< "elbow flexors"
    /// The hinge it turns, of the right side or the middle; the left side is its mirror image.
    /// Empty for a joint that the body does not have (the jaw).
    std::optional<Hinge> hinge;
    std::vector<ArmSource> arms; ///< preferred source first; may be empty when there is a line
    std::optional<LineOnBody> line;
    Citation line_citation; ///< where the attachments or the angle come from
    std::optional<CrossSection> cross_section;
};

/// How the line of a pull was found.
enum class PullConvention {
    arm_only,          ///< only the moment arm is known, not the direction
    attachment_points, ///< from insertion to origin
    fixed_angle,       ///< at a stated angle to the bone
};

/// A muscle at one place of its joint, ready to be solved for.
struct Pull {
    std::string muscle;
    PullConvention convention = PullConvention::arm_only;
    double arm_m = 0.0;             ///< signed about the axis's direction [m]
    Interval arm_range_m;           ///< over the sources; both ends = arm_m for a line alone
    bool arm_clamped = false;       ///< the angle lies outside the preferred source's range
    std::optional<PlacedLine> line; ///< empty: direction not known
    std::optional<double> area_m2;  ///< physiological cross-section [m²]
};

/// The muscle at a joint angle.
/// @param angle_rad  the joint angle as the muscle's sources count it
/// @param line       its line of pull there; empty when it has none
/// @return the pull, or what is wrong with the muscle: neither arms nor a line, arms that cannot be
///         computed with
tl::expected<Pull, MechanicsError> pull_at(const Muscle& muscle, double angle_rad,
                                           const std::optional<LineOfPull>& line,
                                           const JointAxis& axis);

/// A pull given by hand: a moment arm and nothing else.
Pull pull_with_arm(std::string muscle, double arm_m);

/// A pull given by hand: where and in which direction (unit) it acts.
Pull pull_along(std::string muscle, const Vec3& insertion_m, const Vec3& direction,
                const FreeBody& body);

} // namespace steelyard::mechanics
