#include "app/platform/folders.h"

namespace steelyard::app {

bool has_folders() {
    return false;
}

std::string where_given(const std::filesystem::path& file) {
    return file.filename().string() + ", among your browser's downloads";
}

std::string where_kept(const std::filesystem::path& /*file*/) {
    return "this browser's storage";
}

} // namespace steelyard::app
