// Moment arms given by hand at the chosen axis of the stage.

#include "app/body/muscle_arms.h"
#include "app/body/sample_body.h"
#include "catch.h"

#include <algorithm>

using namespace steelyard;
using namespace steelyard::app;

namespace {

BodyModel stage(const std::string& name) {
    return make_body(exercise_named(name), known_muscles(),
                     setup::shipped_segment_tables().value());
}

void give(BodyModel& model, const MuscleArm& arm, double size_m) {
    update(model, EditExercise{with_arm(model, arm, size_m), 0});
}

} // namespace

TEST_CASE("Arms given to all muscles of a joint share its torque as textbooks divide it",
          "[muscle-arms]") {
    BodyModel model = stage("curl-dumbbell");
    for (const MuscleArm& arm : muscle_arms(model)) {
        CHECK_FALSE(arm.given);
        give(model, arm, 0.04);
        REQUIRE(model.message.empty());
    }
    for (const MuscleArm& arm : muscle_arms(model)) {
        CHECK(arm.given);
        CHECK(arm.size_m == Approx(0.04));
    }
    // Force = torque / moment arm: all pull with the same arm, those that help.
    double sum_Nm = 0.0;
    for (const auto& muscle : model.at_axis->solution.muscles)
        sum_Nm += muscle.tension_N * 0.04;
    CHECK(sum_Nm == Approx(std::abs(model.solved.muscle(model.axis()))));
}

TEST_CASE(
    "A muscle that is given no arm does not pull, and turns the same way when it is given one",
    "[muscle-arms]") {
    BodyModel model = stage("triceps-pushdown");
    const MuscleArm first = muscle_arms(model).front();
    const double before_N = model.at_axis->solution.muscles.front().arm_m;
    give(model, first, 0.0);
    CHECK(muscle_arms(model).front().size_m == 0.0);
    give(model, first, first.size_m);
    CHECK(model.at_axis->solution.muscles.front().arm_m == Approx(before_N));
    CHECK(model.state.setup.person.arms.size() == 1);
}

TEST_CASE("Arms go back to those on file, by a word or by undo", "[muscle-arms]") {
    BodyModel model = stage("curl-dumbbell");
    const double before_m = muscle_arms(model).front().size_m;
    give(model, muscle_arms(model).front(), 0.07);
    update(model, UndoBody{});
    CHECK(muscle_arms(model).front().size_m == Approx(before_m));
    update(model, RedoBody{});
    update(model, EditExercise{with_arms_on_file(model), 0});
    CHECK(muscle_arms(model).front().size_m == Approx(before_m));
    CHECK(model.state.setup.person.arms.empty());
}

TEST_CASE("An arm that no person has is refused in a sentence", "[muscle-arms]") {
    BodyModel model = stage("curl-dumbbell");
    give(model, muscle_arms(model).front(), 0.6);
    CHECK_THAT(model.message, ContainsSubstring("0 to 50 cm"));
    CHECK(model.state.setup.person.arms.empty());
}
