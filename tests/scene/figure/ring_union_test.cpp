#include "catch.h"
#include "mechanics/constants.h"
#include "scene/figure/ring_union.h"

#include <cmath>
#include <random>

using namespace steelyard;
using namespace steelyard::scene;

namespace {

Ring square(double x, double y, double width, double height) {
    return {{x, y}, {x + width, y}, {x + width, y + height}, {x, y + height}};
}

Ring disc(const Point& centre, double radius, int corners) {
    Ring ring;
    for (int i = 0; i < corners; ++i) {
        const double angle = 2.0 * mechanics::kPi * i / corners;
        ring.emplace_back(centre + radius * Point(std::cos(angle), std::sin(angle)));
    }
    return ring;
}

double area_of(const std::vector<Ring>& rings) {
    double sum = 0.0;
    for (const Ring& ring : rings)
        sum += 0.5 * doubled_area(ring);
    return sum;
}

} // namespace

TEST_CASE("rings that overlap become one, rings apart stay apart, a ring in another goes",
          "[ring-union]") {
    const auto together = union_of({square(0, 0, 20, 20), square(10, 10, 20, 20)});
    REQUIRE(together.size() == 1);
    CHECK(together.front().size() == 8);
    CHECK(area_of(together) == Approx(700.0).epsilon(1e-4));
    CHECK(union_of({square(0, 0, 20, 20), square(30, 0, 20, 20)}).size() == 2);
    const auto within = union_of({square(0, 0, 40, 40), square(10, 10, 5, 5)});
    REQUIRE(within.size() == 1);
    CHECK(area_of(within) == Approx(1600.0).epsilon(1e-4));
}

TEST_CASE("four bars around nothing leave a hole that turns the other way", "[ring-union]") {
    const auto frame = union_of({square(0, 0, 100, 10), square(0, 90, 100, 10),
                                 square(0, 0, 10, 100), square(90, 0, 10, 100)});
    REQUIRE(frame.size() == 2);
    CHECK(doubled_area(frame[0]) * doubled_area(frame[1]) < 0.0);
    CHECK(area_of(frame) == Approx(100.0 * 100.0 - 80.0 * 80.0).epsilon(1e-4));
}

TEST_CASE("the union of two discs has the area that the lens between them leaves", "[ring-union]") {
    // Lens of two equal circles at distance d: 2 r² acos(d / 2r) - d/2 sqrt(4 r² - d²), the
    // textbook formula (Weisstein, "Circle-Circle Intersection", MathWorld, eq. 14 for R = r).
    const double r = 50.0;
    for (const double d : {5.0, 30.0, 60.0, 95.0}) {
        const double lens =
            2.0 * r * r * std::acos(d / (2.0 * r)) - 0.5 * d * std::sqrt(4.0 * r * r - d * d);
        const auto both = union_of({disc({0, 0}, r, 400), disc({d, 0.3}, r, 400)});
        CHECK(both.size() == 1);
        CHECK(area_of(both) == Approx(2.0 * mechanics::kPi * r * r - lens).epsilon(2e-3));
    }
}

TEST_CASE("a point lies in the union when it lies in a ring of it", "[ring-union]") {
    std::mt19937 random(11);
    std::uniform_real_distribution<double> place(0.0, 200.0);
    std::uniform_real_distribution<double> size(15.0, 60.0);
    int merged = 0;
    for (int trial = 0; trial < 200; ++trial) {
        std::vector<Ring> rings;
        for (int i = 0; i < 6; ++i)
            rings.push_back(disc({place(random), place(random)}, size(random), 5 + trial % 20));
        const auto whole = union_of(rings);
        merged += whole.size() < rings.size() ? 1 : 0;
        for (int i = 0; i < 50; ++i) {
            const Point point(place(random), place(random));
            bool in_any = false;
            for (const Ring& ring : rings)
                in_any = in_any || is_inside(point, ring);
            int turns = 0; // by the nonzero rule
            for (const Ring& ring : whole)
                if (is_inside(point, ring))
                    turns += doubled_area(ring) > 0.0 ? 1 : -1;
            INFO("trial " << trial << " at " << point.transpose());
            CHECK((turns != 0) == in_any);
        }
    }
    CHECK(merged > 150);
}
