#pragma once
// How each reading of a lever was computed, with this lever's own numbers.
//
// Numbers in the formulas are shown with four figures, but every result is computed from the full
// ones. Lengths, forces and torques keep one unit throughout (m, N, N·m or ft, lbf, ft·lbf), so
// that the formulas can be followed with a pocket calculator.
//
// Symbols: F force, d moment arm, r distance from the axis to the point where a force acts,
// θ angle between r and the force, τ torque (counter-clockwise positive), R axis reaction;
// ₑ effort, ₗ load, ₁ ₂ … the single loads, ₒ the lever's own weight.

#include "mechanics/lever/lever_solve.h"
#include "words/computed_step.h"
#include "words/lever/lever_words.h"

#include <vector>

namespace steelyard::words {

/// The computation of a reading, first step first. The last step's value is the reading itself. A
/// reading that does not exist (an advantage without an effort) gives one step that says why.
/// @param result  solve_lever's result for the same lever
std::vector<ComputedStep> lever_steps(LeverReading reading, const mechanics::Lever& lever,
                                      const mechanics::LeverResult& result,
                                      setup::UnitSystem units);

/// The moment arm of one load, its force and its torque. The index is into lever.loads.
std::vector<ComputedStep> load_steps(std::size_t load_index, const mechanics::Lever& lever,
                                     const mechanics::LeverResult& result, setup::UnitSystem units);

} // namespace steelyard::words
