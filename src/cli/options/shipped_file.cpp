#include "cli/options/shipped_file.h"

#include "setup/files/data_folder.h"

#include <system_error>
#include <vector>

namespace steelyard::cli {
namespace fs = std::filesystem;

fs::path shipped_or_own(const std::string& named, std::string_view folder,
                        std::string_view ending) {
    std::error_code failed;
    const bool only_a_name = !named.empty() && fs::path(named).filename() == named;
    if (!only_a_name || fs::exists(named, failed))
        return named;
    const fs::path own = setup::own_folder();
    const fs::path shipped = setup::data_folder() / "assets" / folder;
    // Exercises of the body stand in a folder of their own.
    std::vector<fs::path> places{shipped, shipped / "body"};
    if (!own.empty())
        places.insert(places.begin(), own / folder);
    for (const fs::path& place : places) {
        for (const std::string& name : {named, named + std::string(ending)})
            if (fs::is_regular_file(place / name, failed))
                return place / name;
    }
    return named;
}

} // namespace steelyard::cli
