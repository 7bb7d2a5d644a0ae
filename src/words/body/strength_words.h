#pragma once
// A torque beside what groups of volunteers could hold.

#include "mechanics/muscle/movers.h"
#include "setup/body/body_setup.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::words {

/// A torque as a share of one group's measured strength.
struct StrengthBeside {
    mechanics::MeasuredStrength measured;
    mechanics::StrengthReading strength;
    mechanics::StrengthShare share;
};

/// What was measured of people of the person's sex, for this joint, direction and angle.
/// @param muscles  of the hinge, by whose actions the data is found
/// @return empty where the evidence is not there: another joint, another angle, or nothing asked
std::optional<StrengthBeside> strength_beside(const setup::Person& person,
                                              const std::vector<mechanics::Muscle>& muscles,
                                              const mechanics::Pose& pose, mechanics::Hinge hinge,
                                              double muscle_Nm);

/// "about 35 % (30 to 45 %) of what 7 men of 18 to 25 years could hold at this angle": rounded to
/// 5 %, and above all of it "more than the average of 7 men ...".
std::string share_words(const StrengthBeside& beside);

/// What must stand beside every share.
inline constexpr const char* kStrengthCaution =
    "A share compares a calculated torque with what some groups of volunteers could hold once, "
    "still, as hard as they could. It is not your limit, not a target, not a safety value and not "
    "advice. Two healthy people of the same size can differ by half.";

} // namespace steelyard::words
