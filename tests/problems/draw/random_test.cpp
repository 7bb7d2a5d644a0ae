#include "catch.h"
#include "problems/draw/random.h"

#include <array>

using namespace steelyard::problems;

TEST_CASE("the engine is the one that the C++ standard fixes") {
    // ISO/IEC 14882, [rand.predef]: the 10000th number of a default-constructed mt19937_64.
    Random random;
    random.discard(9999);
    CHECK(random() == 9981545732273789042ULL);
}

TEST_CASE("names hash as published") {
    // FNV-1a 64-bit test vectors of the algorithm's authors (from memory): "" and "a".
    CHECK(hash_of("", 0) == 0xCBF29CE484222325ULL);
    CHECK(hash_of("a", 1) == 0xAF63DC4C8601EC8CULL);
}

TEST_CASE("draws below a bound are even") {
    Random random(7);
    std::array<int, 6> counts{};
    constexpr int kDraws = 60000;
    for (int i = 0; i < kDraws; ++i)
        ++counts[draw_below(random, counts.size())];
    // Five standard deviations of a binomial count: sqrt(60000 × 1/6 × 5/6) = 91.
    for (const int count : counts)
        CHECK_THAT(count, WithinAbs(kDraws / 6.0, 5 * 91.3));
}
