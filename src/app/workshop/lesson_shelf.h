#pragma once
// The lessons at hand: those that come with the program, and the person's own.

#include "lesson/lesson.h"

#include <filesystem>
#include <string>
#include <vector>

namespace steelyard::app {

enum class LessonOrigin {
    shipped, ///< comes with the program
    own,     ///< made in this window by the person: may be changed
    opened,  ///< a file from anywhere: named at the start, or dropped on the window
};

struct ShelvedLesson {
    lesson::Lesson lesson;
    std::filesystem::path path; ///< its file
    LessonOrigin origin = LessonOrigin::shipped;
};

struct LessonShelf {
    std::vector<ShelvedLesson> lessons;
    std::vector<std::string> faults; ///< files that could not be read: a sentence each
};

/// Where the person's own lessons are kept: a folder of setup::own_folder; empty when no home is
/// known.
std::filesystem::path own_lesson_folder();

/// All lessons, the person's own first.
LessonShelf read_lesson_shelf(const std::filesystem::path& shipped_folder,
                              const std::filesystem::path& own_folder);

/// Puts a lesson that was opened from a file on the shelf: in the place of what was read from that
/// file before, else at the top.
/// @param opened  those of earlier; keeps this one too, unless it is of the shelf's own folders
/// @return its place on the shelf
std::size_t put_on_shelf(ShelvedLesson lesson, std::vector<ShelvedLesson>& opened,
                         LessonShelf& shelf);

/// Writes a lesson whole or not at all; the folder is made if it is not there.
/// @return why it could not be written; empty when it was
std::string save_lesson(const lesson::Lesson& lesson, const std::filesystem::path& path);

/// A file for a new lesson of this name: letters and digits of the name, and a number if there is
/// one of that name already.
std::filesystem::path free_lesson_path(const std::filesystem::path& folder,
                                       const std::string& name);

} // namespace steelyard::app
