#include "catch.h"
#include "mechanics/whatif/lever_sweep.h"
#include "mechanics/whatif/sample_lever.h"

#include <cmath>

using namespace steelyard::mechanics;

namespace {

const LeverChange kDirection{LeverKnob::effort_direction, 0};

} // namespace

TEST_CASE("a turned effort grows with the cosine and the sweep ends at four times the least") {
    const auto sweep = sweep_lever(sample_lever(), kDirection, 101);
    REQUIRE(sweep);
    // By hand: 10 kg × 9.80665 m/s² × 0.4 m = F × 0.6 m × cos(turn); F is four times as large
    // where the cosine is a quarter, 75.52° to either side.
    const double square_N = 10.0 * 9.80665 * 0.4 / 0.6;
    const double end_rad = std::acos(0.25);
    CHECK(sweep->present.effort_N == Approx(square_N));
    CHECK(sweep->steps.size() == 101);
    CHECK(sweep->steps.front().value == Approx(kDown_rad - end_rad));
    CHECK(sweep->steps.back().value == Approx(kDown_rad + end_rad));
    CHECK(sweep->cut_low);
    CHECK(sweep->cut_high);
    for (const LeverSweepStep& step : sweep->steps) {
        CHECK(step.effort_N == Approx(square_N / std::cos(step.value - kDown_rad)));
        REQUIRE(step.ideal_advantage);
        CHECK(*step.ideal_advantage == Approx(1.5 * std::cos(step.value - kDown_rad)));
    }
}

TEST_CASE("a load that is carried toward the axis is followed until its arm is a quarter") {
    const auto sweep = sweep_lever(sample_lever(), {LeverKnob::load_place, 0}, 11);
    REQUIRE(sweep);
    // Arm 0.4 m at the end; a quarter of it is 0.1 m, at 0.3 m.
    CHECK(sweep->steps.front().value == 0.0);
    CHECK_FALSE(sweep->cut_low);
    CHECK(sweep->steps.back().value == Approx(0.3));
    CHECK(sweep->cut_high);
    CHECK(sweep->steps.back().effort_N == Approx(0.25 * sweep->present.effort_N));
}

TEST_CASE("every sweep of every knob is finite, in order and holds the present setting") {
    Lever lever = sample_lever();
    lever.own_weight.mass_kg = 2.0;
    lever.friction = {0.2, 0.01};
    lever.loads.push_back({"rope", PointForce{0.7, 20.0, -1.9}});
    for (const LeverChange& change : possible_changes(lever)) {
        INFO(describe(change, lever));
        const auto sweep = sweep_lever(lever, change, 33);
        REQUIRE(sweep);
        CHECK(sweep->steps.front().value <= sweep->present.value);
        CHECK(sweep->steps.back().value >= sweep->present.value);
        for (std::size_t i = 0; i < sweep->steps.size(); ++i) {
            CHECK(std::isfinite(sweep->steps[i].effort_N));
            CHECK(sweep->steps[i].effort_N > 0.0);
            CHECK(sweep->steps[i].effort_N <= kMostTimesPresent * sweep->present.effort_N);
            CHECK((i == 0 || sweep->steps[i].value > sweep->steps[i - 1].value));
        }
    }
}

TEST_CASE("where nothing can be swept the reason is told") {
    Lever through = sample_lever();
    through.effort.direction_rad = 0.0; // along the lever
    const auto none = sweep_lever(through, kDirection, 11);
    REQUIRE_FALSE(none);
    CHECK(none.error().key == "effort");
    Lever empty = sample_lever();
    empty.loads.clear();
    CHECK_FALSE(sweep_lever(empty, kDirection, 11));
    Lever broken = sample_lever();
    broken.axis_at_m = std::nan("");
    CHECK_FALSE(sweep_lever(broken, kDirection, 11));
}
