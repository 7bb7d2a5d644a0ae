#pragma once
// The steps in which a record's file is opened; for the parts of the record only.

#include "learner/record/record.h"

#include <array>
#include <filesystem>

namespace steelyard::learner {

/// Files that belong to one SQLite file.
inline constexpr std::array<const char*, 3> kParts{"", "-wal", "-shm"};

std::filesystem::path with_ending(std::filesystem::path path, const char* ending);

/// Whether a file is missing or too short to be a record: the smallest page of SQLite is 512 bytes.
/// Source: SQLite, Database File Format, 1.3.2.
bool holds_nothing(const std::filesystem::path& file);

/// Whether the header of a file says that its last answers lie in a journal, and there is none.
/// @param file  not opened yet: SQLite would make a new journal
bool journal_is_lost(const std::filesystem::path& file);

/// The version of a file, 0 for a new one; or why it is none of ours.
Recorded<std::int64_t> version_of(Database& database);

/// Durable at every commit, and safe with several programs at once.
Recorded<void> configure(Database& database);

/// What a missing or empty file means where there are backups of it.
enum class Nothing {
    is_lost, ///< a record was here
    is_new,  ///< none of the backups is of use
};

/// Opens a folder's record and brings it up to date.
/// @return damaged when the file is not in order or lost; or any other trouble
Recorded<Record> open_for_writing(const std::filesystem::path& folder, const Clock& clock,
                                  Nothing nothing);

} // namespace steelyard::learner
