#pragma once
// Setups of every kind: reading one without knowing its kind, and finding those in a folder.

#include "setup/body/body_setup.h"
#include "setup/lever/lever_setup.h"

#include <tl/expected.hpp>

#include <filesystem>
#include <string_view>
#include <variant>
#include <vector>

namespace steelyard::setup {

/// Ending of the names of setup files.
inline constexpr std::string_view kSetupEnding = ".setup.toml";

using Setup = std::variant<LeverSetup, BodySetup>;

/// How a setup introduces itself, whatever its kind.
const SetupHead& head_of(const Setup& setup);

/// Reads a setup of any kind from a document, which may be a table of a larger one.
tl::expected<Setup, InputError> setup_of(const TomlDocument& document);

/// Reads a setup of any kind from a file; its key `kind` says which. Bodies use the segment tables
/// that come with the program.
tl::expected<Setup, InputError> read_setup(const std::filesystem::path& path);

/// The same from a text.
/// @param file  the name that errors are to give
tl::expected<Setup, InputError> parse_setup(std::string_view text, const std::string& file);

/// The setup as the text of a file, see write_lever_setup.
std::string write_setup(const Setup& setup);

/// A file of a folder: a setup, or what is wrong with it.
struct SetupListing {
    std::filesystem::path path;
    tl::expected<Setup, InputError> setup;
};

/// All setup files of a folder, those that can be read first, in their order and then by name; the
/// broken ones stand at the end with their errors.
/// @return the listing, or why the folder cannot be read
tl::expected<std::vector<SetupListing>, InputError>
list_setups(const std::filesystem::path& folder);

} // namespace steelyard::setup
