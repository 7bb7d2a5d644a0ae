#pragma once
// Two levers side by side: the sizes to compare, and in words what differs.

#include "mechanics/lever/lever_solve.h"
#include "setup/units/units.h"

#include <string>
#include <vector>

namespace steelyard::words {

/// One quantity of two levers, both >= 0, in SI.
struct ComparedSize {
    std::string name; ///< "effort arm"
    setup::Dimension dimension = setup::Dimension::number;
    double a = 0.0;
    double b = 0.0;
};

/// Effort, effort arm, load torque; load arm and ideal advantage where both levers have one. An
/// effort that cannot balance counts as none.
std::vector<ComparedSize> compare_levers(const mechanics::LeverResult& a,
                                         const mechanics::LeverResult& b);

/// What B changes of A, a phrase for each number: "place of the axis 0.50 m instead of 0.40 m".
/// Empty when the two do not have loads of the same names, or when all numbers are alike.
std::vector<std::string> changed_in_b(const mechanics::Lever& a, const mechanics::Lever& b,
                                      setup::UnitSystem units);

} // namespace steelyard::words
