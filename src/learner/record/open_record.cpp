#include "learner/record/backups.h"
#include "learner/record/folder_lock.h"
#include "learner/record/record.h"
#include "learner/record/salvage.h"
#include "learner/record/schema.h"

#include <fmt/format.h>

#include <array>
#include <chrono>
#include <system_error>
#include <thread>

namespace steelyard::learner {

namespace fs = std::filesystem;

namespace {

/// Files up to this size are checked in full at every opening: a few milliseconds. Larger ones when
/// SQLite stumbles over them, before a backup is kept, and by `steelyard record check`.
constexpr std::uintmax_t kSmallFile = 2u << 20U;

/// Files that belong to one SQLite file.
constexpr std::array<const char*, 3> kParts{"", "-wal", "-shm"};

fs::path with_ending(fs::path path, const char* ending) {
    path += ending;
    return path;
}

/// Durable at every commit, and safe with several programs at once.
Recorded<void> configure(Database& database) {
    // The first switch to WAL wants the file alone, and SQLite does not wait for that itself.
    constexpr int kTries = 100;
    Recorded<void> set;
    for (int i = 0; i < kTries; ++i) {
        set = database.run("PRAGMA journal_mode = WAL");
        if (set || set.error().trouble != Trouble::busy)
            break;
        std::this_thread::sleep_for(std::chrono::milliseconds(20));
    }
    return set.and_then([&] {
        return database.run("PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON; "
                            "PRAGMA secure_delete = ON");
    });
}

RecordError too_new(const fs::path& path, std::int64_t version) {
    return {Trouble::newer,
            fmt::format(
                "The record {} was written by a later Steelyard (its version {}, ours {}). "
                "Nothing was changed. Use that Steelyard, or start this one with another folder "
                "for the record.",
                path.string(), version, schema_steps().size())};
}

RecordError not_ours(const fs::path& path) {
    return {
        Trouble::foreign,
        fmt::format("{} is a database of some other program. Nothing was changed. Move it away, "
                    "or start Steelyard with another folder for the record.",
                    path.string())};
}

/// The version of a file, 0 for a new one; or why it is none of ours.
Recorded<std::int64_t> version_of(Database& database) {
    // One statement, so that all three are of one moment: another program may be making the file.
    auto marks = database.prepare(
        "SELECT u.user_version, a.application_id, (SELECT count(*) FROM sqlite_schema) FROM "
        "pragma_user_version AS u, pragma_application_id AS a");
    if (!marks)
        return tl::make_unexpected(marks.error());
    if (const auto read = marks->row(); !read)
        return tl::make_unexpected(read.error());
    const std::int64_t version = marks->integer(0);
    const std::int64_t id = marks->integer(1);
    if (version == 0 && id == 0 && marks->integer(2) == 0)
        return 0;
    if (id != kApplicationId)
        return tl::make_unexpected(not_ours(database.path()));
    if (version > static_cast<std::int64_t>(schema_steps().size()))
        return tl::make_unexpected(too_new(database.path(), version));
    return version;
}

/// Takes the steps that a file has not seen, all or none. A file that holds something is backed up
/// before.
Recorded<void> migrate(Database& database, const fs::path& folder, const Clock& clock) {
    const auto seen = version_of(database);
    if (!seen)
        return tl::make_unexpected(seen.error());
    const auto steps = static_cast<std::int64_t>(schema_steps().size());
    if (*seen == steps)
        return {};
    if (*seen > 0)
        if (const auto backup = make_backup(database, folder, clock.utc_ms); !backup)
            return tl::make_unexpected(backup.error());
    auto transaction = Transaction::begin(database);
    if (!transaction)
        return tl::make_unexpected(transaction.error());
    // Another program may have taken the steps while this one waited.
    const auto version = version_of(database);
    if (!version)
        return tl::make_unexpected(version.error());
    for (std::int64_t step = *version; step < steps; ++step)
        if (const auto done =
                database.run(std::string(schema_steps()[static_cast<std::size_t>(step)]));
            !done)
            return done;
    if (const auto done = database.run(fmt::format(
            "PRAGMA application_id = {}; PRAGMA user_version = {}", kApplicationId, steps));
        !done)
        return done;
    return transaction->commit();
}

/// Looks at what every run needs: whatever is damaged there shows now.
Recorded<void> probe(Database& database, std::uintmax_t bytes) {
    for (const char* sql : {"SELECT count(*) FROM learner", "SELECT count(*) FROM skill_state",
                            "SELECT max(id) FROM answer"})
        if (const auto read = database.integer(sql); !read)
            return tl::make_unexpected(read.error());
    if (bytes > kSmallFile)
        return {};
    const auto pages = database.text("PRAGMA quick_check(1)");
    if (!pages)
        return tl::make_unexpected(pages.error());
    if (*pages != "ok")
        return tl::make_unexpected(
            RecordError{Trouble::damaged, fmt::format("The record {} is damaged: {}.",
                                                      database.path().string(), *pages)});
    return {};
}

std::uintmax_t size_of(const fs::path& path) {
    std::error_code failed;
    const std::uintmax_t bytes = fs::file_size(path, failed);
    return failed ? 0 : bytes;
}

Recorded<Record> open_for_writing(const fs::path& folder, const Clock& clock) {
    auto database = Database::open(folder / kRecordFile, Access::write);
    if (!database)
        return tl::make_unexpected(database.error());
    // Before anything is changed, even the journal's kind: is it ours, and of this version?
    if (const auto version = version_of(*database); !version)
        return tl::make_unexpected(version.error());
    const std::uintmax_t bytes = size_of(folder / kRecordFile);
    return configure(*database)
        .and_then([&] { return migrate(*database, folder, clock); })
        .and_then([&] { return probe(*database, bytes); })
        .map([&] { return Record(std::move(*database), folder, true); });
}

/// For a record that cannot be written: first beside other programs, then as it lies on the disk.
Recorded<Record> open_for_reading(const fs::path& folder) {
    Recorded<Record> last = tl::make_unexpected(RecordError{});
    for (const Access access : {Access::read, Access::frozen}) {
        auto database = Database::open(folder / kRecordFile, access);
        if (!database) {
            last = tl::make_unexpected(database.error());
            continue;
        }
        const auto version = version_of(*database);
        if (!version) {
            last = tl::make_unexpected(version.error());
            continue;
        }
        if (*version < static_cast<std::int64_t>(schema_steps().size()))
            return tl::make_unexpected(RecordError{
                Trouble::read_only,
                fmt::format("The record {} is of an earlier version and cannot be brought up to "
                            "date, since nothing can be written there.",
                            (folder / kRecordFile).string())});
        return Record(std::move(*database), folder, false);
    }
    return last;
}

/// A name beside the record that is not taken yet.
fs::path aside_name(const fs::path& folder, const Clock& clock) {
    std::error_code ignored;
    for (int number = 1;; ++number) {
        fs::path path =
            folder / fmt::format("record-damaged-{}-{}.sqlite", write_day(day_of(clock)), number);
        if (!fs::exists(path, ignored))
            return path;
    }
}

Recorded<void> set_aside(const fs::path& folder, const fs::path& aside) {
    std::error_code failed;
    for (const char* part : kParts) {
        const fs::path from = with_ending(folder / kRecordFile, part);
        if (!fs::exists(from, failed))
            continue;
        fs::rename(from, with_ending(aside, part), failed);
        if (failed)
            return tl::make_unexpected(RecordError{
                Trouble::read_only,
                fmt::format("The record {} is damaged and cannot be set aside: {}. Move it away "
                            "yourself, or start Steelyard with another folder for the record.",
                            from.string(), failed.message())});
    }
    return {};
}

/// Sets the damaged file aside and opens the newest good backup in its place, or a new record.
Recorded<Opened> recover(const fs::path& folder, const Clock& clock) {
    const fs::path aside = aside_name(folder, clock);
    if (const auto done = set_aside(folder, aside); !done)
        return tl::make_unexpected(done.error());
    const auto backup = newest_good_backup(folder);
    std::string notice = fmt::format("The record was damaged. It has been set aside as {}. ",
                                     aside.filename().string());
    if (backup) {
        std::error_code failed;
        const fs::path unfinished = with_ending(folder / kRecordFile, ".unfinished");
        fs::copy_file(*backup, unfinished, fs::copy_options::overwrite_existing, failed);
        if (!failed)
            fs::rename(unfinished, folder / kRecordFile, failed);
        if (failed)
            return tl::make_unexpected(RecordError{
                Trouble::full, fmt::format("The backup {} could not be put in place: {}.",
                                           backup->string(), failed.message())});
        notice += fmt::format("The backup of {} is in use now. ",
                              write_day(day_of({*made_at(*backup), clock.offset_s})));
    } else {
        notice += "There is no good backup, so the record begins anew. ";
    }
    auto record = open_for_writing(folder, clock);
    if (!record)
        return tl::make_unexpected(record.error());
    const std::int64_t saved = salvage(record->database(), aside);
    notice += saved > 0
                  ? fmt::format("{} newer answers could be read from the damaged file and were "
                                "brought over; what is missing could not.",
                                saved)
                  : "Answers given since could not be read from the damaged file.";
    return Opened{std::move(*record), {notice}};
}

/// Recovers a damaged record, unless another program has done it while this one waited.
Recorded<Opened> mend(const fs::path& folder, const Clock& clock) {
    const auto lock = FolderLock::take(folder, Hold::alone);
    if (!lock)
        return tl::make_unexpected(lock.error());
    auto record = open_for_writing(folder, clock);
    if (record)
        return Opened{std::move(*record),
                      {"The record was damaged; another Steelyard has just mended it."}};
    if (record.error().trouble != Trouble::damaged)
        return tl::make_unexpected(record.error());
    return recover(folder, clock);
}

/// Opens the record when no other program is mending it.
Recorded<Record> open_when_free(const fs::path& folder, const Clock& clock) {
    const auto lock = FolderLock::take(folder, Hold::with_others);
    if (!lock)
        return tl::make_unexpected(lock.error());
    return open_for_writing(folder, clock);
}

} // namespace

Recorded<Opened> open_record(const fs::path& folder, const Clock& clock) {
    if (folder.empty())
        return tl::make_unexpected(RecordError{
            Trouble::cannot_open, "There is no home folder to keep the record in. Start "
                                  "Steelyard with a folder for it."});
    std::error_code failed;
    fs::create_directories(folder, failed);
    if (failed && !fs::is_directory(folder))
        return tl::make_unexpected(RecordError{
            Trouble::cannot_open,
            fmt::format("The folder {} for the record cannot be made: {}. Start Steelyard with "
                        "another.",
                        folder.string(), failed.message())});
    auto record = open_when_free(folder, clock);
    if (record)
        return Opened{std::move(*record), {}};
    switch (record.error().trouble) {
    case Trouble::damaged:
        return mend(folder, clock);
    case Trouble::read_only:
    case Trouble::cannot_open:
    case Trouble::full: {
        auto readable = open_for_reading(folder);
        if (!readable)
            return tl::make_unexpected(record.error());
        return Opened{
            std::move(*readable),
            {fmt::format("The record in {} can be read but not written: you can look, but "
                         "no answer will be kept. See who may write there and whether the disk "
                         "is full, or start Steelyard with another folder for the record.",
                         folder.string())}};
    }
    default:
        return tl::make_unexpected(record.error());
    }
}

} // namespace steelyard::learner
