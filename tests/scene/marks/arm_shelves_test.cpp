#include "catch.h"
#include "scene/marks/arm_shelves.h"

#include <cmath>

using namespace steelyard::scene;

namespace {

const Point kAxis{400.0, 300.0};
const Point kDown{0.0, 1.0};

double cross(const Point& a, const Point& b) {
    return a.x() * b.y() - a.y() * b.x();
}

} // namespace

TEST_CASE("an arm that would lie on the lever is moved along its line of action, length kept") {
    for (double turn = -3.0; turn < 3.0; turn += 0.1) {
        ArmShelves shelves(kAxis);
        const Point along{std::cos(turn), std::sin(turn)};
        const Point square{-along.y(), along.x()};
        const Point foot = kAxis + 130.0 * square;
        // The force acts at the foot: lever and arm coincide.
        const ArmMark mark = shelves.shelve(foot, foot, along);
        CHECK(mark.shift.norm() > 20.0);
        CHECK(std::abs(cross(mark.shift, along)) < 1e-9); // along the line; roundings of 100 px
        CHECK(((mark.foot + mark.shift) - (mark.axis + mark.shift)).norm() == Approx(130.0));
        CHECK(mark.shift.dot(along) < 0.0); // away from where the arrow points
    }
}

TEST_CASE("an arm that leaves the lever stays at the axis") {
    ArmShelves shelves(kAxis);
    const double oblique_rad = 0.7;
    const Point along{std::cos(oblique_rad), std::sin(oblique_rad)};
    const Point point = kAxis + Point(200.0, 0.0);
    const Point foot = point - along * along.dot(point - kAxis);
    CHECK(shelves.shelve(foot, point, along).shift.norm() == 0.0);
}

TEST_CASE("arms on the same side get shelves of their own") {
    ArmShelves shelves(kAxis);
    std::vector<double> heights;
    for (const double x : {100.0, 180.0, 260.0}) {
        const Point foot = kAxis + Point(x, 0.0);
        heights.push_back(
            (shelves.shelve(foot, foot, kDown).axis + shelves.shelve(foot, foot, kDown).shift).y());
    }
    for (std::size_t i = 1; i < heights.size(); ++i)
        CHECK(std::abs(heights[i] - heights[i - 1]) > 20.0); // a line of text apart
}

TEST_CASE("arms to both sides share a height, so that they can be compared") {
    ArmShelves shelves(kAxis);
    const Point left = kAxis - Point(200.0, 0.0);
    const Point right = kAxis + Point(150.0, 0.0);
    const Point first = shelves.shelve(left, left, kDown).shift;
    const Point second = shelves.shelve(right, right, kDown).shift;
    CHECK(first == second);
}

TEST_CASE("a line of action through the axis has an arm without a length, and no shelf") {
    ArmShelves shelves(kAxis);
    const ArmMark mark = shelves.shelve(kAxis, kAxis + Point(100.0, 0.0), {1.0, 0.0});
    CHECK(mark.shift.norm() == 0.0);
    CHECK(mark.foot == kAxis);
}
