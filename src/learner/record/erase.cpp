#include "learner/record/file/backups.h"
#include "learner/record/file/beside.h"
#include "learner/record/record.h"

#include <system_error>

namespace steelyard::learner {

namespace fs = std::filesystem;

namespace {

Recorded<std::string> name_of_learner(Database& database, std::int64_t learner) {
    auto row = database.prepare("SELECT name FROM learner WHERE id = ?");
    if (!row)
        return tl::make_unexpected(row.error());
    const auto found = row->with(learner).row();
    if (!found)
        return tl::make_unexpected(found.error());
    if (!*found)
        return tl::make_unexpected(
            RecordError{Trouble::refused, "This learner is no longer in the record."});
    return row->text(0);
}

/// Deletes a learner from one file and writes the file anew, so that no page keeps a trace.
Recorded<void> erase_from(Database& database, const std::string& name) {
    if (const auto set = database.run("PRAGMA foreign_keys = ON; PRAGMA secure_delete = ON"); !set)
        return set;
    auto remove = database.prepare("DELETE FROM learner WHERE name = ?");
    if (!remove)
        return tl::make_unexpected(remove.error());
    return remove->with(name).run().and_then([&] { return database.run("VACUUM"); }).and_then([&] {
        return database.run("PRAGMA wal_checkpoint(TRUNCATE)");
    });
}

Recorded<void> erase_from_backup(const fs::path& backup, const std::string& name) {
    auto database = Database::open(backup, Access::write);
    if (!database)
        return tl::make_unexpected(database.error());
    // Without its journal a backup is one file, as it was.
    return erase_from(*database, name).and_then([&] {
        return database->run("PRAGMA journal_mode = DELETE");
    });
}

} // namespace

Recorded<void> Record::erase_learner(std::int64_t learner) {
    if (const auto done = put_back(); !done)
        return done;
    const auto name = name_of_learner(database_, learner);
    if (!name)
        return tl::make_unexpected(name.error());
    if (const auto erased = erase_from(database_, *name); !erased)
        return erased;
    for (const fs::path& backup : backups_in(folder_))
        if (const auto erased = erase_from_backup(backup, *name); !erased) {
            // A backup that cannot be cleaned is no longer worth keeping.
            std::error_code failed;
            fs::remove(backup, failed);
            if (failed)
                return erased;
        }
    for (const char* const what : kAllBeside) {
        std::error_code failed;
        fs::remove(folder_ / name_beside(what, learner), failed);
        if (failed)
            return tl::make_unexpected(RecordError{
                Trouble::refused, "A file of this learner beside the record cannot be removed: " +
                                      name_beside(what, learner)});
    }
    return {};
}

} // namespace steelyard::learner
