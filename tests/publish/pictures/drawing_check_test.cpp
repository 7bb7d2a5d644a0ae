#include "catch.h"
#include "publish/pictures/drawing_check.h"
#include "publish/pictures/sample_drawing.h"

#include <limits>

using namespace steelyard;
using publish::PublishFault;

namespace {

constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinity = std::numeric_limits<double>::infinity();

PublishFault fault_with(const scene::Shape& shape) {
    scene::Drawing drawing;
    drawing.shapes = {scene::Line{}, shape};
    const auto fault = publish::fault_in(drawing);
    REQUIRE(fault);
    CHECK_THAT(fault->message, ContainsSubstring("Shape 2"));
    return fault->fault;
}

} // namespace

TEST_CASE("a sound drawing has no fault") {
    CHECK_FALSE(publish::fault_in(sample_drawing()));
}

TEST_CASE("no sheet is empty, endless or absurd") {
    for (const double side : {0.0, -5.0, 0.5, kNaN, kInfinity, 1.0e9}) {
        INFO(side);
        scene::Drawing drawing;
        drawing.size_px = {side, 100.0};
        REQUIRE(publish::fault_in(drawing));
        CHECK(publish::fault_in(drawing)->fault == PublishFault::bad_size);
    }
}

TEST_CASE("a place that is not a number is found in every kind of shape") {
    using namespace scene;
    const Stroke broken{Role::ink, kNaN};
    CHECK(fault_with(Line{{kNaN, 0.0}, {1.0, 1.0}, {}}) == PublishFault::bad_place);
    CHECK(fault_with(Polyline{{{0.0, kInfinity}}, {}}) == PublishFault::bad_place);
    CHECK(fault_with(Arc{{0.0, 0.0}, 5.0, 0.0, kNaN, {}}) == PublishFault::bad_place);
    CHECK(fault_with(Disc{{0.0, 0.0}, kNaN, {}, 1.0, {}}) == PublishFault::bad_place);
    CHECK(fault_with(Disc{{0.0, 0.0}, 1.0, {}, 1.0, broken}) == PublishFault::bad_place);
    CHECK(fault_with(Triangle{{0.0, 0.0}, {1.0, 0.0}, {kNaN, 1.0}}) == PublishFault::bad_place);
    CHECK(fault_with(Box{{0.0, 0.0}, {1.0, kNaN}, 0.0, 0.0, {}, 1.0, {}}) ==
          PublishFault::bad_place);
    CHECK(fault_with(Label{{kNaN, 0.0}, "441 N"}) == PublishFault::bad_place);
}
