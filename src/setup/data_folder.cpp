#include "setup/data_folder.h"

#include <system_error>

namespace steelyard::setup {
namespace fs = std::filesystem;
namespace {

/// Full path of the running program; empty where the system does not tell.
std::optional<fs::path> running_program() {
    std::error_code failed;
    const fs::path program = fs::read_symlink("/proc/self/exe", failed);
    if (failed) {
        return std::nullopt;
    }
    return program;
}

} // namespace

fs::path data_folder_for(const std::optional<fs::path>& program, const fs::path& source_tree) {
    if (program) {
        const fs::path installed = program->parent_path().parent_path() / "share" / "steelyard";
        std::error_code failed;
        if (fs::is_directory(installed, failed)) {
            return installed;
        }
    }
    return source_tree;
}

fs::path data_folder() {
    return data_folder_for(running_program(), STEELYARD_SOURCE_DIR);
}

} // namespace steelyard::setup
