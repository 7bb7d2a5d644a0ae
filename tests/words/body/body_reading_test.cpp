#include "catch.h"
#include "setup/body/segment_table_file.h"
#include "setup/files/data_folder.h"
#include "setup/muscle/muscle_file.h"
#include "setup/setup.h"
#include "words/body/body_reading.h"
#include "words/body/muscle_credit.h"

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

TEST_CASE("College Physics 2e, example 9.4: the forearm with the book's masses and moment arm",
          "[body][muscle][oracle]") {
    // A level forearm of 2.50 kg, its centre 16.0 cm from the elbow; 4.00 kg at 38.0 cm; biceps at
    // 4.00 cm, alone and straight up: 470 N, and 407 N down on the elbow. The book has no hand and
    // no other flexor: a mass of 0, and moment arms of 0.
    const auto setup = setup::parse_body_setup(R"(kind = "body"
name = "Forearm"
description = "As the textbook has it."
axes = ["right_elbow_flexion"]
gravity = "9.80 m/s²"
[body]
sex = "male"
height = "1.75 m"
mass = "75 kg"
[[body.measured]]
part = "forearm"
length = "40 cm"
mass = "2.50 kg"
centre = 0.4
[[body.measured]]
part = "hand"
mass = "0 kg"
[[body.muscle_arm]]
muscle = "biceps"
hinge = "elbow_flexion"
turns = "flexion"
arm = "4.00 cm"
[[body.muscle_arm]]
muscle = "brachialis"
hinge = "elbow_flexion"
turns = "flexion"
arm = 0
[[body.muscle_arm]]
muscle = "brachioradialis"
hinge = "elbow_flexion"
turns = "flexion"
arm = 0
[pose]
right_elbow_flexion = 90
[[resistance]]
kind = "cuff"
at = { segment = "right_forearm", along = 0.95 }
mass = "4.00 kg"
[support]
held = "pelvis"
)",
                                               "forearm", setup::shipped_segment_tables().value());
    REQUIRE(setup.has_value());
    const auto reading = words::read_body(*setup, setup::shipped_muscles().value(),
                                          {Hinge::right_elbow_flexion}, 0.0);
    REQUIRE(reading.has_value());
    const words::HingeReading& elbow = reading->hinges.front();
    double pull_N = 0.0;
    for (const MuscleReading& muscle : elbow.muscles.solution.muscles)
        pull_N += muscle.tension_N;
    CHECK_THAT(pull_N, WithinAbs(470.0, 0.5));
    CHECK_THAT(pull_N, WithinAbs(470.40, 0.005));
    CHECK(words::basis_sentence(elbow.listed, elbow.muscles) ==
          "Moment arms of the muscles: given by hand.");
}
