#include "problems/draw/random.h"

#include <cassert>
#include <limits>

namespace steelyard::problems {

std::uint64_t draw_below(Random& random, std::uint64_t below) {
    assert(below > 0);
    // The tail that would make low numbers likelier is drawn again.
    const std::uint64_t whole = std::numeric_limits<std::uint64_t>::max();
    const std::uint64_t limit = whole - whole % below;
    std::uint64_t drawn = random();
    while (drawn >= limit)
        drawn = random();
    return drawn % below;
}

std::uint64_t mix(std::uint64_t a, std::uint64_t b) {
    std::uint64_t z = a + 0x9E3779B97F4A7C15ULL * (b + 1);
    z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBULL;
    return z ^ (z >> 31U);
}

std::uint64_t hash_of(const char* text, std::size_t length) {
    std::uint64_t hash = 0xCBF29CE484222325ULL;
    for (std::size_t i = 0; i < length; ++i) {
        hash ^= static_cast<unsigned char>(text[i]);
        hash *= 0x00000100000001B3ULL;
    }
    return hash;
}

} // namespace steelyard::problems
