#include "catch.h"
#include "mechanics/lever/lever_solve.h"

using namespace steelyard::mechanics;

TEST_CASE("a seesaw with the axis in the middle needs the load's own weight as effort", "[lever]") {
    // 10 kg at one end, pull straight down at the other: equal arms, so effort = weight.
    const auto solved = solve_lever(Lever{});
    REQUIRE(solved);
    CHECK(solved->status == LeverStatus::ok);
    CHECK(solved->lever_class == LeverClass::first);
    CHECK_THAT(*solved->effort_N, WithinRel(98.0665, 1e-15));
    CHECK_THAT(*solved->ideal_advantage, WithinRel(1.0, 1e-15));
    CHECK_THAT(solved->axis_reaction_N.y(), WithinRel(2 * 98.0665, 1e-15));
}
