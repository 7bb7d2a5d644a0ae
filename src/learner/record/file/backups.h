#pragma once
// Copies of the record beside it: one before every migration, one a day while it is used.

#include "learner/record/file/database.h"
#include "learner/time/clock.h"

#include <filesystem>
#include <limits>
#include <optional>
#include <vector>

namespace steelyard::learner {

/// Backups kept; older ones are deleted.
inline constexpr std::size_t kBackups = 7;

/// Name of their folder within the record's.
inline constexpr const char* kBackupFolder = "backups";

/// Backups of a data folder, newest first. Those named after a moment that is still to come were
/// made by a clock that has been set back since: they come last, as if they were the oldest.
std::vector<std::filesystem::path> backups_in(const std::filesystem::path& folder,
                                              TimeMs now_ms = std::numeric_limits<TimeMs>::max());

/// When a backup was made, from its name.
std::optional<TimeMs> made_at(const std::filesystem::path& backup);

/// Copies the record to a new backup: written under another name first, checked, then renamed.
Recorded<std::filesystem::path> make_backup(Database& database, const std::filesystem::path& folder,
                                            TimeMs now_ms);

/// Whether SQLite finds every page in order, and every reference held.
bool is_sound(Database& database);

/// The newest backup that is sound and that this version can read.
std::optional<std::filesystem::path> newest_good_backup(const std::filesystem::path& folder,
                                                        TimeMs now_ms);

} // namespace steelyard::learner
