#pragma once
// Random draws that come out the same on every platform: a standardised engine, our own
// distributions (those of the standard library differ between vendors).

#include <cstddef>
#include <cstdint>
#include <random>

namespace steelyard::problems {

/// Output fixed by the standard: ISO/IEC 14882 [rand.predef], the 10000th number of a default
/// engine is 9981545732273789042.
using Random = std::mt19937_64;

/// A whole number from 0 to below - 1, each equally likely. below must be positive.
std::uint64_t draw_below(Random& random, std::uint64_t below);

/// The same for a place among so many, 0 to count - 1. count must be positive.
inline std::size_t draw_place(Random& random, std::size_t count) {
    return static_cast<std::size_t>(draw_below(random, count));
}

/// Mixes two numbers into one that looks unrelated to either: the seed of question i of paper s.
/// Source: finaliser of SplitMix64, Steele, Lea & Flood 2014, OOPSLA (constants from memory; the
/// golden papers hold them).
std::uint64_t mix(std::uint64_t a, std::uint64_t b);

/// A short number for a name: FNV-1a, 64 bit (offset and prime from its published definition).
std::uint64_t hash_of(const char* text, std::size_t length);

} // namespace steelyard::problems
