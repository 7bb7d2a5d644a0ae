#include "learner/record/file/backups.h"

#include "learner/record/file/private_files.h"
#include "learner/record/schema.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <system_error>
#include <utility>

namespace steelyard::learner {

namespace fs = std::filesystem;

namespace {

constexpr std::string_view kBeginning = "record-";
constexpr std::string_view kEnding = ".sqlite";

fs::path backup_folder(const fs::path& folder) {
    return folder / kBackupFolder;
}

void drop_old(const fs::path& folder, TimeMs now_ms) {
    const std::vector<fs::path> backups = backups_in(folder, now_ms);
    std::error_code ignored;
    for (std::size_t i = kBackups; i < backups.size(); ++i)
        fs::remove(backups[i], ignored);
}

} // namespace

std::vector<fs::path> backups_in(const fs::path& folder, TimeMs now_ms) {
    std::vector<fs::path> found;
    std::error_code failed;
    for (fs::directory_iterator entry(backup_folder(folder), failed), end; !failed && entry != end;
         entry.increment(failed))
        if (made_at(entry->path()))
            found.push_back(entry->path());
    const auto rank = [&](const fs::path& backup) {
        const TimeMs made_ms = *made_at(backup);
        return std::pair(made_ms <= now_ms, made_ms);
    };
    std::sort(found.begin(), found.end(),
              [&](const fs::path& a, const fs::path& b) { return rank(a) > rank(b); });
    return found;
}

std::optional<TimeMs> made_at(const fs::path& backup) {
    const std::string name = backup.filename().string();
    if (name.size() <= kBeginning.size() + kEnding.size() ||
        name.compare(0, kBeginning.size(), kBeginning) != 0 ||
        name.compare(name.size() - kEnding.size(), kEnding.size(), kEnding) != 0)
        return std::nullopt;
    // record-2026-12-03-36000000.sqlite: the day, then milliseconds since its midnight, UTC.
    const std::string middle =
        name.substr(kBeginning.size(), name.size() - kBeginning.size() - kEnding.size());
    constexpr std::size_t kDate = 10;
    if (middle.size() <= kDate + 1 || middle[kDate] != '-')
        return std::nullopt;
    const auto day = read_day(std::string_view(middle).substr(0, kDate));
    TimeMs since = 0;
    const auto [end, error] =
        std::from_chars(middle.data() + kDate + 1, middle.data() + middle.size(), since);
    if (!day || error != std::errc() || end != middle.data() + middle.size())
        return std::nullopt;
    return begin_of(*day, 0) + since;
}

Recorded<fs::path> make_backup(Database& database, const fs::path& folder, TimeMs now_ms) {
    const Day day = day_of({now_ms, 0});
    const fs::path target =
        backup_folder(folder) /
        fmt::format("{}{}-{:08}{}", kBeginning, write_day(day), now_ms - begin_of(day, 0), kEnding);
    std::error_code failed;
    make_private_folder(backup_folder(folder));
    fs::path unfinished = target;
    unfinished += ".unfinished";
    fs::remove(unfinished, failed);
    auto copied = database.copy_to(unfinished);
    if (copied) {
        auto copy = Database::open(unfinished, Access::frozen);
        if (!copy || !is_sound(*copy))
            copied = tl::make_unexpected(
                RecordError{Trouble::damaged, fmt::format("The backup {} came out damaged; the "
                                                          "record itself was left as it is.",
                                                          target.string())});
    }
    if (copied) {
        fs::rename(unfinished, target, failed);
        if (!failed) {
            drop_old(folder, now_ms);
            return target;
        }
        copied = tl::make_unexpected(
            RecordError{Trouble::cannot_open, fmt::format("The backup {} could not be made: {}.",
                                                          target.string(), failed.message())});
    }
    fs::remove(unfinished, failed);
    return tl::make_unexpected(copied.error());
}

bool is_sound(Database& database) {
    const auto pages = database.text("PRAGMA integrity_check(1)");
    const auto references = database.integer("SELECT count(*) FROM pragma_foreign_key_check");
    return pages && *pages == "ok" && references && *references == 0;
}

std::optional<fs::path> newest_good_backup(const fs::path& folder, TimeMs now_ms) {
    for (const fs::path& backup : backups_in(folder, now_ms)) {
        auto database = Database::open(backup, Access::frozen);
        if (!database)
            continue;
        const auto version = database->integer("PRAGMA user_version");
        if (version && *version > 0 &&
            *version <= static_cast<std::int64_t>(schema_steps().size()) && is_sound(*database))
            return backup;
    }
    return std::nullopt;
}

} // namespace steelyard::learner
