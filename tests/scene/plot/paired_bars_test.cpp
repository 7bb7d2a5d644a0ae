#include "catch.h"
#include "scene/palette.h"
#include "scene/plot/paired_bars.h"

using namespace steelyard;
using namespace steelyard::scene;

namespace {

/// The boxes of a drawing in their order: A's and B's bar of each pair.
std::vector<Box> boxes_of(const std::vector<Shape>& shapes) {
    std::vector<Box> boxes;
    for (const Shape& shape : shapes)
        if (const auto* box = std::get_if<Box>(&shape))
            boxes.push_back(*box);
    return boxes;
}

double left_px(const Box& box) {
    return box.centre.x() - 0.5 * box.size_px.x();
}

bool says(const std::vector<Shape>& shapes, const std::string& words) {
    for (const Shape& shape : shapes)
        if (const auto* label = std::get_if<Label>(&shape);
            label != nullptr && label->text == words)
            return true;
    return false;
}

} // namespace

TEST_CASE("paired bars grow from one zero, in the ratio of their sizes") {
    PairedBars bars;
    bars.pairs = {{"hip", 100.0, 50.0, {}, {}, true}, {"knee", 25.0, 75.0, {}, {}, false}};
    std::vector<Shape> shapes;
    add_paired_bars(bars, shapes);
    const std::vector<Box> boxes = boxes_of(shapes);
    REQUIRE(boxes.size() == 4);
    for (const Box& box : boxes)
        CHECK(left_px(box) == Approx(left_px(boxes[0])));
    const double full_px = boxes[0].size_px.x();
    CHECK(boxes[1].size_px.x() == Approx(0.5 * full_px));
    CHECK(boxes[2].size_px.x() == Approx(0.25 * full_px));
    CHECK(boxes[3].size_px.x() == Approx(0.75 * full_px));
    CHECK(says(shapes, "100\u00A0N·m"));
    CHECK(says(shapes, "50.0\u00A0N·m less in B (−50 %)"));
    CHECK(says(shapes, "50.0\u00A0N·m more in B (+200 %)"));
}

TEST_CASE("a tick beyond every bar is still inside") {
    PairedBars bars;
    bars.pairs = {{"hip", 40.0, 20.0, 80.0, 60.0, true}};
    std::vector<Shape> shapes;
    add_paired_bars(bars, shapes);
    const double right_px = bars.corner_px.x() + bars.width_px;
    for (const Shape& shape : shapes)
        if (const auto* line = std::get_if<Line>(&shape))
            CHECK(line->to.x() < right_px - 60.0); // the numbers stand at the right
}

TEST_CASE("nothing at all on both sides makes no bar and no number that is not one") {
    PairedBars bars;
    bars.pairs = {{"hip", 0.0, 0.0, 0.0, 0.0, true}};
    std::vector<Shape> shapes;
    add_paired_bars(bars, shapes);
    CHECK(boxes_of(shapes).empty());
    CHECK(says(shapes, "equal"));
}

TEST_CASE("A and B differ in lightness on every sheet") {
    for (const Look look : {Look::light, Look::dark, Look::print}) {
        std::vector<Shape> shapes;
        add_side_badge(Side::a, {0.0, 0.0}, 1.0, shapes);
        add_side_badge(Side::b, {0.0, 0.0}, 1.0, shapes);
        const std::vector<Box> boxes = boxes_of(shapes);
        REQUIRE(boxes.size() == 2);
        // Source: WCAG 2.2, success criterion 1.4.11: 3:1 for graphical objects.
        CHECK(contrast_ratio(colour_of(*boxes[0].fill, look), colour_of(*boxes[1].fill, look)) >=
              3.0);
    }
}
