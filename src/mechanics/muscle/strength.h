#pragma once
// What groups of volunteers could hold with one joint, still and as hard as they could: measured
// torques by joint angle, to set a computed torque beside. A population's mean: no limit of
// anybody.

#include "mechanics/body/segment_table.h"
#include "mechanics/muscle/moment_arm_curve.h"

#include <optional>
#include <string>
#include <variant>

namespace steelyard::mechanics {

/// Torque in proportion to body mass × g × height, over the joint angle:
/// C1 · m · g · H · cos(C2 · (θ − C3)), with θ as the hinge counts it.
/// Source of the form: Anderson, Madigan & Nussbaum 2007, J Biomech 40:3105.
struct StrengthCurve {
    double c1 = 0.0;    ///< [-], > 0
    double c1_sd = 0.0; ///< its standard deviation between people; 0 = not stated
    double c2 = 1.0;
    double c3_rad = 0.0;
};

/// A torque measured at one angle.
struct StrengthAt {
    double torque_Nm = 0.0; ///< mean [N·m], > 0
    double sd_Nm = 0.0;     ///< standard deviation between people; 0 = not stated
};

/// One group's measured torque of one joint and direction, of one limb.
struct MeasuredStrength {
    std::variant<StrengthCurve, StrengthAt> law;
    Interval angle_rad; ///< joint angles for which it may be used
    Sex sex = Sex::male;
    std::string people; ///< who was measured, with their number: "7 men of 18 to 25 years"
    std::string remark; ///< what must be said beside it; may be empty
    Citation citation;
};

/// Mean and spread of a group at an angle.
struct StrengthReading {
    double mean_Nm = 0.0; ///< > 0
    double sd_Nm = 0.0;   ///< 0 = not known
};

/// @return empty outside the angles, and where the fitted curve says that there is nothing
std::optional<StrengthReading> strength_at(const MeasuredStrength& strength, double angle_rad,
                                           double body_mass_kg, double height_m);

/// A torque as a share of what was measured.
struct StrengthShare {
    double mean = 0.0; ///< torque / mean
    /// torque / (mean + sd) to torque / (mean − sd); empty where the spread is not known, or is as
    /// large as the mean
    std::optional<Interval> band;
};
StrengthShare share_of(double torque_Nm, const StrengthReading& strength);

} // namespace steelyard::mechanics
