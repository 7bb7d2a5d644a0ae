#include "catch.h"
#include "setup/muscle/muscle_file.h"
#include "setup/setup.h"
#include "words/body/body_reading.h"
#include "words/body/body_steps.h"

#include <cmath>

using namespace steelyard;
using namespace steelyard::setup;
using namespace steelyard::words;

namespace {

/// Every shipped exercise, solved where its first axis works hardest, with the muscles of each
/// axis.
template <typename Do> void for_each_axis(Do act) {
    const auto muscles = shipped_muscles().value();
    const auto listings =
        list_setups(std::string(STEELYARD_SOURCE_DIR) + "/assets/setups/body").value();
    for (const SetupListing& listing : listings) {
        REQUIRE(listing.setup);
        const auto& setup = std::get<BodySetup>(*listing.setup);
        mechanics::BodyCase posed = setup.exercise.body_case;
        if (setup.exercise.path)
            posed.pose =
                mechanics::pose_at(posed.pose, *setup.exercise.path, hardest_place(setup).value());
        const auto result = mechanics::solve_body(posed);
        REQUIRE(result);
        for (const mechanics::Hinge axis : setup.axes) {
            const auto listed = shown_muscles(setup, muscles, axis);
            const auto rule = mechanics::usual_sharing(listed);
            const auto at = mechanics::solve_muscles_at(posed, *result, axis, listed, rule).value();
            INFO(setup.head.name << ", " << mechanics::hinge_info(axis).name);
            act(ExplainedHinge{posed, *result, axis, listed, rule, &at});
        }
    }
}

} // namespace

TEST_CASE("The terms of a joint's torque add up to what the solver says", "[body-steps]") {
    int axes = 0;
    for_each_axis([&](const ExplainedHinge& at) {
        ++axes;
        const auto steps = body_steps(BodyQuantity::torque, at, std::nullopt, UnitSystem::si);
        REQUIRE(steps.size() >= 2);
        double sum_Nm = 0.0;
        for (std::size_t i = 0; i + 2 < steps.size(); ++i)
            if (steps[i].dimension ==
                Dimension::torque) // a rope's tension stands before its torque
                sum_Nm += steps[i].value_SI;
        // The explainer sums single r × F, the solver goes recursively through the tree: two ways
        // to one number, equal but for rounding over some twenty terms of up to 1000 N·m.
        CHECK(sum_Nm == Approx(at.result.external(at.hinge)).margin(1e-6));
        CHECK(steps.back().value_SI == at.result.muscle(at.hinge));
    });
    CHECK(axes > 80);
}

TEST_CASE("Every muscle's pull is its torque by its arm, and all of them are the sum",
          "[body-steps]") {
    int balanced = 0;
    for_each_axis([&](const ExplainedHinge& at) {
        const auto steps = body_steps(BodyQuantity::muscles, at, std::nullopt, UnitSystem::si);
        REQUIRE_FALSE(steps.empty());
        if (at.muscles->solution.outcome != mechanics::MuscleOutcome::balanced) {
            CHECK(steps.back().value_SI == 0.0); // words, or the sum of nothing
            return;
        }
        ++balanced;
        double sum_N = 0.0;
        for (const mechanics::MuscleReading& muscle : at.muscles->solution.muscles)
            sum_N += muscle.tension_N;
        CHECK(steps.back().value_SI == Approx(sum_N));
    });
    CHECK(balanced > 20);
}

TEST_CASE("The joint's reaction is the root of its parts", "[body-steps]") {
    int known = 0;
    for_each_axis([&](const ExplainedHinge& at) {
        const auto steps =
            body_steps(BodyQuantity::joint_reaction, at, std::nullopt, UnitSystem::us);
        if (at.muscles == nullptr || !at.muscles->solution.joint_reaction_N) {
            CHECK(steps.size() == 1);
            return;
        }
        ++known;
        REQUIRE(steps.size() == 4);
        CHECK(std::hypot(steps[0].value_SI, steps[1].value_SI, steps[2].value_SI) ==
              Approx(steps[3].value_SI));
        CHECK(steps[3].result.find("lbf") != std::string::npos);
    });
    CHECK(known > 5);
}
