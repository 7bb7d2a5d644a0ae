#pragma once
// What a file is that was named at the start or dropped on the window.

#include "lesson/lesson.h"
#include "setup/setup.h"

#include <filesystem>
#include <variant>

namespace steelyard::app {

/// A lesson and where it stands.
struct LessonFile {
    std::filesystem::path path;
    lesson::Lesson lesson;
};
/// A blueprint that can be read, and where it stands.
struct BlueprintFile {
    std::filesystem::path path;
};
/// A learner's record as it was exported; read where the record is.
struct RecordFile {
    std::filesystem::path path;
};
using OpenedFile = std::variant<setup::Setup, LessonFile, BlueprintFile, RecordFile>;

/// Reads a lesson or a blueprint from a file with the ending of such, knows an exported record by
/// its ending, and reads a setup from any other.
tl::expected<OpenedFile, setup::InputError> read_opened_file(const std::filesystem::path& path);

} // namespace steelyard::app
