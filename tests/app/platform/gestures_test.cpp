#include "app/platform/gestures.h"
#include "catch.h"

#include <cmath>

using namespace steelyard;
using namespace steelyard::app;

namespace {

using Kind = PointerAct::Kind;

std::vector<Kind> kinds_of(const std::vector<PointerAct>& acts) {
    std::vector<Kind> kinds;
    for (const PointerAct& act : acts)
        kinds.push_back(act.kind);
    return kinds;
}

} // namespace

TEST_CASE("one finger drags as a held left button does", "[gestures]") {
    Gestures gestures;
    const auto down = gestures.take({TouchPhase::down, 7, {10.0, 20.0}, 0.0});
    CHECK(kinds_of(down) == std::vector{Kind::move, Kind::press});
    CHECK(down.back().button == PointerButton::left);
    const auto moved = gestures.take({TouchPhase::moved, 7, {60.0, 20.0}, 0.1});
    REQUIRE(kinds_of(moved) == std::vector{Kind::move});
    CHECK(moved[0].at_px.x() == 60.0);
    const auto up = gestures.take({TouchPhase::up, 7, {60.0, 20.0}, 0.2});
    CHECK(kinds_of(up) == std::vector{Kind::release, Kind::leave});
}

TEST_CASE("a second finger ends the drag where it was and moves the sheet", "[gestures]") {
    Gestures gestures;
    gestures.take({TouchPhase::down, 1, {100.0, 100.0}, 0.0});
    const auto second = gestures.take({TouchPhase::down, 2, {200.0, 100.0}, 0.1});
    REQUIRE(kinds_of(second) == std::vector{Kind::release, Kind::move, Kind::press});
    CHECK(second[0].at_px.x() == 100.0);
    CHECK(second[2].button == PointerButton::right);
    CHECK(second[2].at_px.x() == 150.0);
    const auto lifted = gestures.take({TouchPhase::up, 2, {200.0, 100.0}, 0.2});
    REQUIRE(kinds_of(lifted) == std::vector{Kind::release});
    CHECK(lifted[0].button == PointerButton::right);
    // The finger that is left neither drags nor presses.
    CHECK(gestures.take({TouchPhase::moved, 1, {0.0, 0.0}, 0.3}).empty());
}

TEST_CASE("fingers that part by a tenth are one notch nearer, and back again", "[gestures]") {
    Gestures gestures;
    gestures.take({TouchPhase::down, 1, {0.0, 0.0}, 0.0});
    gestures.take({TouchPhase::down, 2, {100.0, 0.0}, 0.0});
    const auto apart = gestures.take({TouchPhase::moved, 2, {110.0, 0.0}, 0.1});
    REQUIRE(apart.size() == 2);
    CHECK(std::abs(apart[1].notches - 1.0) < 1e-12);
    const auto together = gestures.take({TouchPhase::moved, 2, {100.0, 0.0}, 0.2});
    CHECK(std::abs(together[1].notches + 1.0) < 1e-12);
}

TEST_CASE("a finger that lies still for half a second does what a double click does",
          "[gestures]") {
    Gestures gestures;
    gestures.take({TouchPhase::down, 1, {50.0, 50.0}, 10.0});
    gestures.take({TouchPhase::moved, 1, {52.0, 50.0}, 10.1}); // nobody holds quite still
    REQUIRE(gestures.due_s() == 10.5);
    CHECK(gestures.wait(10.4).empty());
    CHECK(kinds_of(gestures.wait(10.5)) == std::vector{Kind::release, Kind::double_click});
    CHECK(gestures.wait(11.0).empty());
    CHECK(kinds_of(gestures.take({TouchPhase::up, 1, {52.0, 50.0}, 11.0})) ==
          std::vector{Kind::leave});
}

TEST_CASE("a finger that moves is no long press", "[gestures]") {
    Gestures gestures;
    gestures.take({TouchPhase::down, 1, {50.0, 50.0}, 0.0});
    gestures.take({TouchPhase::moved, 1, {70.0, 50.0}, 0.1});
    CHECK_FALSE(gestures.due_s().has_value());
    CHECK(gestures.wait(5.0).empty());
}

TEST_CASE("a third finger and one that nobody put down change nothing", "[gestures]") {
    Gestures gestures;
    CHECK(gestures.take({TouchPhase::up, 9, {0.0, 0.0}, 0.0}).empty());
    gestures.take({TouchPhase::down, 1, {0.0, 0.0}, 0.0});
    gestures.take({TouchPhase::down, 2, {10.0, 0.0}, 0.0});
    CHECK(gestures.take({TouchPhase::down, 3, {20.0, 0.0}, 0.0}).empty());
    CHECK(gestures.take({TouchPhase::moved, 3, {30.0, 0.0}, 0.1}).empty());
}

TEST_CASE("where there is more than fits a tap presses, and up and down scrolls without a press",
          "[gestures]") {
    Gestures gestures;
    const Touch down{TouchPhase::down, 1, {50.0, 50.0}, 0.0, true};
    CHECK(kinds_of(gestures.take(down)) == std::vector{Kind::move});
    CHECK(kinds_of(gestures.take({TouchPhase::up, 1, {52.0, 50.0}, 0.1})) ==
          std::vector{Kind::press, Kind::release, Kind::leave});

    gestures.take(down);
    const auto begun = gestures.take({TouchPhase::moved, 1, {52.0, 30.0}, 0.1});
    REQUIRE(kinds_of(begun) == std::vector{Kind::scroll});
    CHECK(begun[0].scroll_px == -20.0);
    const auto on = gestures.take({TouchPhase::moved, 1, {90.0, 25.0}, 0.2});
    REQUIRE(kinds_of(on) == std::vector{Kind::scroll});
    CHECK(on[0].scroll_px == -5.0);
    CHECK(on[0].at_px.x() == 50.0);
    CHECK(kinds_of(gestures.take({TouchPhase::up, 1, {90.0, 25.0}, 0.3})) ==
          std::vector{Kind::leave});
}

TEST_CASE("a finger that moves to the side there drags what it was put on", "[gestures]") {
    Gestures gestures;
    gestures.take({TouchPhase::down, 1, {50.0, 50.0}, 0.0, true});
    const auto dragged = gestures.take({TouchPhase::moved, 1, {80.0, 52.0}, 0.1});
    REQUIRE(kinds_of(dragged) == std::vector{Kind::move, Kind::press, Kind::move});
    CHECK(dragged[1].at_px.x() == 50.0);
    CHECK(dragged[2].at_px.x() == 80.0);
    CHECK(kinds_of(gestures.take({TouchPhase::up, 1, {80.0, 52.0}, 0.2})) ==
          std::vector{Kind::release, Kind::leave});
}
