#include "app/paint/outline_triangles.h"
#include "catch.h"
#include "mechanics/constants.h"
#include "scene/figure/ring_union.h"

#include <cmath>

using namespace steelyard;
using namespace steelyard::app;
using scene::Point;
using scene::Ring;

namespace {

std::vector<OutlineTriangle> triangles_of(std::vector<Ring> rings) {
    std::vector<OutlineTriangle> triangles;
    append_triangles({std::move(rings), scene::Role::skin}, triangles);
    return triangles;
}

double area_of(const OutlineTriangle& triangle) {
    return 0.5 * std::abs(scene::doubled_area(
                     {triangle.corners[0], triangle.corners[1], triangle.corners[2]}));
}

double area_of(const std::vector<OutlineTriangle>& triangles) {
    double sum = 0.0;
    for (const OutlineTriangle& triangle : triangles)
        sum += area_of(triangle);
    return sum;
}

/// Length of all sides that are said to lie on the outline.
double rim_of(const std::vector<OutlineTriangle>& triangles) {
    double sum = 0.0;
    for (const OutlineTriangle& triangle : triangles)
        for (std::size_t i = 0; i < 3; ++i)
            if (triangle.on_outline[i])
                sum += (triangle.corners[(i + 1) % 3] - triangle.corners[i]).norm();
    return sum;
}

Ring star(const Point& centre, double inner, double outer, int points) {
    Ring ring;
    for (int i = 0; i < 2 * points; ++i) {
        const double angle = mechanics::kPi * i / points;
        ring.emplace_back(centre +
                          (i % 2 == 0 ? outer : inner) * Point(std::cos(angle), std::sin(angle)));
    }
    return ring;
}

double length_of(const Ring& ring) {
    double sum = 0.0;
    for (std::size_t i = 0; i < ring.size(); ++i)
        sum += (ring[(i + 1) % ring.size()] - ring[i]).norm();
    return sum;
}

} // namespace

TEST_CASE("a form with bays is cut into triangles that cover it once", "[outline-triangles]") {
    for (const int points : {3, 5, 24}) {
        const Ring ring = star({100.0, 80.0}, 20.0, 60.0, points);
        const auto triangles = triangles_of({ring});
        CHECK(triangles.size() == ring.size() - 2); // of any simple polygon
        CHECK(area_of(triangles) == Approx(0.5 * scene::doubled_area(ring)).epsilon(1e-9));
        CHECK(rim_of(triangles) == Approx(length_of(ring)).epsilon(1e-9));
        for (const OutlineTriangle& triangle : triangles)
            if (area_of(triangle) > 1e-6)
                CHECK(scene::is_inside(
                    (triangle.corners[0] + triangle.corners[1] + triangle.corners[2]) / 3.0, ring));
    }
}

TEST_CASE("a hole stays empty", "[outline-triangles]") {
    const Ring outer{{0, 0}, {100, 0}, {100, 100}, {0, 100}};
    const Ring hole{{30, 30}, {30, 60}, {70, 60}, {70, 30}}; // turns the other way
    const auto triangles = triangles_of({outer, hole});
    CHECK(area_of(triangles) == Approx(10000.0 - 1200.0).epsilon(1e-9));
    CHECK(rim_of(triangles) == Approx(length_of(outer) + length_of(hole)).epsilon(1e-9));
    for (const OutlineTriangle& triangle : triangles)
        CHECK_FALSE(scene::is_inside(
            (triangle.corners[0] + triangle.corners[1] + triangle.corners[2]) / 3.0, hole));
}

TEST_CASE("rings apart are filled apart, and nothing comes of a line", "[outline-triangles]") {
    const Ring square{{0, 0}, {10, 0}, {10, 10}, {0, 10}};
    Ring other = square;
    for (Point& corner : other)
        corner += Point(50.0, 0.0);
    CHECK(area_of(triangles_of({square, other})) == Approx(200.0));
    CHECK(triangles_of({{{0, 0}, {10, 0}}}).empty());
}
