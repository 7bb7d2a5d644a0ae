#include "catch.h"
#include "mechanics/lever/lever_geometry.h"

#include <cmath>

using namespace steelyard::mechanics;

namespace {

/// Rounding of a few operations on numbers of order 1.
constexpr double kRounding = 1e-14;

/// 3 up, then 4 to the right: 7 long, ends 5 apart.
const std::vector<Vec2> kCorner{{0.0, 0.0}, {0.0, 3.0}, {4.0, 3.0}};

} // namespace

TEST_CASE("the length of a bent lever is measured along it") {
    CHECK(path_length(kCorner) == 7.0);
    CHECK(path_length({{1.0, 1.0}, {4.0, 5.0}}) == 5.0);
}

TEST_CASE("a place on the lever is found by walking along it") {
    CHECK((point_at(kCorner, 2.0) - Vec2(0.0, 2.0)).norm() < kRounding);
    CHECK((point_at(kCorner, 3.0) - Vec2(0.0, 3.0)).norm() < kRounding);
    CHECK((point_at(kCorner, 5.0) - Vec2(2.0, 3.0)).norm() < kRounding);
    CHECK((point_at(kCorner, 7.0) - Vec2(4.0, 3.0)).norm() < kRounding);
}

TEST_CASE("a place off the lever is taken to the nearer end") {
    CHECK(point_at(kCorner, -1.0) == Vec2(0.0, 0.0));
    CHECK(point_at(kCorner, 8.0) == Vec2(4.0, 3.0));
}

TEST_CASE("a repeated corner does not disturb a place") {
    const std::vector<Vec2> path{{0.0, 0.0}, {0.0, 0.0}, {2.0, 0.0}, {2.0, 0.0}, {3.0, 0.0}};
    CHECK(point_at(path, 0.0) == Vec2(0.0, 0.0));
    CHECK(point_at(path, 2.5) == Vec2(2.5, 0.0));
    CHECK(nearest_at(path, {2.25, 1.0}) == 2.25);
}

TEST_CASE("the nearest place on a lever is the foot of the perpendicular, or an end") {
    CHECK(nearest_at(kCorner, {-1.0, 1.5}) == 1.5);
    CHECK(nearest_at(kCorner, {2.5, 9.0}) == 5.5);
    CHECK(nearest_at(kCorner, {0.0, -5.0}) == 0.0);
    CHECK(nearest_at(kCorner, {9.0, 3.0}) == 7.0);
    // Outside of the corner it is the corner itself.
    CHECK(nearest_at(kCorner, {-1.0, 4.0}) == 3.0);
}

TEST_CASE("the centroid of a bent lever lies off it") {
    // Sides of 3 and 4 with middles (0, 1.5) and (2, 3): (8/7, 16.5/7).
    const Vec2 centroid = path_centroid(kCorner);
    CHECK_THAT(centroid.x(), WithinRel(8.0 / 7.0, kRounding));
    CHECK_THAT(centroid.y(), WithinRel(16.5 / 7.0, kRounding));
}

TEST_CASE("torque is positive counter-clockwise") {
    const Vec2 axis{1.0, 1.0};
    // 10 N up, 2 m right of the axis, turns counter-clockwise; down, or left of it, clockwise.
    CHECK(torque_about(axis, {{3.0, 1.0}, {0.0, 10.0}}) == 20.0);
    CHECK(torque_about(axis, {{3.0, 1.0}, {0.0, -10.0}}) == -20.0);
    CHECK(torque_about(axis, {{-1.0, 1.0}, {0.0, 10.0}}) == -20.0);
    // Along the line through the axis it turns nothing.
    CHECK(torque_about(axis, {{3.0, 1.0}, {10.0, 0.0}}) == 0.0);
}

TEST_CASE("a force through the axis has no moment arm") {
    CHECK(moment_arm({0.0, 0.0}, {3.0, 4.0}, {0.6, 0.8}) < kRounding);
    CHECK(moment_arm({0.0, 0.0}, {0.0, 0.0}, {0.6, 0.8}) == 0.0);
}

TEST_CASE("the moment arm is the distance to the line of action") {
    // The point is 5 m away, the line x = 3 only 3 m.
    CHECK(moment_arm({0.0, 0.0}, {3.0, 4.0}, {0.0, 1.0}) == 3.0);
    CHECK(moment_arm({0.0, 0.0}, {3.0, 4.0}, {0.0, -1.0}) == 3.0);
    CHECK((foot_of_arm({0.0, 0.0}, {3.0, 4.0}, {0.0, 1.0}) - Vec2(3.0, 0.0)).norm() < kRounding);
}

TEST_CASE("the moment arm meets the line of action at a right angle") {
    const Vec2 axis{0.2, -0.1};
    const Vec2 along = unit_vector(0.7);
    const Vec2 foot = foot_of_arm(axis, {1.3, 0.4}, along);
    CHECK_THAT((foot - axis).dot(along), WithinAbs(0.0, kRounding));
    CHECK_THAT(cross(foot - Vec2(1.3, 0.4), along), WithinAbs(0.0, kRounding));
    CHECK_THAT((foot - axis).norm(), WithinRel(moment_arm(axis, {1.3, 0.4}, along), kRounding));
}
