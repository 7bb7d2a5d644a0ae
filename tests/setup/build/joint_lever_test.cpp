// One joint of an exercise as a lever for the bench: its torque stays the body's own.

#include "catch.h"
#include "mechanics/lever/lever_solve.h"
#include "mechanics/range/pose_path.h"
#include "setup/build/joint_lever.h"
#include "setup/muscle/muscle_file.h"
#include "setup/setup.h"

#include <cmath>

using namespace steelyard::setup;
namespace mechanics = steelyard::mechanics;

namespace {

std::vector<BodySetup> shipped() {
    const auto listed = list_setups(std::string(STEELYARD_SOURCE_DIR) + "/assets/setups/body");
    REQUIRE(listed);
    std::vector<BodySetup> all;
    for (const SetupListing& one : *listed) {
        REQUIRE(one.setup);
        all.push_back(std::get<BodySetup>(*one.setup));
    }
    return all;
}

/// An exercise half-way along its path, solved.
struct Posed {
    mechanics::BodyCase body_case;
    mechanics::BodyResult solved;
};

Posed half_way(const BodySetup& setup) {
    Posed posed{setup.exercise.body_case, {}};
    if (setup.exercise.path)
        posed.body_case.pose = mechanics::pose_at(posed.body_case.pose, *setup.exercise.path, 0.5);
    posed.solved = mechanics::solve_body(posed.body_case).value();
    return posed;
}

} // namespace

TEST_CASE("the lever of a joint asks for the joint's own torque, in every shipped exercise",
          "[build][lever]") {
    int made_levers = 0;
    for (const BodySetup& setup : shipped()) {
        const Posed posed = half_way(setup);
        for (const mechanics::Hinge hinge : setup.axes) {
            CAPTURE(setup.head.name, mechanics::hinge_info(hinge).name);
            const auto made = lever_of_joint(setup, posed.body_case, posed.solved, hinge, nullptr);
            const double upright = std::abs(posed.solved.placement.axis(hinge).y());
            if (!made) {
                CHECK(upright > 0.3); // only what stands nearly upright, or is seen end-on
                continue;
            }
            ++made_levers;
            const auto solved = mechanics::solve_lever(made->lever);
            REQUIRE(solved);
            REQUIRE(solved->effort_N);
            // The torque of the loads in the plane is the body's own, to rounding.
            CHECK(std::abs(solved->torque_load_Nm) ==
                  Approx(std::abs(posed.solved.muscle(hinge))).margin(1e-6));
            CHECK(*solved->effort_N >= -1e-9); // the muscle is drawn on the side that holds
            const auto again = parse_lever_setup(write_lever_setup(*made), "again");
            CHECK(again);
        }
    }
    CHECK(made_levers > 100);
}

TEST_CASE("a muscle whose line is known pulls along it, one known by its arm has that arm",
          "[build][lever]") {
    const auto muscles = shipped_muscles();
    REQUIRE(muscles);
    int with_line = 0;
    int with_arm = 0;
    for (const BodySetup& setup : shipped()) {
        const Posed posed = half_way(setup);
        for (const mechanics::Hinge hinge : setup.axes)
            for (const mechanics::Muscle& muscle : mechanics::muscles_at(*muscles, hinge)) {
                const auto pull =
                    mechanics::pull_on_body(muscle, posed.body_case, posed.solved, hinge);
                if (!pull || std::abs(pull->arm_m) < 5e-3)
                    continue;
                const auto made =
                    lever_of_joint(setup, posed.body_case, posed.solved, hinge, &*pull);
                if (!made)
                    continue;
                CAPTURE(setup.head.name, muscle.name);
                const auto solved = mechanics::solve_lever(made->lever);
                REQUIRE(solved);
                CHECK(made->lever.effort.name == muscle.name);
                // A line seen along the axis is drawn a little shorter, never longer; the arm of
                // one that was bent around the joint is that of its last straight piece.
                if (!pull->line) {
                    ++with_arm;
                    CHECK(solved->effort.arm_m == Approx(std::abs(pull->arm_m)).epsilon(1e-6));
                } else {
                    ++with_line;
                }
            }
    }
    CHECK(with_arm > 10);
    CHECK(with_line > 10);
}
