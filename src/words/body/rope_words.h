#pragma once
// A cable column in words: what hangs on its stack and what its rope pulls with are two things.

#include "mechanics/resistance/resistance.h"
#include "setup/units/units.h"

#include <string>

namespace steelyard::words {

/// "2:1 from a 20 kg stack"; empty for what is no cable column.
std::string stack_words(const mechanics::Resistance& resistance, setup::UnitSystem units);

/// "stack 20.0 kg (196 N), rope 2:1: tension 98.1 N"; empty for what is no cable column.
std::string rope_words(const mechanics::Resistance& resistance, double gravity_m_s2,
                       setup::UnitSystem units);

} // namespace steelyard::words
