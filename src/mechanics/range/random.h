#pragma once
// Random numbers that are the same on every platform for the same seed.

#include <random>

namespace steelyard::mechanics {

/// Output fixed by the standard: ISO/IEC 14882 [rand.predef], the 10000th number of a default
/// engine is 9981545732273789042.
using Random = std::mt19937_64;

/// Mean 0, standard deviation 1, within ±6: the sum of twelve uniform numbers less 6, close to
/// normal by the central limit theorem (Irwin–Hall). Whole-number arithmetic up to the last step,
/// so not even the platform's logarithm can change it.
double nearly_normal(Random& random);

} // namespace steelyard::mechanics
