#include "app/frame/layout.h"
#include "catch.h"

using namespace steelyard::app;

TEST_CASE("readings take 26 % of a wide window") {
    const Layout layout = lay_out({1920.0, 1080.0}, 1.0);
    CHECK_FALSE(layout.narrow);
    CHECK(layout.column_px.x() == 499.0); // 499.2, in whole pixels
    CHECK(layout.column_px.y() == 1080.0);
    CHECK(layout.column_at_px.x() == layout.stage_px.x());
}

TEST_CASE("readings never get under 300 px beside the stage, at larger text accordingly more") {
    for (double width = 480.0; width < 4000.0; width += 7.0)
        for (const double text : {1.0, 1.5, 2.5}) {
            const Layout layout = lay_out({width, 720.0}, text);
            INFO(width << " px at " << text);
            if (layout.narrow)
                CHECK(layout.column_px.x() == width);
            else
                CHECK(layout.column_px.x() >= 300.0 * text);
        }
}

TEST_CASE("stage and readings fill the window without a gap and without an overlap") {
    for (const double width : {480.0, 640.0, 800.0, 1280.0, 3840.0})
        for (const double height : {360.0, 720.0, 2160.0}) {
            const Layout layout = lay_out({width, height}, 1.0);
            INFO(width << " × " << height);
            const double area = layout.stage_px.prod() + layout.column_px.prod();
            CHECK(area == width * height);
            CHECK(layout.stage_px.minCoeff() > 0.0);
            CHECK(layout.column_px.minCoeff() > 0.0);
            CHECK((layout.column_at_px + layout.column_px - steelyard::scene::Point(width, height))
                      .norm() == 0.0);
        }
}

TEST_CASE("on a narrow window the readings lie below the stage") {
    const Layout layout = lay_out({480.0, 800.0}, 1.0);
    CHECK(layout.narrow);
    CHECK(layout.stage_px.x() == 480.0);
    CHECK(layout.column_at_px.x() == 0.0);
    CHECK(layout.column_at_px.y() == layout.stage_px.y());
    CHECK(layout.stage_px.y() > layout.column_px.y()); // the lever comes first
}

TEST_CASE("type grows with a window larger than a desk's, half as fast, and never shrinks") {
    CHECK(growth_of({1280.0, 720.0}, 1.0) == 1.0);
    CHECK(growth_of({480.0, 360.0}, 1.0) == 1.0);
    CHECK(growth_of({1920.0, 1080.0}, 1.0) == 1.25);
    CHECK(growth_of({2560.0, 1440.0}, 1.0) == 1.5);
    CHECK(growth_of({1920.0, 720.0}, 1.0) == 1.0);   // wide, but no higher
    CHECK(growth_of({1921.0, 1081.0}, 1.0) == 1.25); // no new fonts for a pixel
    // A larger choice always gives larger type, and the largest as it was chosen.
    CHECK(growth_of({1920.0, 1080.0}, 0.8) == 1.25);
    CHECK(growth_of({1920.0, 1080.0}, 2.5) == 1.0);
    CHECK(1.5 * growth_of({1920.0, 1080.0}, 1.5) > 1.25 * growth_of({1920.0, 1080.0}, 1.25));
}
