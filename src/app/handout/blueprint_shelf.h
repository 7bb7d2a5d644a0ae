#pragma once
// The blueprints at hand: the person's own, those that come with the program, and files that were
// opened. No window.

#include "publish/sheets/blueprint.h"

#include <filesystem>
#include <string>
#include <vector>

namespace steelyard::app {

/// Where blueprints are looked for.
struct BlueprintPlaces {
    std::filesystem::path own;                 ///< the person's folder; may be missing or empty
    std::filesystem::path shipped;             ///< folder
    std::vector<std::filesystem::path> opened; ///< single files
};

struct BlueprintShelf {
    std::vector<publish::Blueprint> blueprints; ///< opened ones, then the person's, then shipped
    std::vector<std::string> faults;            ///< files that cannot be read: a sentence each
};

/// Where the person's own blueprints are kept: a folder of setup::own_folder; empty when no home is
/// known.
std::filesystem::path own_blueprint_folder();

/// All blueprints. A broken file is a fault, not the end.
BlueprintShelf read_blueprint_shelf(const BlueprintPlaces& places);

/// Place of the blueprint of a file on the shelf; 0 when it is not there.
std::size_t place_on_shelf(const BlueprintShelf& shelf, const std::string& file);

} // namespace steelyard::app
