#include "catch.h"
#include "scene/plot/sweep_plot.h"

#include <algorithm>

using namespace steelyard;
using namespace steelyard::scene;

namespace {

SweepPlot plot_of(std::vector<SweepCurve> curves) {
    SweepPlot plot;
    plot.title = "torque of the muscles";
    plot.curves = std::move(curves);
    plot.range = {"elbow flexion", "°", 10.0, 130.0};
    plot.frame = {{100.0, 100.0}, {600.0, 300.0}};
    return plot;
}

std::vector<Label> labels_of(const SweepPlot& plot) {
    std::vector<Shape> shapes;
    add_sweep_plot(plot, shapes);
    std::vector<Label> labels;
    for (const Shape& shape : shapes)
        if (const auto* label = std::get_if<Label>(&shape))
            labels.push_back(*label);
    return labels;
}

bool says(const std::vector<Label>& labels, const std::string& words) {
    return std::any_of(labels.begin(), labels.end(),
                       [&](const Label& label) { return label.text == words; });
}

} // namespace

TEST_CASE("ticks are round, inside their range, and about as many as asked for") {
    // Worked by hand: steps of 1, 2 or 5 times a power of ten.
    CHECK(round_ticks(0.0, 28.4, 5) == std::vector<double>{0.0, 10.0, 20.0});
    CHECK(round_ticks(0.0, 3330.0, 5) == std::vector<double>{0.0, 1000.0, 2000.0, 3000.0});
    CHECK(round_ticks(-20.0, 30.0, 6) == std::vector<double>{-20.0, -10.0, 0.0, 10.0, 20.0, 30.0});
    CHECK(round_ticks(5.0, 5.0, 5) == std::vector<double>{5.0});
    for (const double high : {0.001, 0.7, 1.0, 9.99, 123.0, 4.0e6}) {
        for (int most = 2; most < 12; ++most) {
            const std::vector<double> ticks = round_ticks(0.0, high, most);
            INFO(high << ", at most " << most);
            CHECK(ticks.size() <= static_cast<std::size_t>(most));
            CHECK(ticks.front() == 0.0);
            CHECK(ticks.back() <= high * (1.0 + 1.0e-9)); // rounding of the last multiple
        }
    }
}

TEST_CASE("names that would stand on each other are spread apart, in their order and in range") {
    CHECK(spread_apart({}, 10.0, 0.0, 100.0).empty());
    CHECK(spread_apart({20.0, 50.0}, 10.0, 0.0, 100.0) == std::vector<double>{20.0, 50.0});
    CHECK(spread_apart({50.0, 50.0, 52.0}, 10.0, 0.0, 100.0) ==
          std::vector<double>{50.0, 60.0, 70.0});
    CHECK(spread_apart({99.0, 99.0, 99.0}, 10.0, 0.0, 100.0) ==
          std::vector<double>{80.0, 90.0, 100.0});
    CHECK(spread_apart({-50.0}, 10.0, 0.0, 100.0) == std::vector<double>{0.0});
}

TEST_CASE("a curve passes through its values, from the left edge to the right, zero at the foot") {
    const SweepPlot plot = plot_of({{"elbow", {0.0, 20.0, 10.0}, {0.5, 20.0}}});
    std::vector<Shape> shapes;
    add_sweep_plot(plot, shapes);
    const auto found = std::find_if(shapes.begin(), shapes.end(), [](const Shape& shape) {
        return std::holds_alternative<Polyline>(shape);
    });
    REQUIRE(found != shapes.end());
    const auto& corners = std::get<Polyline>(*found).corners;
    REQUIRE(corners.size() == 3);
    // Ticks end at 20, so the frame of 200 px is 20 N·m high; rounding of doubles only.
    CHECK((corners[0] - Point(100.0, 300.0)).norm() < 1.0e-9);
    CHECK((corners[1] - Point(350.0, 100.0)).norm() < 1.0e-9);
    CHECK((corners[2] - Point(600.0, 200.0)).norm() < 1.0e-9);
}

TEST_CASE("a plot states its quantity, its range, each name and each peak") {
    const auto labels = labels_of(plot_of(
        {{"elbow", {0.0, 20.0, 10.0}, {0.5, 20.0}}, {"shoulder", {5.0, 5.0, 8.0}, {1.0, 8.0}}}));
    CHECK(says(labels, "torque of the muscles (N·m)"));
    CHECK(says(labels, "elbow flexion"));
    CHECK(says(labels, "elbow"));
    CHECK(says(labels, "shoulder"));
    CHECK(says(labels, "20.0\u00A0N·m at 70°"));
    CHECK(says(labels, "8.00\u00A0N·m at 130°"));
    CHECK(says(labels, "20°"));
    CHECK_FALSE(says(labels, "0°")); // before the range begins
}

TEST_CASE("curves that lie on each other have their peak told once") {
    const SweepCurve curve{"elbow", {0.0, 20.0, 10.0}, {0.5, 20.0}};
    const auto labels = labels_of(plot_of({curve, curve, curve}));
    CHECK(std::count_if(labels.begin(), labels.end(), [](const Label& label) {
              return label.text.find("20.0") != std::string::npos;
          }) == 1);
}

TEST_CASE("a level curve has its size throughout, and no peak") {
    const RangeScale range{"elbow flexion", "°", 10.0, 130.0};
    const auto text = [&](const SweepCurve& curve) {
        return marked_text(curve, setup::Dimension::torque, setup::UnitSystem::si, range);
    };
    CHECK(text({"elbow", {11.7, 11.7, 11.7}, {0.3, 11.7}}) == "11.7\u00A0N·m throughout");
    CHECK(text({"elbow", {0.0, 11.7, 3.0}, {0.5, 11.7}}) == "11.7\u00A0N·m at 70°");
    CHECK(text({"elbow", {0.0, 0.0}, {0.5, 0.0}}) == "0\u00A0N·m");
}

TEST_CASE("a curve of nothing and a plot without curves are drawn without harm") {
    CHECK(says(labels_of(plot_of({{"elbow", {0.0, 0.0}, {0.0, 0.0}}})), "elbow"));
    CHECK_FALSE(labels_of(plot_of({})).empty());
}

TEST_CASE("no two words of a plot stand on each other") {
    const auto labels = labels_of(plot_of({{"elbow", {0.0, 28.0, 20.0}, {0.5, 28.0}},
                                           {"shoulder", {0.0, 27.0, 20.0}, {0.5, 27.0}},
                                           {"low back", {1.0, 26.0, 19.9}, {0.52, 26.0}},
                                           {"hip", {0.0, 3.0, 1.0}, {0.5, 3.0}}}));
    for (std::size_t i = 0; i < labels.size(); ++i) {
        for (std::size_t j = i + 1; j < labels.size(); ++j) {
            INFO(labels[i].text << " and " << labels[j].text);
            CHECK_FALSE(room_of(labels[i], 1.0).overlaps(room_of(labels[j], 1.0)));
        }
    }
}
