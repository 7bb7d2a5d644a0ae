#pragma once
// The setups that come with the program, and those that were opened.

#include "setup/body/body_setup.h"
#include "setup/lever/lever_setup.h"

#include <filesystem>
#include <string>
#include <vector>

namespace steelyard::app {

struct Shelf {
    std::vector<setup::LeverSetup> levers; ///< plain ones first
    std::vector<setup::BodySetup> bodies;
    std::vector<std::string> faults; ///< files that could not be read: a sentence each
};

/// All setups of a folder. A broken file is a fault, not the end.
Shelf read_shelf(const std::filesystem::path& folder);

} // namespace steelyard::app
