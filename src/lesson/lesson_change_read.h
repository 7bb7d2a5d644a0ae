#pragma once
// Reads what a step of a lesson file says about changes of its setup.

#include "lesson/lesson.h"
#include "setup/toml/toml_reader.h"

#include <optional>

namespace steelyard::lesson {

/// Reads a [[step.change]].
LessonChange read_change(setup::TomlReader& table);

/// Reads [step.move] of a step, if it has one.
std::optional<LessonMove> read_move(setup::TomlReader& step);

} // namespace steelyard::lesson
