#include "catch.h"
#include "mechanics/whatif/lever_whatif.h"
#include "mechanics/whatif/sample_lever.h"

#include <algorithm>
#include <cmath>

using namespace steelyard::mechanics;

namespace {

double value_of(const RankedLeverWays& all, LeverKnob knob) {
    const auto found = std::find_if(all.ways.begin(), all.ways.end(), [knob](const LeverWay& way) {
        return way.change.knob == knob;
    });
    REQUIRE(found != all.ways.end());
    return found->value;
}

} // namespace

TEST_CASE("half the effort is had by half the load or half its arm, worked by hand") {
    const double half_N = 0.5 * 10.0 * 9.80665 * 0.4 / 0.6;
    const RankedLeverWays all = ways_to_effort(sample_lever(), half_N);
    CHECK(value_of(all, LeverKnob::load_size) == Approx(5.0).epsilon(1e-8)); // the search's 1e-9
    CHECK(value_of(all, LeverKnob::load_place) == Approx(0.2).epsilon(1e-8));
    // F (1 - a) = W a with F = W / 3: a = 1/4.
    CHECK(value_of(all, LeverKnob::axis_place) == Approx(0.25).epsilon(1e-8));
}

// Twice the sample's lengths: 10 kg at 0, the axis at 0.8 m, the hand at 2 m. Half the effort takes
// 5 of 10 kg: 0.5. Or the load at 0.4 m: 0.4 of 2 m is 0.2. Or the axis where F (2 - a) = W a with
// F = W / 3, a = 0.5 m: 0.3 of 2 m is 0.15. Twice the effort takes the hand's line off by the angle
// whose sine is half, from 90° to the lever to 30°: 60 of 90° is 0.667.
TEST_CASE("the size of a lever's change is in parts of the load, the lever and a right angle") {
    Lever lever = sample_lever();
    lever.path_m = {{0.0, 0.0}, {2.0, 0.0}};
    lever.axis_at_m = 0.8;
    lever.effort.at_m = 2.0;
    const double present_N = 10.0 * 9.80665 * 0.8 / 1.2;
    const auto size = [&](double wanted_N, LeverKnob knob) {
        for (const LeverWay& way : ways_to_effort(lever, wanted_N).ways)
            if (way.change.knob == knob)
                return way.size;
        return -1.0;
    };
    CHECK(size(0.5 * present_N, LeverKnob::load_size) == Approx(0.5).epsilon(1e-8));
    CHECK(size(0.5 * present_N, LeverKnob::load_place) == Approx(0.2).epsilon(1e-8));
    CHECK(size(0.5 * present_N, LeverKnob::axis_place) == Approx(0.15).epsilon(1e-8));
    CHECK(size(2.0 * present_N, LeverKnob::effort_direction) == Approx(60.0 / 90.0).epsilon(1e-8));
}

TEST_CASE("every way of every lever gives the wanted effort, smallest change first") {
    for (const double part : {0.3, 0.8, 1.0, 1.4, 3.0}) {
        const double wanted_N = part * 65.3777;
        const Lever lever = sample_lever();
        const RankedLeverWays all = ways_to_effort(lever, wanted_N);
        CHECK(all.ways.size() + all.refused.size() == possible_changes(lever).size());
        for (std::size_t i = 0; i < all.ways.size(); ++i) {
            const LeverWay& way = all.ways[i];
            CHECK((i == 0 || all.ways[i - 1].size <= way.size));
            CHECK(way.value >= way.range.allowed.low);
            CHECK(way.value <= way.range.allowed.high);
            const auto solved = solve_lever(with_change(lever, way.change, way.value));
            REQUIRE(solved);
            REQUIRE(solved->effort_N);
            CHECK(*solved->effort_N == Approx(wanted_N).epsilon(1e-8)); // the search's 1e-9
        }
    }
}

TEST_CASE("less than the longest arm allows is refused with the nearest effort") {
    // The hand is at the end already: no place of it gives less effort.
    const RankedLeverWays all = ways_to_effort(sample_lever(), 30.0);
    const auto found =
        std::find_if(all.refused.begin(), all.refused.end(), [](const RefusedLeverChange& one) {
            return one.change.knob == LeverKnob::effort_place;
        });
    REQUIRE(found != all.refused.end());
    REQUIRE(found->nearest);
    CHECK(found->nearest->at == Approx(1.0));
    CHECK(found->nearest->reading == Approx(65.3777).epsilon(1e-5)); // given to 6 figures
    REQUIRE(found->limit);
    CHECK(found->limit->kind == LimitKind::range_end);
}

TEST_CASE("a couple has no place and no size to change here") {
    Lever lever = sample_lever();
    lever.loads.push_back({"stiff hinge", Couple{3.0}});
    for (const LeverChange& change : possible_changes(lever))
        CHECK(change.load == 0);
}
