#pragma once
// From a family's plan and an instance's quantities to a lever, and from its solution back to
// quantities.

#include "mechanics/lever/lever_solve.h"
#include "problems/family.h"

namespace steelyard::problems {

/// Writes the lever of a plan into `lever`, whose storage is reused. Parts are not named.
void build_lever(const LeverPlan& plan, const double* quantities, double gravity_m_s2,
                 mechanics::Lever& lever);

/// What a solved lever says about one quantity [SI]. NaN when it has none (no class, no effort).
double value_of(const Provided& provided, const mechanics::LeverResult& solved);

/// The line on the drawing that shows a length of the solution; empty for what is no length.
std::optional<DrawnQuantity> drawn_length(const Term& term, const mechanics::LeverResult& solved);

} // namespace steelyard::problems
