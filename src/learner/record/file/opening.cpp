#include "learner/record/file/opening.h"

#include "learner/record/file/backups.h"
#include "learner/record/file/salvage.h"
#include "learner/record/schema.h"

#include <fmt/format.h>

#include <chrono>
#include <cstdint>
#include <fstream>
#include <optional>
#include <string_view>
#include <system_error>
#include <thread>

namespace steelyard::learner {

namespace fs = std::filesystem;

namespace {

/// Files up to this size are checked in full at every opening: a few milliseconds. Larger ones when
/// SQLite stumbles over them, before a backup is kept, and by `steelyard record check`.
constexpr std::uintmax_t kSmallFile = 2u << 20U;

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

RecordError lost(const fs::path& path) {
    return {Trouble::damaged, fmt::format("The record {} is missing or empty.", path.string())};
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

/// Whether a journal lies there: a new record has none before its first page is written.
bool has_journal(const fs::path& file) {
    std::error_code ignored;
    return fs::exists(with_ending(file, "-wal"), ignored) ||
           fs::exists(with_ending(file, "-shm"), ignored);
}

/// What the first page says. Source: SQLite, Database File Format, 1.3.
struct Header {
    bool has_journal = false;
    std::uint32_t pages = 0;
    std::uint32_t version = 0;
};

/// Empty where there is none, or not of SQLite.
std::optional<Header> header_of(const fs::path& file) {
    constexpr std::size_t kLength = 100;
    constexpr std::string_view kSqliteFile("SQLite format 3\0", 16);
    std::string bytes(kLength, '\0');
    std::error_code ignored;
    if (!fs::is_regular_file(file, ignored)) // a pipe would be waited for
        return std::nullopt;
    std::ifstream in(file, std::ios::binary);
    if (!in.read(bytes.data(), kLength) || bytes.substr(0, kSqliteFile.size()) != kSqliteFile)
        return std::nullopt;
    const auto number_at = [&](std::size_t at) {
        std::uint32_t number = 0;
        for (std::size_t i = at; i < at + 4; ++i)
            number = number << 8U | static_cast<unsigned char>(bytes[i]);
        return number;
    };
    constexpr char kWithJournal = 2;
    return Header{bytes[18] == kWithJournal, number_at(28), number_at(60)};
}

bool misses_its_journal(const fs::path& file) {
    const auto header = header_of(file);
    if (!header || !header->has_journal)
        return false;
    // One page has no tables yet: all that was ever written is in the journal.
    std::error_code ignored;
    return (header->version >= kSaysItsJournal || header->pages <= 1) &&
           !fs::exists(with_ending(file, "-wal"), ignored);
}

/// Brings over what a backup has beyond a record that lost its journal, and says so.
void tell_of_lost_journal(Record& record, const Clock& clock) {
    const auto backup = newest_good_backup(record.folder(), clock.utc_ms);
    auto from =
        backup ? Database::open(*backup, Access::frozen) : tl::make_unexpected(RecordError{});
    const std::int64_t saved = from ? bring_over(record.database(), *from) : 0;
    record.note(fmt::format(
        "The file {0}-wal, in which the record keeps the last answers while it is open, has been "
        "deleted or was left behind when {0} was copied: what was only there is lost.{1}",
        (record.folder() / kRecordFile).string(),
        saved > 0
            ? fmt::format(" {} of them were in the newest backup and were brought over.", saved)
            : ""));
}

} // namespace

fs::path with_ending(fs::path path, const char* ending) {
    path += ending;
    return path;
}

bool holds_nothing(const fs::path& file) {
    constexpr std::uintmax_t kSmallestPage = 512;
    return size_of(file) < kSmallestPage;
}

bool journal_is_lost(const fs::path& file) {
    // Another program may be closing the file: then its header follows in a moment.
    constexpr int kTries = 5;
    for (int i = 0; i < kTries; ++i) {
        if (!misses_its_journal(file))
            return false;
        std::this_thread::sleep_for(std::chrono::milliseconds(30));
    }
    return true;
}

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

Recorded<Record> open_for_writing(const fs::path& folder, const Clock& clock, Nothing nothing) {
    // Looked at before SQLite, which takes up whatever journal lies there.
    const fs::path file = folder / kRecordFile;
    const bool had_backups = nothing == Nothing::is_lost && !backups_in(folder).empty();
    // The journal before the file: who makes the file now makes the journal after it.
    const bool was_here = had_backups || (nothing == Nothing::is_lost && has_journal(file));
    if (holds_nothing(file) && (was_here || size_of(file) > 0))
        return tl::make_unexpected(lost(file));
    const bool lost_journal = nothing == Nothing::is_lost && journal_is_lost(file);
    // One page without tables: SQLite would take it for a new file, and end what the header says.
    if (lost_journal && header_of(file).value_or(Header{}).version == 0)
        return tl::make_unexpected(lost(file));
    auto database = Database::open(file, Access::write);
    if (!database)
        return tl::make_unexpected(database.error());
    // Before anything is changed, even the journal's kind: is it ours, and of this version?
    const auto version = version_of(*database);
    if (!version)
        return tl::make_unexpected(version.error());
    if (*version == 0 && had_backups)
        return tl::make_unexpected(lost(file));
    const std::uintmax_t bytes = size_of(file);
    return configure(*database)
        .and_then([&] { return migrate(*database, folder, clock); })
        .and_then([&] { return probe(*database, bytes); })
        .map([&] {
            Record record(std::move(*database), folder, true);
            if (lost_journal)
                tell_of_lost_journal(record, clock);
            return record;
        });
}

} // namespace steelyard::learner
