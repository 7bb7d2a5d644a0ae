#include "catch.h"
#include "scene/body/body_stage.h"

using namespace steelyard;
using namespace steelyard::scene;

TEST_CASE("two stages share the smaller scale, and their floors are level") {
    const BodyMargins margins{20.0, 20.0, 100.0, 50.0};
    BodyStage one;
    one.size_px = {400.0, 500.0};
    one.origin_px = {180.0, 430.0};
    one.px_per_m = 200.0;
    one.px_per_N = 0.4;
    BodyStage other = one;
    other.origin_px = {250.0, 440.0};
    other.px_per_m = 100.0;
    other.px_per_N = 0.5;
    share_scale(one, other, margins);
    for (const BodyStage& stage : {one, other}) {
        CHECK(stage.px_per_m == 100.0);
        CHECK(stage.px_per_N == 0.4);
    }
    CHECK(one.origin_px.y() == other.origin_px.y());
    // Half the scale about the middle of the room (200, 275): what was 20 px left of it is 10 px.
    CHECK(one.origin_px.x() == Approx(190.0));
    CHECK(other.origin_px.x() == Approx(250.0));
}
