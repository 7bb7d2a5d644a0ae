#pragma once
// The exercises that come with the program, for tests of the body's stage.

#include "catch.h"
#include "setup/muscle/muscle_file.h"
#include "setup/setup.h"

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

namespace steelyard::app {

inline const std::vector<mechanics::Muscle>& known_muscles() {
    static const std::vector<mechanics::Muscle> known = setup::shipped_muscles().value();
    return known;
}

inline setup::BodySetup exercise_named(const std::string& name) {
    const auto setup = setup::read_setup(std::string(STEELYARD_SOURCE_DIR) +
                                         "/assets/setups/body/" + name + ".setup.toml");
    REQUIRE(setup);
    return std::get<setup::BodySetup>(*setup);
}

inline std::vector<setup::BodySetup> shipped_exercises() {
    std::vector<std::filesystem::path> paths;
    for (const auto& entry : std::filesystem::directory_iterator(std::string(STEELYARD_SOURCE_DIR) +
                                                                 "/assets/setups/body"))
        paths.push_back(entry.path());
    std::sort(paths.begin(), paths.end());
    std::vector<setup::BodySetup> exercises;
    for (const auto& path : paths) {
        const auto setup = setup::read_setup(path);
        REQUIRE(setup);
        exercises.push_back(std::get<setup::BodySetup>(*setup));
    }
    return exercises;
}

} // namespace steelyard::app
