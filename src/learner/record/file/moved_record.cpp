// A record whose file was deleted, moved away or replaced while it was open.

#include "learner/record/file/folder_lock.h"
#include "learner/record/file/opening.h"
#include "learner/record/file/private_files.h"
#include "learner/record/file/salvage.h"
#include "learner/record/schema.h"

#include <fmt/format.h>

#include <system_error>
#include <utility>

namespace steelyard::learner {

namespace fs = std::filesystem;

namespace {

RecordError not_written(const fs::path& file, const std::string& why) {
    return {Trouble::full,
            fmt::format("The record {} was deleted or moved away while Steelyard was open, and "
                        "cannot be written again: {} Nothing more is kept until it can.",
                        file.string(), why)};
}

/// Writes all that an open record holds into a file under its old name.
Recorded<void> write_again(Database& open, const fs::path& file) {
    std::error_code failed;
    const fs::path unfinished = with_ending(file, ".unfinished");
    fs::remove(unfinished, failed);
    if (const auto copied = open.copy_to(unfinished); !copied)
        return tl::make_unexpected(not_written(file, copied.error().message));
    // A journal that was left behind belongs to the file that has gone; all of it is in the copy.
    fs::remove(with_ending(file, "-wal"), failed);
    fs::remove(with_ending(file, "-shm"), failed);
    fs::rename(unfinished, file, failed);
    if (failed)
        return tl::make_unexpected(not_written(file, failed.message() + "."));
    return {};
}

/// Opens what lies under the old name now.
Recorded<Database> open_there(const fs::path& file) {
    auto there = Database::open(file, Access::write);
    if (!there)
        return there;
    const auto version = version_of(*there);
    if (!version)
        return tl::make_unexpected(version.error());
    if (*version != static_cast<std::int64_t>(schema_steps().size()))
        return tl::make_unexpected(not_written(file, "another file lies there now."));
    return configure(*there).map([&] { return std::move(*there); });
}

/// Whether every learner of one record has the same number in another.
bool same_learners(Database& one, Database& other) {
    auto learners = one.prepare("SELECT id, name FROM learner");
    auto find = other.prepare("SELECT id FROM learner WHERE name = ?");
    if (!learners || !find)
        return false;
    bool same = true;
    const auto read = learners->for_each_row([&](const Statement& learner) {
        const auto found = find->with(learner.text(1)).row();
        same = same && found && *found && find->integer(0) == learner.integer(0);
    });
    return read && same;
}

std::string told(const fs::path& file, bool replaced) {
    return replaced
               ? fmt::format("The record {} was replaced while Steelyard was open. What was "
                             "answered here has been brought over to the one that is there now.",
                             file.string())
               : fmt::format("The record {} was deleted or moved away while Steelyard was open. "
                             "It has been written again with all that was answered.",
                             file.string());
}

} // namespace

Recorded<void> Record::put_back() {
    if (!writable_ || !database_.has_moved())
        return {};
    const fs::path file = folder_ / kRecordFile;
    if (const std::error_code failed = make_private_folder(folder_))
        return tl::make_unexpected(not_written(file, failed.message() + "."));
    const auto lock = FolderLock::take(folder_, Hold::alone);
    if (!lock)
        return tl::make_unexpected(lock.error());
    const bool replaced = !holds_nothing(file);
    if (!replaced)
        if (const auto written = write_again(database_, file); !written)
            return written;
    auto there = open_there(file);
    if (!there)
        return tl::make_unexpected(there.error());
    if (replaced)
        bring_over(*there, database_);
    if (!same_learners(database_, *there))
        return tl::make_unexpected(RecordError{
            Trouble::refused,
            fmt::format("The record {} was replaced while Steelyard was open. What was kept before "
                        "has been brought over to the one that is there now; nothing more is kept "
                        "here. Start Steelyard again.",
                        file.string())});
    std::swap(database_, *there);
    notices_.push_back(told(file, replaced));
    return {};
}

Recorded<Transaction> Record::begin() {
    if (const auto done = put_back(); !done)
        return tl::make_unexpected(done.error());
    return Transaction::begin(database_);
}

std::vector<std::string> Record::take_notices() {
    return std::exchange(notices_, {});
}

} // namespace steelyard::learner
