#pragma once
// A shipped exercise held at one place of its path, and seen as its setup says.

#include "catch.h"
#include "scene/body/body_stage.h"
#include "setup/body/body_setup.h"
#include "setup/setup.h"

#include <string>

namespace steelyard::scene {

struct PosedExercise {
    setup::BodySetup setup;
    mechanics::BodyCase here;
    mechanics::BodyResult result;
    BodyStage stage;

    PosedExercise(const std::string& name, double progress) {
        const auto read = setup::read_setup(std::string(STEELYARD_SOURCE_DIR) +
                                            "/assets/setups/body/" + name + ".setup.toml");
        REQUIRE(read);
        setup = std::get<setup::BodySetup>(*read);
        here = setup.exercise.body_case;
        if (setup.exercise.path)
            here.pose = mechanics::pose_at(here.pose, *setup.exercise.path, progress);
        const auto solved = mechanics::solve_body(here);
        REQUIRE(solved);
        result = *solved;
        stage = fit_body(here, {result}, camera_of(setup.view), {940.0, 720.0}, {});
    }
};

} // namespace steelyard::scene
