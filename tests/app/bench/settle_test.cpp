#include "app/bench/settle.h"
#include "catch.h"

#include <cmath>

using namespace steelyard::app;

namespace {

constexpr double kDegree = 3.14159265358979323846 / 180.0;

/// Time until rest [s]; fails the test when it has not come after two seconds.
double time_to_rest(Settle& settle, double step_s) {
    double time_s = 0.0;
    while (!settle.at_rest()) {
        settle.advance(step_s);
        time_s += step_s;
        REQUIRE(std::isfinite(settle.tilt_rad()));
        REQUIRE(time_s < 2.0);
    }
    return time_s;
}

} // namespace

TEST_CASE("the lever comes to rest in under 400 ms at any frame rate") {
    // Source: the project's own rule of movement. 20° is the longest way, from one side to the
    // other.
    for (const double step_s : {1.0 / 240.0, 1.0 / 144.0, 1.0 / 60.0, 1.0 / 30.0}) {
        Settle settle;
        settle.aim(-10.0 * kDegree, true);
        settle.aim(10.0 * kDegree, false);
        INFO("frames of " << step_s << " s");
        CHECK(time_to_rest(settle, step_s) < 0.4 + step_s); // seen at the next frame
        CHECK(settle.tilt_rad() == 10.0 * kDegree);
    }
}

TEST_CASE("the lever swings past a little, as a damped balance does, and only a little") {
    Settle settle;
    settle.aim(10.0 * kDegree, false);
    double furthest_rad = 0.0;
    while (!settle.at_rest()) {
        settle.advance(0.002);
        furthest_rad = std::max(furthest_rad, settle.tilt_rad());
    }
    CHECK(furthest_rad > 10.0 * kDegree);
    CHECK(furthest_rad < 11.0 * kDegree);
}

TEST_CASE("a lever at rest stays at rest, so that no frame is owed") {
    Settle settle;
    settle.aim(0.1, true);
    CHECK(settle.at_rest());
    for (int i = 0; i < 100; ++i) {
        settle.aim(0.1, false);
        settle.advance(1.0 / 60.0);
        CHECK(settle.at_rest());
        CHECK(settle.tilt_rad() == 0.1);
    }
}

TEST_CASE("an aim that moves in every frame ends all the same once it stops") {
    Settle settle;
    for (int i = 0; i < 300; ++i) {
        settle.aim(0.17 * std::sin(0.3 * i), false);
        settle.advance(1.0 / 60.0);
    }
    settle.aim(0.05, false);
    CHECK(time_to_rest(settle, 1.0 / 60.0) < 0.45); // it starts with a speed of its own
}

TEST_CASE("a pause of any length is harmless") {
    for (const double pause_s : {0.0, 0.5, 3600.0, 1.0e9}) {
        Settle settle;
        settle.aim(0.1, false);
        settle.advance(pause_s);
        CHECK(std::abs(settle.tilt_rad()) < 0.2);
    }
}

TEST_CASE("less motion puts the lever where it rests at once") {
    Settle settle;
    settle.aim(0.1, true);
    CHECK(settle.tilt_rad() == 0.1);
    CHECK(settle.at_rest());
}

TEST_CASE("the tilt shows who wins and grows with what is left over") {
    CHECK(resting_tilt(0.0, 40.0) == 0.0);
    CHECK(resting_tilt(0.0, 0.0) == 0.0);
    CHECK(resting_tilt(5.0, 40.0) > 0.0);
    CHECK(resting_tilt(-5.0, 40.0) == -resting_tilt(5.0, 40.0));
    CHECK(resting_tilt(10.0, 40.0) > resting_tilt(5.0, 40.0));
    CHECK(resting_tilt(40.0, 40.0) == Approx(10.0 * kDegree).epsilon(1e-12)); // one rounding
    CHECK(resting_tilt(400.0, 40.0) == resting_tilt(40.0, 40.0));
    // A hundredth can be seen: on a lever of 700 px a degree moves its end by 6 px.
    CHECK(resting_tilt(0.4, 40.0) >= 1.0 * kDegree * 0.999999); // one rounding
}
