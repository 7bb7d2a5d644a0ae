// Drawings cut to a window: what is left, where it ends, and what is let go.

#include "catch.h"
#include "scene/figure/ring_union.h"
#include "scene/marks/sheet_cut.h"

using namespace steelyard::scene;

namespace {

const Rect kWindow{{10.0, 10.0}, {110.0, 60.0}};

std::vector<Shape> cut(std::vector<Shape> shapes) {
    cut_to(kWindow, 0, shapes);
    return shapes;
}

} // namespace

TEST_CASE("a line ends at the edge of the window, and one outside it is let go", "[cut]") {
    const auto left = cut({Line{{0.0, 30.0}, {60.0, 30.0}, {}}, Line{{0.0, 0.0}, {200.0, 5.0}, {}},
                           Line{{50.0, 0.0}, {50.0, 100.0}, {}}});
    REQUIRE(left.size() == 2);
    const auto& level = std::get<Line>(left[0]);
    CHECK(level.from.x() == Approx(10.0));
    CHECK(level.to.x() == Approx(60.0));
    const auto& upright = std::get<Line>(left[1]);
    CHECK(upright.from.y() == Approx(10.0));
    CHECK(upright.to.y() == Approx(60.0));
}

TEST_CASE("a row of strokes that leaves the window and comes back is two rows", "[cut]") {
    const auto left = cut({Polyline{{{20.0, 20.0}, {20.0, 90.0}, {60.0, 90.0}, {60.0, 20.0}}, {}}});
    REQUIRE(left.size() == 2);
    CHECK(std::get<Polyline>(left[0]).corners.back().y() == Approx(60.0));
    CHECK(std::get<Polyline>(left[1]).corners.front().y() == Approx(60.0));
}

TEST_CASE("a filled form keeps the area that lies in the window", "[cut]") {
    // A square of 100 px whose lower right quarter, 50 by 50, lies in the window's corner.
    const Ring square{{-40.0, -40.0}, {60.0, -40.0}, {60.0, 60.0}, {-40.0, 60.0}};
    CHECK(0.5 * doubled_area(cut_ring(square, kWindow)) == Approx(50.0 * 50.0));
    CHECK(cut_ring({{200.0, 0.0}, {210.0, 0.0}, {210.0, 40.0}}, kWindow).empty());
    const Ring inside{{20.0, 20.0}, {40.0, 20.0}, {30.0, 50.0}};
    CHECK(cut_ring(inside, kWindow).size() == 3);
}

TEST_CASE("what lies in the window and what is written stay as they are", "[cut]") {
    Disc disc;
    disc.centre = {50.0, 30.0};
    Disc off = disc;
    off.centre = {150.0, 30.0};
    Label word;
    word.at = {150.0, 30.0};
    Box box;
    box.centre = {110.0, 30.0};
    box.size_px = {20.0, 20.0};
    box.fill = Role::pad;
    const auto left = cut({disc, off, word, box});
    REQUIRE(left.size() == 3);
    CHECK(std::holds_alternative<Disc>(left[0]));
    CHECK(std::holds_alternative<Label>(left[1]));
    // Half of the box.
    CHECK(0.5 * std::abs(doubled_area(std::get<Outline>(left[2]).rings.front())) == Approx(200.0));
}
