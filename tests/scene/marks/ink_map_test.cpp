#include "catch.h"
#include "scene/marks/ink_map.h"

using namespace steelyard::scene;

namespace {

constexpr double kCell_px = 8.0; ///< more than a cell of the map

bool is_free(const InkMap& map, const Point& at) {
    const Point half{1.0, 1.0};
    return map.ink_px2(at - half, at + half) <= 0.0;
}

} // namespace

TEST_CASE("a line has ink along all of it and none beside it", "[ink-map]") {
    const InkMap map({400.0, 300.0}, {Line{{20.0, 30.0}, {360.0, 260.0}, {Role::ink, 3.0}}});
    for (double share = 0.0; share <= 1.0; share += 0.01) {
        const Point at(20.0 + share * 340.0, 30.0 + share * 230.0);
        CHECK_FALSE(is_free(map, at));
        CHECK(is_free(map, at + Point(0.0, 2.0 * kCell_px)));
        CHECK(is_free(map, at - Point(0.0, 2.0 * kCell_px)));
    }
}

TEST_CASE("a line in the colour of the sheet is no ink, nor is a label", "[ink-map]") {
    const InkMap map({400.0, 300.0},
                     {Line{{20.0, 30.0}, {360.0, 260.0}, {Role::sheet, 3.0}},
                      make_label({100.0, 100.0}, "118 N", TextSize::key, Role::ink, Align::left)});
    CHECK(map.ink_px2({0.0, 0.0}, {400.0, 300.0}) == 0.0);
}

TEST_CASE("a form is filled but for its hole", "[ink-map]") {
    const Outline frame{{{{50.0, 50.0}, {250.0, 50.0}, {250.0, 250.0}, {50.0, 250.0}},
                         {{100.0, 100.0}, {100.0, 200.0}, {200.0, 200.0}, {200.0, 100.0}}},
                        Role::skin};
    const InkMap map({400.0, 300.0}, {frame});
    for (const Point& in : {Point(75.0, 150.0), Point(225.0, 150.0), Point(150.0, 75.0),
                            Point(52.0, 52.0), Point(150.0, 225.0)})
        CHECK_FALSE(is_free(map, in));
    for (const Point& out : {Point(150.0, 150.0), Point(40.0, 150.0), Point(262.0, 150.0)})
        CHECK(is_free(map, out));
    // 200² less 100², and at most one more cell all along the rims.
    const double ink_px2 = map.ink_px2({0.0, 0.0}, {400.0, 300.0});
    CHECK(ink_px2 >= 30000.0);
    CHECK(ink_px2 <= 30000.0 + 1200.0 * 5.0);
}

TEST_CASE("a disc, a box turned and a triangle are filled, a ring only at its rim", "[ink-map]") {
    Disc disc;
    disc.centre = {60.0, 60.0};
    disc.radius_px = 30.0;
    disc.fill = Role::ink;
    Disc ring = disc;
    ring.centre = {160.0, 60.0};
    ring.fill.reset();
    ring.outline = Stroke{Role::ink, 2.0};
    Box box;
    box.centre = {60.0, 160.0};
    box.size_px = {80.0, 10.0};
    box.turn_rad = 0.5 * 3.14159265358979;
    box.fill = Role::panel;
    const InkMap map({400.0, 300.0},
                     {disc, ring, box, Triangle{{200.0, 200.0}, {260.0, 200.0}, {230.0, 250.0}}});
    CHECK_FALSE(is_free(map, {60.0, 60.0}));
    CHECK_FALSE(is_free(map, {85.0, 60.0}));
    CHECK(is_free(map, {160.0, 60.0}));
    CHECK_FALSE(is_free(map, {190.0, 60.0}));
    CHECK_FALSE(is_free(map, {60.0, 195.0})); // upright after its quarter turn
    CHECK(is_free(map, {90.0, 160.0}));
    CHECK_FALSE(is_free(map, {230.0, 220.0}));
    CHECK(is_free(map, {230.0, 270.0}));
}

TEST_CASE("beyond the sheet there is no ink", "[ink-map]") {
    const InkMap map({100.0, 100.0}, {Line{{-50.0, 50.0}, {150.0, 50.0}, {Role::ink, 3.0}}});
    CHECK_FALSE(is_free(map, {50.0, 50.0}));
    CHECK(is_free(map, {120.0, 50.0}));
    CHECK(is_free(map, {-20.0, 50.0}));
}
