#include "catch.h"
#include "scene/figure/paint_order.h"

#include <algorithm>

using namespace steelyard::scene;

namespace {

std::size_t place_of(std::size_t part, const std::vector<std::size_t>& order) {
    return static_cast<std::size_t>(std::find(order.begin(), order.end(), part) - order.begin());
}

} // namespace

TEST_CASE("of two parts that overlap the farther one is painted first", "[paint-order]") {
    const DepthBalls far{{{0, 0}, 10, -0.3}};
    const DepthBalls near{{{5, 0}, 10, 0.3}};
    CHECK(paint_order({near, far}) == std::vector<std::size_t>{1, 0});
    CHECK(paint_order({far, near}) == std::vector<std::size_t>{0, 1});
}

TEST_CASE("what counts is the depth where they overlap, not on the whole", "[paint-order]") {
    // An arm whose hand lies before the chest while the rest of it is far behind.
    const DepthBalls chest{{{0, 0}, 30, 0.0}};
    const DepthBalls arm{{{20, 0}, 5, 0.2}, {{100, 0}, 5, -0.9}, {{150, 0}, 5, -1.5}};
    CHECK(paint_order({arm, chest}) == std::vector<std::size_t>{1, 0});
}

TEST_CASE("at one depth the later part lies on top", "[paint-order]") {
    const DepthBalls chest{{{0, 0}, 30, 0.0}};
    const DepthBalls arm{{{25, 0}, 10, -0.01}};
    CHECK(paint_order({chest, arm}) == std::vector<std::size_t>{0, 1});
}

TEST_CASE("parts each before the next are all painted, once", "[paint-order]") {
    // Three bars laid over each other in a ring.
    const DepthBalls a{{{0, 0}, 5, 0.0}, {{100, 0}, 5, 0.2}};
    const DepthBalls b{{{100, 0}, 5, 0.0}, {{50, 80}, 5, 0.2}};
    const DepthBalls c{{{50, 80}, 5, 0.0}, {{0, 0}, 5, 0.2}};
    const auto order = paint_order({a, b, c});
    REQUIRE(order.size() == 3);
    for (std::size_t part = 0; part < 3; ++part)
        CHECK(place_of(part, order) < 3);
}
