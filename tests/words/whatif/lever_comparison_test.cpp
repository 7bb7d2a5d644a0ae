#include "catch.h"
#include "words/whatif/lever_comparison.h"

using namespace steelyard;
using namespace steelyard::setup;
using namespace steelyard::words;

namespace {

/// 1 m, axis at 0.4 m, 10 kg at the left end, effort down at the right end.
mechanics::Lever sample() {
    mechanics::Lever lever;
    lever.axis_at_m = 0.4;
    lever.loads = {{"crate", mechanics::Weight{0.0, 10.0}}};
    return lever;
}

} // namespace

TEST_CASE("two levers are compared by what both of them have") {
    const auto solved = mechanics::solve_lever(sample());
    REQUIRE(solved);
    const auto sizes = compare_levers(*solved, *solved);
    REQUIRE(sizes.size() == 5);
    // By hand: 98.0665 N × 0.4 m = 39.2266 N·m, and 0.6 m of effort arm.
    CHECK(sizes[0].a == Approx(39.2266 / 0.6));
    CHECK(sizes[1].a == Approx(0.6));
    CHECK(sizes[2].a == Approx(39.2266));
    CHECK(sizes[3].a == Approx(0.4));
    CHECK(sizes[4].a == Approx(1.5));
    mechanics::Lever couple = sample();
    couple.loads = {{"hinge", mechanics::Couple{5.0}}};
    CHECK(compare_levers(*solved, *mechanics::solve_lever(couple)).size() == 3);
}

TEST_CASE("what B changes is told where both have loads of the same names") {
    const mechanics::Lever a = sample();
    mechanics::Lever b = a;
    CHECK(changed_in_b(a, b, UnitSystem::si).empty());
    b.axis_at_m = 0.5;
    b.effort.direction_rad = mechanics::kUp_rad;
    const auto changed = changed_in_b(a, b, UnitSystem::si);
    REQUIRE(changed.size() == 2);
    CHECK_THAT(changed[0], ContainsSubstring("place of the axis 0.500"));
    CHECK_THAT(changed[0], ContainsSubstring("instead of 0.400"));
    CHECK(changed[1] == "direction of the effort up instead of down");
    b.loads.front().name = "barrel";
    CHECK(changed_in_b(a, b, UnitSystem::si).empty());
}
