#include "setup/files/data_folder.h"

#include <cstdlib>
#include <system_error>

namespace steelyard::setup {
namespace fs = std::filesystem;
namespace {

/// Full path of the running program; of the usual place where the system does not tell.
fs::path running_program() {
    std::error_code failed;
    const fs::path program = fs::read_symlink("/proc/self/exe", failed);
    return failed ? fs::path("/usr/bin/steelyard") : program;
}

/// The folder that a variable of the environment names in full; empty for any other.
fs::path named_by(const char* variable) {
    const char* value = std::getenv(variable);
    return value != nullptr && fs::path(value).is_absolute() ? fs::path(value) : fs::path();
}

} // namespace

fs::path data_folder_for(const fs::path& program) {
    return program.parent_path().parent_path() / "share" / "steelyard";
}

fs::path data_folder() {
    return data_folder_for(running_program());
}

fs::path own_folder() {
    if (const fs::path data = named_by("XDG_DATA_HOME"); !data.empty())
        return data / "steelyard";
    const fs::path home = named_by("HOME");
    return home.empty() ? fs::path() : home / ".local" / "share" / "steelyard";
}

} // namespace steelyard::setup
