#include "app/handout/blueprint_shelf.h"

#include "app/own/own_files.h"

#include <algorithm>
#include <system_error>
#include <utility>

namespace steelyard::app {

namespace fs = std::filesystem;

namespace {

/// A file that was opened and also lies in a folder stands on the shelf once.
void add(publish::BlueprintListing listed, BlueprintShelf& shelf) {
    if (!listed) {
        setup::InputError error = listed.error();
        // A whole path is wider than the column that it is told in.
        const fs::path file = fs::path(error.file).filename();
        if (fs::path(file.stem()).extension() == ".blueprint")
            error.file = file.string();
        shelf.faults.push_back(setup::to_text(error));
        return;
    }
    const auto same = [&](const publish::Blueprint& one) { return one.file == listed->file; };
    if (std::none_of(shelf.blueprints.begin(), shelf.blueprints.end(), same))
        shelf.blueprints.push_back(std::move(*listed));
}

void add_folder(const fs::path& folder, BlueprintShelf& shelf) {
    for (publish::BlueprintListing& listed : publish::list_blueprints(folder))
        add(std::move(listed), shelf);
}

} // namespace

fs::path own_blueprint_folder() {
    return own_folder_of("blueprints");
}

BlueprintShelf read_blueprint_shelf(const BlueprintPlaces& places) {
    BlueprintShelf shelf;
    for (const fs::path& path : places.opened)
        add(publish::read_blueprint(path), shelf);
    std::error_code failed;
    if (!places.own.empty() && fs::exists(places.own, failed))
        add_folder(places.own, shelf);
    add_folder(places.shipped, shelf);
    return shelf;
}

std::size_t place_on_shelf(const BlueprintShelf& shelf, const std::string& file) {
    const auto found =
        std::find_if(shelf.blueprints.begin(), shelf.blueprints.end(),
                     [&](const publish::Blueprint& one) { return one.file == file; });
    return found == shelf.blueprints.end()
               ? 0
               : static_cast<std::size_t>(found - shelf.blueprints.begin());
}

} // namespace steelyard::app
