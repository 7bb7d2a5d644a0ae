#include "learner/record/file/private_files.h"

#include "learner/record/file/backups.h"
#include "learner/record/record.h"

#include <fstream>
#include <string>
#include <string_view>

namespace steelyard::learner {

namespace fs = std::filesystem;

namespace {

void take_from_others(const fs::path& path) {
    std::error_code ignored;
    const fs::perms there = fs::status(path, ignored).permissions();
    const fs::perms others = fs::perms::group_all | fs::perms::others_all;
    if (!ignored && (there & others) != fs::perms::none)
        fs::permissions(path, others, fs::perm_options::remove, ignored);
}

bool begins(std::string_view text, std::string_view beginning) {
    return text.substr(0, beginning.size()) == beginning;
}

/// The record, its journal, lock and damaged ones; exports beside it.
bool is_of_record(const std::string& name) {
    return begins(name, "record") || begins(name, "answers-");
}

} // namespace

std::error_code make_private_folder(const fs::path& folder) {
    std::error_code failed;
    if (folder.empty() || fs::is_directory(folder, failed))
        return {};
    if (const std::error_code above = make_private_folder(folder.parent_path()))
        return above;
    // False without an error: another program was faster, or the path ends in a slash.
    if (fs::create_directory(folder, failed))
        fs::permissions(folder, fs::perms::owner_all, failed);
    return failed;
}

void make_private_file(const fs::path& file) {
    std::error_code ignored;
    if (fs::exists(file, ignored)) {
        take_from_others(file);
        return;
    }
    if (std::ofstream(file, std::ios::app))
        fs::permissions(file, fs::perms::owner_read | fs::perms::owner_write, ignored);
}

void close_to_others(const fs::path& folder) {
    std::error_code failed;
    bool nothing_else = true;
    for (fs::directory_iterator entry(folder, failed), end; !failed && entry != end;
         entry.increment(failed)) {
        const std::string name = entry->path().filename().string();
        if (is_of_record(name))
            take_from_others(entry->path());
        nothing_else = nothing_else && (is_of_record(name) || name == kBackupFolder);
    }
    if (failed)
        return;
    for (const fs::path& backup : backups_in(folder))
        take_from_others(backup);
    take_from_others(folder / kBackupFolder);
    if (nothing_else || folder == usual_record_folder())
        take_from_others(folder);
}

} // namespace steelyard::learner
