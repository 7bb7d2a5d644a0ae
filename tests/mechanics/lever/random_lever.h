#pragma once
// Levers at random, the same on every machine and in every run.

#include "mechanics/lever/lever.h"

#include <cstdint>

namespace steelyard::mechanics {

/// SplitMix64. Source: Steele, Lea and Flood, "Fast splittable pseudorandom number generators",
/// OOPSLA 2014, figure 17; constants from memory.
class RandomNumbers {
public:
    explicit RandomNumbers(std::uint64_t seed) : state_(seed) {}

    std::uint64_t next() {
        state_ += 0x9E3779B97F4A7C15u;
        std::uint64_t z = state_;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
        return z ^ (z >> 31);
    }
    double between(double low, double high) {
        return low + (high - low) * static_cast<double>(next() >> 11) * 0x1p-53;
    }
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(next() % count); }
    bool one_in(std::size_t count) { return below(count) == 0; }

private:
    std::uint64_t state_;
};

struct LeverKind {
    bool couples = true;
    bool own_weight = true;
    bool friction = false;
};

/// A straight or bent lever of 0.2 m to some metres with one to five loads of up to 100 kg or
/// 1000 N. The effort's arm is at least a tenth of its distance from the axis, so that no result is
/// the small difference of large numbers.
Lever random_lever(RandomNumbers& random, const LeverKind& kind);

} // namespace steelyard::mechanics
