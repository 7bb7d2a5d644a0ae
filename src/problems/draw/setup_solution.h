#pragma once
// From drawn quantities to a solved setup and back: builds the lever or the body of a family,
// solves it, and fills in or checks what the solution says.

#include "problems/draw/instance.h"

namespace steelyard::problems {

/// A stated number and the solver's may differ by rounding only [-].
inline constexpr double kAgreement = 1.0e-9;

/// Computes quantities from others, in order.
void compute(const std::vector<Let>& lets, double* quantities);

bool all_finite(const std::vector<double>& values);

/// Solves the setup for the quantities known so far and computes the rest.
/// @param solution  overwritten; its storage is reused
Refusal solve(const Family& family, double* quantities, SetupSolution& solution);

/// The setup with some drawn quantities set to other values.
/// @param quantities  all of them, with the changes
Refusal solve_changed(const Family& family, const Changes& sets, const Instance& instance,
                      std::vector<double>& quantities);

} // namespace steelyard::problems
