#include "mechanics/range/random.h"

#include <cstdint>

namespace steelyard::mechanics {

double nearly_normal(Random& random) {
    // Each draw holds two uniform numbers of 32 bits.
    std::uint64_t sum = 0;
    for (int i = 0; i < 6; ++i) {
        const std::uint64_t draw = random();
        sum += (draw >> 32) + (draw & 0xffffffffu);
    }
    return static_cast<double>(sum) * 0x1p-32 - 6.0;
}

} // namespace steelyard::mechanics
