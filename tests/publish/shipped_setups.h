#pragma once
// The setups that come with the program.

#include "catch.h"
#include "setup/setup.h"

#include <filesystem>
#include <string>
#include <vector>

/// All of one kind in a folder within assets/setups, in the order of their names.
template <typename Kind> std::vector<Kind> shipped_setups(const std::string& within) {
    const auto listed = steelyard::setup::list_setups(std::filesystem::path(STEELYARD_SOURCE_DIR) /
                                                      "assets/setups" / within);
    REQUIRE(listed);
    std::vector<Kind> setups;
    for (const steelyard::setup::SetupListing& one : *listed) {
        REQUIRE(one.setup);
        setups.push_back(std::get<Kind>(*one.setup));
    }
    return setups;
}

inline std::vector<steelyard::setup::BodySetup> shipped_bodies() {
    return shipped_setups<steelyard::setup::BodySetup>("body");
}

inline std::vector<steelyard::setup::LeverSetup> shipped_levers() {
    return shipped_setups<steelyard::setup::LeverSetup>("");
}

/// One of a kind by the name of its file.
template <typename Kind> Kind shipped_setup(const std::string& file) {
    const auto setup = steelyard::setup::read_setup(std::filesystem::path(STEELYARD_SOURCE_DIR) /
                                                    "assets/setups" / (file + ".setup.toml"));
    REQUIRE(setup);
    return std::get<Kind>(*setup);
}
