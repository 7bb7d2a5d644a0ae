#pragma once
// Resistances in files: [[resistance]] tables of a body setup.

#include "mechanics/resistance/resistance.h"
#include "setup/setup_head.h"

#include <string>
#include <string_view>
#include <vector>

namespace steelyard::setup {

/// Reads all [[resistance]] tables of a document and takes notes of their values.
std::vector<mechanics::Resistance> read_resistances(TomlReader& top, SourceNotes& source);

/// A resistance as a [[resistance]] table.
/// @param index  its place in the setup
std::string write_resistance(const mechanics::Resistance& resistance, std::size_t index,
                             const SourceNotes& source, UnitSystem units);

} // namespace steelyard::setup
