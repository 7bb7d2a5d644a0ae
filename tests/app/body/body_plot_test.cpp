#include "app/body/body_plot.h"
#include "app/body/sample_body.h"
#include "catch.h"
#include "words/body/load_at_joint.h"

#include <cmath>
#include <sstream>

using namespace steelyard;
using namespace steelyard::app;
using mechanics::Hinge;

namespace {

BodyModel model_of(const std::string& name) {
    return make_body(exercise_named(name), known_muscles());
}

scene::CurvePlot plot_of(const BodyModel& model, PlotSubject subject = PlotSubject::torque,
                         setup::UnitSystem units = setup::UnitSystem::si) {
    return make_plot(model, subject, units, nullptr, 1.0);
}

std::vector<std::string> fields_of(const std::string& line) {
    std::vector<std::string> fields;
    std::istringstream in(line);
    for (std::string field; std::getline(in, field, ',');)
        fields.push_back(field);
    return fields;
}

} // namespace

TEST_CASE("the curve of an axis passes through the torque of the present pose", "[body-plot]") {
    BodyModel model = model_of("curl-dumbbell");
    for (const double progress : {0.0, 0.25, 0.75, 1.0}) { // places of the curve
        update(model, Scrub{progress});
        const scene::CurvePlot plot = plot_of(model);
        REQUIRE(plot.curves.size() == model.state.setup.axes.size());
        CHECK(plot.cursor == progress);
        for (std::size_t i = 0; i < plot.curves.size(); ++i)
            CHECK(std::abs(scene::value_at(plot.curves[i].values, progress)) ==
                  Approx(std::abs(model.solved.muscle(model.state.setup.axes[i]))));
    }
}

TEST_CASE("each torque is turned so that its peak is above zero, and the looked-at one is strong",
          "[body-plot]") {
    for (const char* name : {"curl-cable", "triceps-pushdown", "squat-bar-back", "side-bend"}) {
        BodyModel model = model_of(name);
        update(model, ChooseAxis{model.state.setup.axes.size() - 1});
        const scene::CurvePlot plot = plot_of(model);
        for (std::size_t i = 0; i < plot.curves.size(); ++i) {
            INFO(name << ", " << plot.curves[i].name);
            const auto& values = plot.curves[i].values;
            const auto peak = scene::peak_place(plot.curves[i]);
            REQUIRE(peak);
            CHECK(scene::value_at(values, *peak) >= 0.0);
            CHECK(plot.curves[i].strong == (i == model.state.chosen));
        }
    }
}

TEST_CASE("a plot in US units shows the same torque in foot-pounds", "[body-plot]") {
    const BodyModel model = model_of("curl-dumbbell");
    const scene::CurvePlot si = plot_of(model);
    const scene::CurvePlot us = plot_of(model, PlotSubject::torque, setup::UnitSystem::us);
    CHECK(si.unit == "N·m");
    CHECK(us.unit == "ft·lbf");
    // 1 ft·lbf = 0.3048 m × 0.45359237 kg × 9.80665 m/s² (yard and pound agreement of 1959).
    CHECK(us.curves[0].values[24] * 0.3048 * 0.45359237 * 9.80665 ==
          Approx(si.curves[0].values[24]));
}

TEST_CASE("marks along the range stand where the joint has that angle", "[body-plot]") {
    const BodyModel model = model_of("curl-dumbbell"); // the elbow goes from 5 to 135 degrees
    const auto ticks = plot_of(model).range_ticks;
    REQUIRE(ticks.size() == 4);
    CHECK(ticks[0].text == "30°");
    CHECK(ticks[0].at == Approx((30.0 - 5.0) / (135.0 - 5.0)));
    CHECK(ticks[3].text == "120°");
    CHECK(range_hinge(model) == Hinge::right_elbow_flexion);
}

TEST_CASE("an axis that the repetition leaves still is plotted over the joint that moves",
          "[body-plot]") {
    BodyModel model = model_of("curl-dumbbell");
    update(model, ChooseAxis{1});
    CHECK(model.axis() == Hinge::right_shoulder_flexion);
    CHECK(range_hinge(model) == Hinge::right_elbow_flexion);
}

TEST_CASE("muscles over the range are those of the chosen axis, with the joint's reaction",
          "[body-plot]") {
    const BodyModel model = model_of("curl-dumbbell");
    const scene::CurvePlot plot = plot_of(model, PlotSubject::muscles);
    REQUIRE(plot.curves.size() >= 3);
    CHECK(plot.curves.front().name == "all muscles");
    CHECK(plot.curves.back().name == "joint");
    const double at = model.progress;
    // The curve is straight between 49 places, the pull is not: within one part in a hundred.
    CHECK(scene::value_at(plot.curves.front().values, at) ==
          Approx(muscle_force(model).value()).epsilon(0.01));
    const auto advantage = plot_of(model, PlotSubject::advantage).curves.at(0).values;
    CHECK(scene::value_at(advantage, at) ==
          Approx(words::load_at_joint(model.solved, model.axis())->size_N() /
                 muscle_force(model).value())
              .epsilon(0.01));
}

TEST_CASE("an axis without known muscles has no curve of them", "[body-plot]") {
    const BodyModel model = model_of("kettlebell-bottom-up");
    REQUIRE(model.at_axis);
    CHECK(model.at_axis->solution.outcome == mechanics::MuscleOutcome::not_modelled);
    CHECK(plot_of(model, PlotSubject::muscles).curves.empty());
    CHECK(plot_of(model, PlotSubject::advantage).curves.empty());
    CHECK(plot_of(model, PlotSubject::torque).peak.find("N·m") != std::string::npos);
}

TEST_CASE("a spread is turned like the torque that it belongs to", "[body-plot]") {
    BodyModel model = model_of("curl-dumbbell");
    const auto& torque_Nm = model.curves.torque_Nm[0];
    scene::PlotBand band{torque_Nm, torque_Nm};
    const scene::CurvePlot plot =
        make_plot(model, PlotSubject::torque, setup::UnitSystem::si, &band, 1.0);
    REQUIRE(plot.band);
    for (std::size_t i = 0; i < torque_Nm.size(); ++i)
        CHECK(plot.band->low[i] == Approx(plot.curves[0].values[i]));
    CHECK_FALSE(
        make_plot(model, PlotSubject::load, setup::UnitSystem::si, &band, 1.0).band.has_value());
}

TEST_CASE("values under the pointer are told with their joints and units", "[body-plot]") {
    const BodyModel model = model_of("curl-dumbbell");
    const std::string told = values_at(model, PlotSubject::torque, setup::UnitSystem::si, 0.0);
    CHECK(told.rfind("at 5°", 0) == 0);
    CHECK(told.find("elbow ") != std::string::npos);
    CHECK(told.find("N·m") != std::string::npos);
}

TEST_CASE("curves taken away as numbers are the model's, place by place", "[body-plot]") {
    const BodyModel model = model_of("curl-dumbbell");
    std::istringstream text(curves_csv(model));
    std::string line;
    REQUIRE(std::getline(text, line));
    const std::vector<std::string> head = fields_of(line);
    CHECK(head[0] == "progress");
    CHECK(head[1] == "right_elbow_flexion_deg");
    CHECK(head[2] == "right_elbow_flexion_torque_Nm");
    std::size_t rows = 0;
    for (; std::getline(text, line); ++rows) {
        CHECK(line.back() == '\r'); // RFC 4180, section 2: lines end with CRLF
        const std::vector<std::string> fields = fields_of(line);
        REQUIRE(fields.size() == head.size());
        CHECK(std::stod(fields[0]) == Approx(model.curves.progress[rows]));
        CHECK(std::stod(fields[1]) == Approx(5.0 + 130.0 * model.curves.progress[rows]));
        CHECK(std::stod(fields[2]) == Approx(model.curves.torque_Nm[0][rows]));
    }
    CHECK(rows == model.curves.progress.size());
}
