#pragma once
// Two exercises side by side: which joints to look at in both, how hard each is asked, and in words
// what differs. Torques are the peaks of a repetition, as sizes, the same that what-if answers
// with.

#include "setup/body/body_setup.h"

#include <tl/expected.hpp>

#include <string>
#include <vector>

namespace steelyard::words {

/// The hinges that could be called the axis in one of two exercises: those of the first in their
/// order, then what the second adds.
std::vector<mechanics::Hinge> axes_of_both(const setup::BodySetup& a, const setup::BodySetup& b);

/// The hardest moment of a hinge in both exercises.
struct ComparedPeak {
    mechanics::PeakTorque a;
    mechanics::PeakTorque b;
};

/// Peaks of every hinge of axes_of_both, in its order.
tl::expected<std::vector<ComparedPeak>, mechanics::MechanicsError>
compare_peaks(const setup::BodySetup& a, const setup::BodySetup& b);

/// True when two sizes differ by no more than the solvers' accuracy.
bool are_equal(double a, double b);

/// How much more or less B is than A: "24.0 N·m more in B (+15 %)", "equal".
std::string difference_text(double a, double b, setup::Dimension dimension,
                            setup::UnitSystem units);

/// What B changes of A, a phrase for each number: "Barbell 9.90 kg lighter: 30.1 kg instead of
/// 40.0 kg".
/// Empty when the two have not the same numbers to change, or when all are alike.
std::vector<std::string> changed_in_b(const setup::BodySetup& a, const setup::BodySetup& b,
                                      setup::UnitSystem units);

} // namespace steelyard::words
