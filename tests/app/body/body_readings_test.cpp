#include "app/body/body_readings.h"
#include "app/body/sample_body.h"
#include "catch.h"
#include "mechanics/constants.h"
#include "words/body/body_words.h"

#include <algorithm>
#include <cmath>

using namespace steelyard;
using namespace steelyard::app;

namespace {

BodyModel model_of(const std::string& name) {
    return make_body(exercise_named(name), known_muscles());
}

const BodyRow& row(const BodyReadings& readings, words::BodyQuantity id) {
    const auto found = std::find_if(readings.rows.begin(), readings.rows.end(),
                                    [id](const BodyRow& one) { return one.id == id; });
    REQUIRE(found != readings.rows.end());
    return *found;
}

} // namespace

TEST_CASE("muscles are set beside the load on their own joint, not the other hand's too",
          "[body-readings]") {
    const BodyModel model = model_of("lateral-raise-straight");
    const BodyReadings readings = read_axes(model, setup::UnitSystem::si);
    REQUIRE(readings.pair);
    CHECK(readings.pair->load_N == Approx(5.0 * mechanics::kStandardGravity));
    CHECK(readings.pair->muscles_N == muscle_force(model).value());
}

TEST_CASE("the window names the rotation that the muscles must give, as the terminal does",
          "[body-readings]") {
    BodyModel model = model_of("lateral-raise-bent");
    const auto rotation = mechanics::Hinge::right_shoulder_rotation;
    const auto& axes = model.state.setup.axes;
    const auto at = std::find(axes.begin(), axes.end(), rotation);
    REQUIRE(at != axes.end());
    update(model, ChooseAxis{static_cast<std::size_t>(at - axes.begin())});
    const BodyReadings readings = read_axes(model, setup::UnitSystem::si);
    const std::string asked(words::asked_of_muscles(rotation, model.solved.muscle(rotation)));
    CHECK(asked == "external rotation");
    CHECK(row(readings, words::BodyQuantity::torque).name == "Torque, " + asked);
    CHECK(readings.sentence.find("internal") == std::string::npos);
    for (const BodyBar& bar : readings.bars)
        CHECK(bar.both.name.find("internal") == std::string::npos);
}

TEST_CASE("headline and bars set both hips against the low back, the rows are of each hip",
          "[body-readings]") {
    const BodyReadings readings = read_axes(model_of("hinge-bar-near"), setup::UnitSystem::si);
    CHECK(readings.headline == "both hips");
    CHECK(readings.sentence.find("at the low back") != std::string::npos);
    CHECK(readings.bars[0].both.name == "both hips");
    CHECK(readings.bars[0].share == 1.0);
    CHECK(readings.bars[1].both.name == "low back");
    CHECK(readings.both_sides);
    CHECK(readings.at == "At each hip, flexion");
    CHECK(row(readings, words::BodyQuantity::torque_of_both).name == "Both hips together");
}

TEST_CASE("a bar tells one side as a part of both, and a joint of the middle as a whole",
          "[body-readings]") {
    const BodyReadings readings = read_axes(model_of("hinge-bar-near"), setup::UnitSystem::si);
    const BodyBar& hips = readings.bars[0];
    CHECK(hips.one.name == "each hip");
    CHECK(hips.part == Approx(0.5)); // the lifter stands evenly on both feet
    CHECK(hips.one.value == row(readings, words::BodyQuantity::torque).value);
    const BodyBar& back = readings.bars[1];
    CHECK(back.one.name == back.both.name);
    CHECK(back.one.value == back.both.value);
    CHECK(back.part == 1.0);
}

TEST_CASE("a joint of a leg that the ground carries shows the ground's arm, and no load's",
          "[body-readings]") {
    const BodyModel model = model_of("hinge-bar-near");
    const BodyReadings readings = read_axes(model, setup::UnitSystem::si);
    const BodyRow& arm = row(readings, words::BodyQuantity::load_arm);
    CHECK(arm.name == "Moment arm, ground's push");
    CHECK(arm.role == scene::Role::reaction);
    // Arm, push and the leg's own weight make up the torque that is shown.
    double sum_Nm = 0.0;
    for (std::size_t i = 0; i < model.solved.forces.size(); ++i)
        if (mechanics::acts_distally(model.solved.forces[i], model.axis()))
            sum_Nm += mechanics::arm_of(model.solved, i, model.axis()).torque_Nm;
    sum_Nm += mechanics::weight_arm(model.posed, model.solved, model.axis()).torque_Nm;
    CHECK(-sum_Nm == Approx(model.solved.muscle(model.axis())).margin(1e-6));
}

TEST_CASE("the rows say which of a joint's motions they are about", "[body-readings]") {
    CHECK(read_axes(model_of("lateral-raise-leaning"), setup::UnitSystem::si).at ==
          "At the shoulder, abduction");
    CHECK(read_axes(model_of("lateral-raise-bent"), setup::UnitSystem::si).at ==
          "At the shoulder abduction");
    CHECK(read_axes(model_of("curl-dumbbell"), setup::UnitSystem::si).at == "At the elbow");
}

TEST_CASE("equal torques are said to be the same, not 100 % of one another", "[body-readings]") {
    // The upper arm hangs straight down: a level forearm has the same torque about the elbow, the
    // shoulder and the low back, but for the weight of the body's other parts.
    BodyModel model = model_of("curl-dumbbell");
    const double elbow_Nm = std::abs(model.solved.muscle(model.state.setup.axes[0]));
    const double shoulder_Nm = std::abs(model.solved.muscle(model.state.setup.axes[1]));
    REQUIRE(elbow_Nm == Approx(shoulder_Nm).epsilon(0.004));
    const std::string sentence = read_axes(model, setup::UnitSystem::si).sentence;
    CHECK(sentence.find("the same at") != std::string::npos);
    CHECK(sentence.find("100 %") == std::string::npos);
}

TEST_CASE("beside the muscles' pull stands what their moment arms rest on", "[body-readings]") {
    CHECK(read_axes(model_of("curl-dumbbell"), setup::UnitSystem::si).basis.find("measured") !=
          std::string::npos);
    CHECK(read_axes(model_of("kettlebell-bottom-up"), setup::UnitSystem::si).basis.empty());
}

TEST_CASE("where the movers are not modelled the column says so and why, and shows no force",
          "[body-readings]") {
    const BodyReadings readings =
        read_axes(model_of("kettlebell-bottom-up"), setup::UnitSystem::si);
    CHECK(row(readings, words::BodyQuantity::muscles).value == "not modelled");
    CHECK(row(readings, words::BodyQuantity::joint_reaction).value == "not known");
    CHECK(readings.why_no_force.find("carpi") != std::string::npos);
    CHECK_FALSE(readings.pair);
}
