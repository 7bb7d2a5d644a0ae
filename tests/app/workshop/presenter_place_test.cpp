#include "app/workshop/presenter_place.h"
#include "catch.h"

using namespace steelyard::app;

namespace {

constexpr ScreenArea kWanted{7, 9, 1100, 700};
constexpr ScreenArea kLaptop{0, 0, 1440, 900};
constexpr ScreenArea kProjector{1440, -90, 1920, 1080};

bool lies_in(const ScreenArea& inner, const ScreenArea& outer) {
    return inner.x >= outer.x && inner.y >= outer.y &&
           inner.x + inner.width <= outer.x + outer.width &&
           inner.y + inner.height <= outer.y + outer.height;
}

} // namespace

TEST_CASE("the presenter's window opens on the monitor that the room does not see") {
    const ScreenArea on_projector{1440, -90, 1920, 1080};
    const ScreenArea on_laptop{100, 50, 1280, 720};
    for (const auto& monitors :
         {std::vector{kLaptop, kProjector}, std::vector{kProjector, kLaptop}}) {
        CHECK(lies_in(presenter_area(monitors, on_projector, kWanted), kLaptop));
        CHECK(lies_in(presenter_area(monitors, on_laptop, kWanted), kProjector));
        // Most of this one is on the projector, though its corner is on the laptop.
        CHECK(lies_in(presenter_area(monitors, {1400, 0, 1280, 720}, kWanted), kLaptop));
    }
}

TEST_CASE("on a single monitor it lies in a corner, whole") {
    const ScreenArea area = presenter_area({kProjector}, kProjector, kWanted);
    CHECK(area.width == kWanted.width);
    CHECK(area.x + area.width == kProjector.x + kProjector.width);
    CHECK(area.y + area.height == kProjector.y + kProjector.height);
}

TEST_CASE("it is never larger than its monitor") {
    const ScreenArea small{0, 20, 1024, 580};
    const ScreenArea area = presenter_area({kProjector, small}, kProjector, kWanted);
    CHECK(lies_in(area, small));
    CHECK(area.width == 1024);
    CHECK(area.height == 580);
}

TEST_CASE("where no monitor is known it opens as it is wanted") {
    CHECK(presenter_area({}, kLaptop, kWanted).x == kWanted.x);
}
