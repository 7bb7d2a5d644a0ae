#include "setup/files/folder.h"

#include <algorithm>
#include <string>
#include <system_error>

namespace steelyard::setup {

tl::expected<std::vector<std::filesystem::path>, InputError>
files_ending(const std::filesystem::path& folder, std::string_view ending) {
    std::error_code trouble;
    std::filesystem::directory_iterator entry(folder, trouble);
    std::vector<std::filesystem::path> paths;
    while (!trouble && entry != std::filesystem::directory_iterator()) {
        const std::string name = entry->path().filename().string();
        if (name.size() > ending.size() && name.substr(name.size() - ending.size()) == ending)
            paths.push_back(entry->path());
        entry.increment(trouble);
    }
    if (trouble) {
        InputError error;
        error.file = folder.string();
        error.found = "a folder that cannot be read";
        error.expected = "a folder with files ending in " + std::string(ending);
        error.mend = "The system says: " + trouble.message() + ".";
        return tl::make_unexpected(std::move(error));
    }
    std::sort(paths.begin(), paths.end());
    return paths;
}

} // namespace steelyard::setup
