#include "app/shelf/shelf.h"

#include "setup/setup.h"

namespace steelyard::app {

Shelf read_shelf(const std::filesystem::path& folder) {
    Shelf shelf;
    auto listings = setup::list_setups(folder);
    if (!listings) {
        shelf.faults.push_back(setup::to_text(listings.error()));
        return shelf;
    }
    for (setup::SetupListing& listing : *listings)
        if (!listing.setup)
            shelf.faults.push_back(setup::to_text(listing.setup.error()));
        else if (auto* lever = std::get_if<setup::LeverSetup>(&*listing.setup))
            shelf.levers.push_back(std::move(*lever));
        else
            shelf.bodies.push_back(std::move(std::get<setup::BodySetup>(*listing.setup)));
    return shelf;
}

} // namespace steelyard::app
