#pragma once
// A muscle as a value: what it is called, what it turns, how far from the axis it pulls, how hard
// it could.

#include "mechanics/body/body.h"
#include "mechanics/muscle/joint_action.h"
#include "mechanics/muscle/line_of_pull.h"
#include "mechanics/muscle/moment_arm_curve.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::mechanics {

/// How a cross-section was measured. Imaging in living people gives three to four times the areas
/// of dissection, so each goes only with a specific tension that was worked out from its own kind.
enum class AreaMethod { dissection, imaging };

/// Highest published force for each cross-section [Pa].
/// Dissection: 137 N/cm², the top of the older values from 39 to 137 that a later page lists
/// (second-hand). Imaging: 35 N/cm², the upper end of 30 ± 5 in the quadriceps of 27 men; Narici,
/// Landoni & Minetti 1992, Eur J Appl Physiol 65:438, have 25.0 ± 1.9 beside the areas used here.
double highest_specific_tension_Pa(AreaMethod method);

/// Physiological cross-section: what a muscle's force at equal stress is in proportion to.
struct CrossSection {
    double area_m2 = 0.0; ///< [m²], > 0
    AreaMethod by = AreaMethod::dissection;
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
/// direction in which the force acts on the joint. With neither it is known by name alone: a main
/// mover of which no arm is on file.
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
    /// The actions of its hinge that are on file, with their movers. Empty: it takes part whichever
    /// way it turns the joint, and whoever gives it says that nobody is missing beside it.
    std::vector<JointAction> actions;
    /// Where books differ about the class of its lever, or name it of another free body: a sentence
    /// that stands beside the class. May be empty.
    std::string class_note;

    bool is_known() const { return line || !arms.empty(); }
};

/// Whether its arm is known in a pose: by a line of pull alone everywhere, by sources where one of
/// them holds.
bool arm_is_known(const Muscle& muscle, const PosedSide& posed);

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
    double arm_m = 0.0;       ///< signed about the axis's direction [m]
    Interval arm_range_m;     ///< over the sources; both ends = arm_m for a line alone
    bool arm_clamped = false; ///< the angle lies outside the preferred source's range
    /// Which of the muscle's sources gives the arm; empty for a line alone, and where no source
    /// holds in the pose: its arm is then zero and means nothing.
    std::optional<std::size_t> source;
    std::optional<PlacedLine> line; ///< empty: direction not known
    std::optional<double> area_m2;  ///< physiological cross-section [m²]
    std::optional<double> most_N;   ///< that its cross-section can give [N]
    bool takes_part = true;         ///< false: at rest in the movement that is asked for
};

/// The muscle at a joint angle.
/// @param angle_rad  the joint angle as the muscle's sources count it
/// @param posed      where the sources have to hold; null: all of them count
/// @param line       its line of pull there; empty when it has none
/// @return the pull, or what is wrong with the muscle: neither arms nor a line, arms that cannot be
///         computed with
tl::expected<Pull, MechanicsError> pull_at(const Muscle& muscle, double angle_rad,
                                           const std::optional<LineOfPull>& line,
                                           const JointAxis& axis, const PosedSide* posed = nullptr);

/// A pull given by hand: a moment arm and nothing else.
Pull pull_with_arm(std::string muscle, double arm_m);

/// A pull given by hand: where and in which direction (unit) it acts.
Pull pull_along(std::string muscle, const Vec3& insertion_m, const Vec3& direction,
                const FreeBody& body);

} // namespace steelyard::mechanics
