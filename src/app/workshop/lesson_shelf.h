#pragma once
// The lessons at hand: those that come with the program, and the person's own.

#include "setup/lesson.h"

#include <filesystem>
#include <string>
#include <vector>

namespace steelyard::app {

struct ShelvedLesson {
    setup::Lesson lesson;
    std::filesystem::path path; ///< its file
    bool own = false;           ///< the person's: may be changed
};

struct LessonShelf {
    std::vector<ShelvedLesson> lessons;
    std::vector<std::string> faults; ///< files that could not be read: a sentence each
};

/// Where the person's own lessons are kept: $XDG_DATA_HOME/steelyard/lessons, else
/// ~/.local/share/steelyard/lessons; empty when no home is known.
/// Source: XDG Base Directory Specification.
std::filesystem::path own_lesson_folder();

/// All lessons, the person's own first.
LessonShelf read_lesson_shelf(const std::filesystem::path& shipped_folder,
                              const std::filesystem::path& own_folder);

/// Writes a lesson whole or not at all; the folder is made if it is not there.
/// @return why it could not be written; empty when it was
std::string save_lesson(const setup::Lesson& lesson, const std::filesystem::path& path);

/// A file for a new lesson of this name: letters and digits of the name, and a number if there is
/// one of that name already.
std::filesystem::path free_lesson_path(const std::filesystem::path& folder,
                                       const std::string& name);

} // namespace steelyard::app
