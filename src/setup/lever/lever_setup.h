#pragma once
// A lever as a file: reading, and writing back exactly. The format is taught in
// assets/setups/README.md.

#include "mechanics/lever/lever.h"
#include "setup/lever/limb_shape.h"
#include "setup/setup_head.h"

#include <tl/expected.hpp>

#include <filesystem>
#include <string>
#include <string_view>

namespace steelyard::setup {

/// A lever with its introduction. The names of loads and effort are in the lever itself.
struct LeverSetup {
    SetupHead head;
    mechanics::Lever lever;
    std::optional<LimbShape> limb = std::nullopt; ///< what it is drawn as; empty = a beam
    SourceNotes source;
};

/// Reads a lever from a document of kind "lever". A setup that is returned can be solved.
tl::expected<LeverSetup, InputError> lever_setup_of(const TomlDocument& document);

/// Reads a lever from a text.
/// @param file  the name that errors are to give
tl::expected<LeverSetup, InputError> parse_lever_setup(std::string_view text,
                                                       const std::string& file);

/// Reads a lever from a file.
tl::expected<LeverSetup, InputError> read_lever_setup(const std::filesystem::path& path);

/// The setup as the text of a file. Reading it again gives bit for bit the same values; values
/// that are still the author's keep the author's text and unit. Comments are not kept.
std::string write_lever_setup(const LeverSetup& setup);

} // namespace steelyard::setup
