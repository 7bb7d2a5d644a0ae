#include "learner/record/file/backups.h"
#include "learner/record/file/folder_lock.h"
#include "learner/record/file/opening.h"
#include "learner/record/file/private_files.h"
#include "learner/record/file/salvage.h"
#include "learner/record/schema.h"

#include <fmt/format.h>

#include <system_error>

namespace steelyard::learner {

namespace fs = std::filesystem;

namespace {

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
        // An empty file is worth nothing, nor is the index that SQLite makes of its journal.
        if (part == kParts.back() || fs::is_empty(from, failed)) {
            fs::remove(from, failed);
            continue;
        }
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

/// What became of the file that was there, in sentences.
std::string told(const fs::path& folder, const fs::path& aside, bool lost) {
    std::error_code ignored;
    const bool kept = fs::exists(aside, ignored);
    return fmt::format(
        "The record in {} was {}. {}", folder.string(), lost ? "missing or empty" : "damaged",
        kept ? fmt::format("It has been set aside as {}. ", aside.filename().string()) : "");
}

/// Sets the damaged file aside and opens the newest good backup in its place, or a new record.
Recorded<Opened> recover(const fs::path& folder, const Clock& clock) {
    const fs::path aside = aside_name(folder, clock);
    const bool lost = holds_nothing(folder / kRecordFile);
    if (const auto done = set_aside(folder, aside); !done)
        return tl::make_unexpected(done.error());
    const auto backup = newest_good_backup(folder, clock.utc_ms);
    std::string notice = told(folder, aside, lost);
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
    auto record = open_for_writing(folder, clock, Nothing::is_new);
    if (!record)
        return tl::make_unexpected(record.error());
    const std::int64_t saved = salvage(record->database(), aside);
    if (saved > 0)
        notice += fmt::format("{} newer answers could be read from the damaged file and were "
                              "brought over; what is missing could not.",
                              saved);
    else if (!lost)
        notice += "Answers given since could not be read from the damaged file.";
    else if (backup)
        notice += "What was answered since is lost.";
    return Opened{std::move(*record), {notice}};
}

/// Recovers a damaged record, unless another program has done it while this one waited.
Recorded<Opened> mend(const fs::path& folder, const Clock& clock) {
    const auto lock = FolderLock::take(folder, Hold::alone);
    if (!lock)
        return tl::make_unexpected(lock.error());
    auto record = open_for_writing(folder, clock, Nothing::is_lost);
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
    return open_for_writing(folder, clock, Nothing::is_lost);
}

} // namespace

Recorded<Opened> open_record(const fs::path& folder, const Clock& clock) {
    if (folder.empty())
        return tl::make_unexpected(RecordError{
            Trouble::cannot_open, "There is no home folder to keep the record in. Start "
                                  "Steelyard with a folder for it."});
    const std::error_code failed = make_private_folder(folder);
    if (failed && !fs::is_directory(folder))
        return tl::make_unexpected(RecordError{
            Trouble::cannot_open,
            fmt::format("The folder {} for the record cannot be made: {}. Start Steelyard with "
                        "another.",
                        folder.string(), failed.message())});
    close_to_others(folder);
    auto record = open_when_free(folder, clock);
    if (record) {
        std::vector<std::string> notices = record->take_notices();
        return Opened{std::move(*record), std::move(notices)};
    }
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
