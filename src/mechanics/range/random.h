#pragma once
// Random numbers that are the same on every platform for the same seed.

#include <cstdint>

namespace steelyard::mechanics {

/// PCG-XSH-RR 64/32. Source: O'Neill 2014, "PCG: a family of simple fast space-efficient
/// statistically good algorithms for random number generation", HMC-CS-2014-0905.
class Random {
public:
    explicit Random(std::uint64_t seed);

    /// Evenly from 0 to 2³² - 1.
    std::uint32_t next();
    /// Mean 0, standard deviation 1, within ±6: the sum of twelve uniform numbers less 6, close to
    /// normal by the central limit theorem (Irwin–Hall). Whole-number arithmetic up to the last
    /// step, so not even the platform's logarithm can change it.
    double nearly_normal();

private:
    std::uint64_t state_ = 0;
};

} // namespace steelyard::mechanics
