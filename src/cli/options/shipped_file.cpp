#include "cli/options/shipped_file.h"

#include "setup/files/data_folder.h"
#include "setup/toml/spelling.h"

#include <system_error>
#include <vector>

namespace steelyard::cli {
namespace fs = std::filesystem;

namespace {

/// Where files of a folder are looked for: the person's own first. Exercises of the body stand in a
/// folder of their own.
std::vector<fs::path> places_of(std::string_view folder) {
    const fs::path own = setup::own_folder();
    const fs::path shipped = setup::data_folder() / "assets" / folder;
    std::vector<fs::path> places{shipped, shipped / "body"};
    if (!own.empty())
        places.insert(places.begin(), own / folder);
    return places;
}

} // namespace

fs::path shipped_or_own(const std::string& named, std::string_view folder,
                        std::string_view ending) {
    std::error_code failed;
    const bool only_a_name = !named.empty() && fs::path(named).filename() == named;
    if (!only_a_name || fs::exists(named, failed))
        return named;
    for (const fs::path& place : places_of(folder)) {
        for (const std::string& name : {named, named + std::string(ending)})
            if (fs::is_regular_file(place / name, failed))
                return place / name;
    }
    return named;
}

std::string nearest_shipped(const std::string& named, std::string_view folder,
                            std::string_view ending) {
    std::vector<std::string> names;
    for (const fs::path& place : places_of(folder)) {
        std::error_code failed;
        for (const fs::directory_entry& entry : fs::directory_iterator(place, failed)) {
            const std::string file = entry.path().filename().string();
            const bool is_one =
                file.size() > ending.size() &&
                file.compare(file.size() - ending.size(), ending.size(), ending) == 0;
            if (is_one)
                names.push_back(file.substr(0, file.size() - ending.size()));
        }
    }
    return setup::nearest_spelling(named, {names.begin(), names.end()});
}

} // namespace steelyard::cli
