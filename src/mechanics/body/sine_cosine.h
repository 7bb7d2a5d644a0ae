#pragma once
// Sines and cosines of all joint angles at once.

#include "mechanics/body/segments.h"

namespace steelyard::mechanics {

/// Sines and cosines to within one unit in the last place or so, for angles of at most a few turns.
/// Made of additions and products alone, so that every platform gives the same digits (the C
/// library's differ), and without branches, so that the compiler works on several at once.
/// Source: kernels of FDLIBM 5.3 (Sun Microsystems 1993, k_sin.c and k_cos.c; coefficients from
/// memory, held by the test against the C library).
void sines_and_cosines(const PerHinge& angle_rad, PerHinge& sine, PerHinge& cosine);

} // namespace steelyard::mechanics
