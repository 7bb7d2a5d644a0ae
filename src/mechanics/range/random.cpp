#include "mechanics/range/random.h"

namespace steelyard::mechanics {

namespace {

constexpr std::uint64_t kMultiplier = 6364136223846793005u;
/// Any odd number gives a stream; this is the generator's default one.
constexpr std::uint64_t kIncrement = 1442695040888963407u;

} // namespace

Random::Random(std::uint64_t seed) {
    next();
    state_ += seed;
    next();
}

std::uint32_t Random::next() {
    const std::uint64_t old = state_;
    state_ = old * kMultiplier + kIncrement;
    const auto mixed = static_cast<std::uint32_t>(((old >> 18u) ^ old) >> 27u);
    const auto turn = static_cast<std::uint32_t>(old >> 59u);
    return (mixed >> turn) | (mixed << ((32u - turn) & 31u));
}

double Random::nearly_normal() {
    std::uint64_t sum = 0;
    for (int i = 0; i < 12; ++i)
        sum += next();
    return static_cast<double>(sum) * 0x1p-32 - 6.0;
}

} // namespace steelyard::mechanics
