#pragma once
// What there is to choose from: the setups that come with the program, the person's own, and what
// was on the stage before.

#include "app/own/own_setups.h"
#include "setup/body/body_setup.h"
#include "setup/lever/lever_setup.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

enum class Origin {
    left_behind, ///< was on the stage, changed and not kept, when another was put there
    own,         ///< kept by the person in a file of theirs
    shipped,
};

/// A setup that can be chosen, and where it comes from.
template <typename Kind> struct Shelved {
    Kind setup;
    Origin origin = Origin::shipped;
    std::optional<OwnFile> file = std::nullopt; ///< of the person's own, when it stands in one
};

/// Those of one kind, in the order in which they are shown.
template <typename Kind> struct Shelf {
    std::vector<Shelved<Kind>> setups;
    std::vector<std::string> faults; ///< files that could not be read: a sentence each
};
using LeverShelf = Shelf<setup::LeverSetup>;
using ExerciseShelf = Shelf<setup::BodySetup>;

/// All setups of a kind in a folder. A broken file is a fault, not the end.
LeverShelf read_levers(const std::filesystem::path& folder);
ExerciseShelf read_exercises(const std::filesystem::path& folder);

/// The same shelf with the person's own before the others.
LeverShelf with_own(const OwnSetups& own, LeverShelf shelf);
ExerciseShelf with_own(const OwnSetups& own, ExerciseShelf shelf);

} // namespace steelyard::app
