#include "app/platform/folders.h"

namespace steelyard::app {

bool has_folders() {
    return true;
}

std::string where_given(const std::filesystem::path& file) {
    return file.string();
}

std::string where_kept(const std::filesystem::path& file) {
    return file.string();
}

} // namespace steelyard::app
