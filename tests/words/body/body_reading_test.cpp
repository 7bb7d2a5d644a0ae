#include "catch.h"
#include "setup/files/data_folder.h"
#include "setup/muscle/muscle_file.h"
#include "setup/setup.h"
#include "words/body/body_reading.h"

#include <algorithm>
#include <cmath>

using namespace steelyard;
using namespace steelyard::mechanics;

namespace {

std::vector<Hinge> every_hinge() {
    std::vector<Hinge> hinges;
    for (const HingeInfo& info : all_hinges())
        hinges.push_back(info.hinge);
    return hinges;
}

} // namespace

TEST_CASE("every shipped exercise can be read at its start, middle and end, and its sums add up",
          "[setup][body][muscle]") {
    const auto muscles = setup::shipped_muscles();
    REQUIRE(muscles);
    const auto listed = setup::list_setups(setup::data_folder() / "assets" / "setups" / "body");
    REQUIRE(listed);
    CHECK(listed->size() >= 30);
    for (const setup::SetupListing& one : *listed) {
        INFO(one.path.filename().string());
        REQUIRE(one.setup);
        const auto& body = std::get<setup::BodySetup>(*one.setup);
        for (const double progress : {0.0, 0.5, 1.0}) {
            const auto reading = words::read_body(body, *muscles, every_hinge(), progress);
            if (!reading)
                FAIL(reading.error().key + ": " + reading.error().expected);
            for (const words::HingeReading& hinge : reading->hinges) {
                CHECK(std::isfinite(hinge.muscle_Nm));
                double sum_Nm = 0.0;
                for (const words::ForceAtHinge& force : hinge.forces) {
                    CHECK((std::isfinite(force.arm.arm_m) && force.arm.arm_m >= 0.0));
                    sum_Nm += force.arm.torque_Nm;
                }
                // What is told of single forces, own weight and a frame's twist with it, makes up
                // the torque: equal but for rounding over some ten terms of up to 1000 N·m.
                CHECK_THAT(sum_Nm, WithinAbs(hinge.external_Nm, 1e-9));
                for (const MuscleReading& muscle : hinge.muscles.solution.muscles)
                    CHECK((std::isfinite(muscle.tension_N) && muscle.tension_N >= 0.0));
            }
        }
    }
}

TEST_CASE(
    "a setup that names muscles shows those with the main movers, and all where it names none",
    "[setup][body][muscle]") {
    const auto muscles = setup::shipped_muscles();
    REQUIRE(muscles);
    setup::BodySetup setup;
    CHECK(words::shown_muscles(setup, *muscles, Hinge::left_elbow_flexion).size() == 5);
    setup.muscles = {"biceps", "quadriceps"};
    const auto shown = words::shown_muscles(setup, *muscles, Hinge::left_elbow_flexion);
    CHECK(shown.size() == 4); // without the anconeus, a helper
    CHECK(std::none_of(shown.begin(), shown.end(),
                       [](const Muscle& muscle) { return muscle.name == "anconeus"; }));
    CHECK(words::shown_muscles(setup, *muscles, Hinge::right_hip_flexion).size() > 1);
}

TEST_CASE("a place that is not on the path is refused", "[setup][body][muscle]") {
    CHECK(words::read_body({}, {}, {}, 1.5).error().key == "progress");
    CHECK(words::read_body({}, {}, {}, std::nan("")).error().fault == Fault::not_finite);
}
