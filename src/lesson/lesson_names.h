#pragma once
// What lesson files and the glossary both name: setups, and marks of the stage.

#include "lesson/lesson.h"
#include "setup/toml/toml_reader.h"

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::lesson {

/// Reads a list of marks of the stage.
StageMarks read_marks(setup::TomlReader& table, std::string_view key);

/// The file of a setup by its name, with or without its ending.
/// @return the file, or what was expected and the nearest name
tl::expected<std::filesystem::path, setup::InputError>
find_setup(const std::string& name, const std::vector<std::filesystem::path>& folders);

/// Reads a setup that comes with the program by its name.
tl::expected<setup::Setup, setup::InputError> named_setup(const std::string& name);

} // namespace steelyard::lesson
