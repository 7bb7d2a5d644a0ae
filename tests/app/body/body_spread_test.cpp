#include "app/body/body_spread.h"
#include "app/body/sample_body.h"
#include "catch.h"

#include <chrono>
#include <thread>

using namespace steelyard;
using namespace steelyard::app;

namespace {

/// An exercise of a person whose table nobody has: its spread is refused at once, where a spread of
/// ten thousand bodies would take a minute without optimisation. tests/mechanics has their numbers.
setup::BodySetup refused() {
    setup::BodySetup setup = exercise_named("crate-far");
    setup.person.table = "of nobody";
    return setup;
}

const TorqueSpread* wait_for(const SpreadKeeper& keeper) {
    while (keeper.busy())
        std::this_thread::sleep_for(std::chrono::milliseconds(2));
    return keeper.found();
}

} // namespace

TEST_CASE("a spread comes in pieces, each of which leaves time for frames", "[body-spread]") {
    const setup::BodySetup setup = exercise_named("squat-bar-back");
    const auto piece = spread_through_range(setup, setup.axes.front());
    CHECK_FALSE(piece().has_value()); // 250 bodies of 170,000
}

TEST_CASE("a person of an unknown table has no spread, and is told so", "[body-spread]") {
    const setup::BodySetup setup = refused();
    const TorqueSpread spread = *spread_through_range(setup, setup.axes.front())();
    CHECK(spread.fault.find("of nobody") != std::string::npos);
    CHECK(spread.median.empty());
}

TEST_CASE("a keeper has the spread of what was asked for last, and keeps it", "[body-spread]") {
    const setup::BodySetup setup = refused();
    SpreadKeeper keeper;
    CHECK_FALSE(keeper.busy());
    CHECK(keeper.found() == nullptr);
    keeper.ask(setup, setup.axes[0], 1);
    CHECK(keeper.is_of(1));
    keeper.ask(setup, setup.axes[1], 2); // the first one is given up
    CHECK_FALSE(keeper.is_of(1));
    const TorqueSpread* found = wait_for(keeper);
    REQUIRE(found != nullptr);
    CHECK_FALSE(found->fault.empty());
    keeper.ask(setup, setup.axes[1], 2); // the same again: nothing is computed
    CHECK(keeper.found() == found);
    CHECK_FALSE(keeper.busy());
    keeper.drop();
    CHECK(keeper.found() == nullptr);
    CHECK_FALSE(keeper.is_of(2));
}
