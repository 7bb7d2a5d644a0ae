#include "catch.h"
#include "scene/plot/axis_ticks.h"

#include <cmath>

using namespace steelyard::scene;

TEST_CASE("marks along an angle are those that a person would draw", "[axis-ticks]") {
    // Worked by hand: the smallest of the steps 1, 2, 5, 10, 15, 30, 45, 90 that gives few enough.
    CHECK(round_angle_ticks(5.0, 135.0, 5) == std::vector<double>{30.0, 60.0, 90.0, 120.0});
    CHECK(round_angle_ticks(0.0, 90.0, 5) == std::vector<double>{0.0, 30.0, 60.0, 90.0});
    CHECK(round_angle_ticks(0.0, 90.0, 7) ==
          std::vector<double>{0.0, 15.0, 30.0, 45.0, 60.0, 75.0, 90.0});
    CHECK(round_angle_ticks(-20.0, 30.0, 6) ==
          std::vector<double>{-20.0, -10.0, 0.0, 10.0, 20.0, 30.0});
    CHECK(round_angle_ticks(-3.0, 3.0, 4) == std::vector<double>{-2.0, 0.0, 2.0});
    CHECK(round_angle_ticks(0.2, 0.7, 5).empty()); // no whole degree lies there
}

TEST_CASE("marks keep inside their range and within their number, whatever the range",
          "[axis-ticks]") {
    for (const double low : {-180.0, -37.3, -1e-12, 0.0, 12.5})
        for (const double width : {0.9, 7.0, 61.0, 123.4, 360.0})
            for (int most = 2; most <= 8; ++most) {
                const double high = low + width;
                const std::vector<double> ticks = round_angle_ticks(low, high, most);
                INFO(low << " to " << high << ", at most " << most);
                REQUIRE(static_cast<int>(ticks.size()) <= most);
                for (std::size_t i = 0; i < ticks.size(); ++i) {
                    // A mark on an end may miss it by the rounding of the end.
                    CHECK(ticks[i] >= low - 1e-6);
                    CHECK(ticks[i] <= high + 1e-6);
                    CHECK(std::signbit(ticks[i]) == (ticks[i] < 0.0)); // "0°", never "-0°"
                    if (i > 1)
                        CHECK(ticks[i] - ticks[i - 1] == ticks[1] - ticks[0]);
                }
            }
}
