#include "app/own/own_files.h"

#include "setup/files/data_folder.h"

#include <fmt/format.h>

#include <cctype>
#include <system_error>

namespace steelyard::app {

namespace fs = std::filesystem;

namespace {

/// File systems take 255 bytes for a name; a number and an ending come to it.
constexpr std::size_t kLongestStem = 60;

} // namespace

std::string file_stem(std::string_view title, std::string_view otherwise) {
    std::string stem;
    for (const char c : title) {
        const auto letter = static_cast<unsigned char>(c);
        if (std::isalnum(letter) != 0)
            stem += static_cast<char>(std::tolower(letter));
        else if (!stem.empty() && stem.back() != '-')
            stem += '-';
    }
    stem = stem.substr(0, kLongestStem);
    while (!stem.empty() && stem.back() == '-')
        stem.pop_back();
    return stem.empty() ? std::string(otherwise) : stem;
}

fs::path own_folder_of(std::string_view what) {
    const fs::path own = setup::own_folder();
    return own.empty() ? own : own / what;
}

fs::path free_path(const fs::path& folder, std::string_view title, std::string_view ending,
                   std::string_view otherwise) {
    if (folder.empty())
        return {};
    const std::string stem = file_stem(title, otherwise);
    std::error_code failed;
    fs::path path = folder / fmt::format("{}{}", stem, ending);
    for (int number = 2; fs::exists(path, failed); ++number)
        path = folder / fmt::format("{}-{}{}", stem, number, ending);
    return path;
}

} // namespace steelyard::app
