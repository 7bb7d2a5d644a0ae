#pragma once
// What stands beside a muscle's numbers: where its moment arm comes from, what that rests on, and
// which class of lever it works.

#include "mechanics/muscle/muscle_on_body.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::words {

/// Where a muscle's arm comes from in the pose that was solved.
struct ArmCredit {
    mechanics::Citation citation;
    mechanics::Basis basis = mechanics::Basis::illustrative;
};

/// @return empty for a muscle that is known by name alone, or of which no source holds in the pose
std::optional<ArmCredit> arm_credit(const mechanics::Muscle& muscle, const mechanics::Pull& pull);

/// The least sure of what the pulls rest on; empty where no muscle pulls. Measured is surer than an
/// open model, this than what is illustrative, and this than what is given by hand.
std::optional<mechanics::Basis> least_sure_basis(const std::vector<mechanics::Muscle>& listed,
                                                 const mechanics::HingeMuscles& at);

/// "Moment arms of the muscles: measured.", "Moment arms: biceps and brachialis measured;
/// anconeus illustrative." Empty where no muscle pulls.
std::string basis_sentence(const std::vector<mechanics::Muscle>& listed,
                           const mechanics::HingeMuscles& at);

/// "third class for the thigh", "first class across the spine"; on the ball of the foot both
/// pivots. Empty where the muscle's line is not known.
/// @param i  which of the muscles
std::string class_words(const mechanics::HingeMuscles& at, std::size_t i, mechanics::Hinge hinge);

/// Below it a joint is said to hold nothing, and in no direction [N·m].
inline constexpr double kSmallTorque_Nm = 0.05;

/// What the muscles must give, as anatomy calls it in the pose: "horizontal adduction" where the
/// hinge alone says "adduction".
std::string motion_asked(const std::vector<mechanics::Muscle>& listed, const mechanics::Pose& pose,
                         mechanics::Hinge hinge, double muscle_Nm);

/// "the latissimus dorsi, the teres major and the posterior deltoid".
std::string listing(const std::vector<std::string>& names, std::string_view before_each = "the ");

} // namespace steelyard::words
