#include "catch.h"
#include "scene/marks/label_board.h"
#include "scene/plot/curve_plot.h"

#include <algorithm>
#include <cmath>
#include <limits>

using namespace steelyard;
using namespace steelyard::scene;

namespace {

constexpr double kGap = std::numeric_limits<double>::quiet_NaN();

Curve curve(std::string name, std::vector<double> values, bool strong = false) {
    return {std::move(name), std::move(values), Dash::solid, strong, Role::ink};
}

/// Two curves over elbow flexion, as the body's stage plots them.
CurvePlot plot_of(std::vector<Curve> curves) {
    CurvePlot plot;
    plot.title = "torque that the muscles must give";
    plot.unit = "N·m";
    plot.range = "elbow flexion";
    plot.range_ticks = {{0.2, "30°"}, {0.6, "90°"}};
    plot.value_ticks = {{0.0, "0"}, {10.0, "10"}, {20.0, "20"}};
    plot.curves = std::move(curves);
    plot.cursor = 0.25;
    plot.corner_px = {600.0, 80.0};
    plot.size_px = {320.0, 220.0};
    return plot;
}

std::vector<Shape> shapes_of(const CurvePlot& plot) {
    std::vector<Shape> shapes;
    add_curve_plot(plot, shapes);
    return shapes;
}

template <typename Kind> std::vector<Kind> all(const std::vector<Shape>& shapes) {
    std::vector<Kind> found;
    for (const Shape& shape : shapes)
        if (const auto* one = std::get_if<Kind>(&shape))
            found.push_back(*one);
    return found;
}

} // namespace

TEST_CASE("the scale of a plot holds every curve, the band, the marks and zero", "[curve-plot]") {
    CurvePlot plot;
    plot.curves = {curve("a", {3.0, 7.0, kGap}), curve("b", {-2.0, kGap, 1.0})};
    CHECK(value_range(plot) == std::pair(-2.0, 7.0));
    plot.band = PlotBand{{-4.0, 1.0}, {2.0, 9.0}};
    CHECK(value_range(plot) == std::pair(-4.0, 9.0));
    plot.value_ticks = {{10.0, "10"}};
    CHECK(value_range(plot) == std::pair(-4.0, 10.0));
    plot = {};
    plot.curves = {curve("nothing", {0.0, 0.0}), curve("gaps", {kGap, kGap})};
    const auto [least, most] = value_range(plot);
    CHECK(least < most); // a scale of no width would divide by nothing
}

TEST_CASE("the peak of a curve is where its size is largest, on either side of zero",
          "[curve-plot]") {
    CHECK(peak_place(curve("", {1.0, 5.0, 2.0, 0.0, 1.0})) == 0.25);
    CHECK(peak_place(curve("", {1.0, kGap, -7.0})) == 1.0);
    CHECK_FALSE(peak_place(curve("", {kGap, kGap})));
    CHECK_FALSE(peak_place(curve("", {4.0}))); // a single value is no curve
}

TEST_CASE("between its places a curve is straight, and unknown beside a gap", "[curve-plot]") {
    const std::vector<double> values{0.0, 10.0, 4.0, kGap, 8.0};
    CHECK(value_at(values, 0.0) == 0.0);
    CHECK(value_at(values, 0.125) == 5.0); // half way between 0 and 10
    CHECK(value_at(values, 0.25) == 10.0);
    CHECK(value_at(values, 0.5) == 4.0); // on a place its own value, whatever comes after
    CHECK(std::isnan(value_at(values, 0.6)));
    CHECK(value_at(values, 1.0) == 8.0);
    CHECK(value_at(values, 7.0) == 8.0);
    CHECK(value_at(values, -7.0) == 0.0);
}

TEST_CASE("a place of the range and its point on the sheet belong together", "[curve-plot]") {
    const CurvePlot plot = plot_of({curve("elbow", {0.0, 20.0}, true)});
    for (const double share : {0.0, 0.3, 1.0}) {
        const Point at = place_at(plot, share);
        CHECK(range_at(plot, at) == Approx(share).margin(1e-12));
        CHECK(is_over(plot, at));
    }
    CHECK(range_at(plot, place_at(plot, 0.0) - Point(30.0, 0.0)) < 0.0);
    CHECK_FALSE(is_over(plot, place_at(plot, 1.0) + Point(30.0, 0.0)));
    CHECK_FALSE(is_over(plot, plot.corner_px - Point(5.0, 5.0)));
}

TEST_CASE("a curve is drawn to scale, in pieces between its gaps", "[curve-plot]") {
    const CurvePlot plot = plot_of({curve("elbow", {0.0, 20.0, kGap, 10.0, 10.0, kGap, 5.0})});
    const auto pieces = all<Polyline>(shapes_of(plot));
    REQUIRE(pieces.size() == 2); // the single value at the end is no line
    const Point zero = pieces[0].corners[0];
    const Point top = pieces[0].corners[1];
    const Point half = pieces[1].corners[0];
    CHECK(zero.x() == Approx(place_at(plot, 0.0).x()));
    CHECK(top.x() == Approx(place_at(plot, 1.0 / 6.0).x()));
    CHECK(half.y() == Approx(0.5 * (zero.y() + top.y()))); // 10 between 0 and 20
    CHECK(top.y() < zero.y());                             // more is higher
}

TEST_CASE("the cursor cuts every curve where the repetition stands, the pointer where it is",
          "[curve-plot]") {
    CurvePlot plot = plot_of({curve("elbow", {0.0, 20.0}, true), curve("hip", {kGap, kGap})});
    const auto dots_at = [&](double share) {
        const auto dots = all<Disc>(shapes_of(plot));
        return std::count_if(dots.begin(), dots.end(), [&](const Disc& dot) {
            return std::abs(dot.centre.x() - place_at(plot, share).x()) < 1e-9;
        });
    };
    CHECK(dots_at(0.25) == 1); // none on the gap
    CHECK(dots_at(0.75) == 0);
    plot.hover = 0.75;
    CHECK(dots_at(0.75) == 1);
    plot.cursor = 9.0; // beyond the end
    CHECK(dots_at(1.0) == 1);
}

TEST_CASE("the names of curves that end together stand apart, in the order of the curves",
          "[curve-plot]") {
    const CurvePlot plot = plot_of({curve("elbow", {5.0, 12.0}, true), curve("hip", {3.0, 12.2}),
                                    curve("knee", {1.0, 11.9}), curve("nothing", {kGap, kGap})});
    std::vector<Label> names;
    for (const Label& label : all<Label>(shapes_of(plot)))
        if (label.text == "elbow" || label.text == "hip" || label.text == "knee" ||
            label.text == "nothing")
            names.push_back(label);
    REQUIRE(names.size() == 3); // what is nowhere has no name
    std::sort(names.begin(), names.end(),
              [](const Label& a, const Label& b) { return a.at.y() < b.at.y(); });
    CHECK(names[0].text == "hip"); // the highest first
    CHECK(names[1].text == "elbow");
    CHECK(names[1].strong);
    CHECK(names[2].text == "knee");
    for (std::size_t i = 1; i < names.size(); ++i)
        CHECK_FALSE(room_of(names[i - 1], 1.0).overlaps(room_of(names[i], 1.0)));
}

TEST_CASE("a plot keeps to its room, its peak's words too", "[curve-plot]") {
    for (const double scale : {1.0, 1.6})
        for (const double peak_at : {0.0, 0.5, 1.0}) {
            CurvePlot plot = plot_of({curve("shoulder", {}, true)});
            for (int i = 0; i <= 10; ++i)
                plot.curves[0].values.push_back(18.0 - 15.0 * std::abs(0.1 * i - peak_at));
            plot.peak = "18.0 N·m at 80.8°";
            plot.text_scale = scale;
            plot.size_px = scale * Point(320.0, 220.0);
            INFO("scale " << scale << ", peak at " << peak_at);
            for (const Label& label : all<Label>(shapes_of(plot))) {
                INFO(label.text);
                const Rect room = room_of(label, scale);
                // Letters may reach a hair's breadth over the room that is reckoned for them.
                CHECK((room.low.array() >= plot.corner_px.array() - 4.0).all());
                CHECK((room.high.array() <= (plot.corner_px + plot.size_px).array() + 4.0).all());
            }
        }
}

TEST_CASE("a band is hatched between its edges only", "[curve-plot]") {
    CurvePlot plot = plot_of({curve("elbow", {10.0, 10.0}, true)});
    const std::size_t without = all<Line>(shapes_of(plot)).size();
    plot.band = PlotBand{{5.0, 5.0}, {15.0, 15.0}};
    const auto lines = all<Line>(shapes_of(plot));
    CHECK(lines.size() > without + 20);
    const auto hatch = std::find_if(lines.begin(), lines.end(), [](const Line& line) {
        return line.stroke.role == Role::effort;
    });
    REQUIRE(hatch != lines.end());
    // 10 of the 20 units that the scale spans.
    const double frame_px = 220.0 - 34.0 - 38.0; // without the words above and below
    CHECK(std::abs(hatch->from.y() - hatch->to.y()) == Approx(0.5 * frame_px));
    plot.band = PlotBand{{5.0}, {15.0}}; // of one place: nothing to hatch
    CHECK(all<Line>(shapes_of(plot)).size() == without);
}
