#include "app/shelf/shelf.h"

#include "setup/setup.h"

#include <algorithm>
#include <iterator>

namespace steelyard::app {

namespace {

template <typename Kind> Shelf<Kind> read_folder(const std::filesystem::path& folder) {
    Shelf<Kind> shelf;
    auto listings = setup::list_setups(folder);
    if (!listings) {
        shelf.faults.push_back(setup::to_text(listings.error()));
        return shelf;
    }
    for (setup::SetupListing& listing : *listings)
        if (!listing.setup)
            shelf.faults.push_back(setup::to_text(listing.setup.error()));
        else if (auto* one = std::get_if<Kind>(&*listing.setup))
            shelf.setups.push_back({std::move(*one)});
    return shelf;
}

template <typename Kind> Shelf<Kind> own_before(const OwnSetups& own, Shelf<Kind> shelf) {
    Shelf<Kind> all;
    all.faults = std::move(shelf.faults);
    for (OwnSetup& one : own.all(all.faults))
        if (auto* of_kind = std::get_if<Kind>(&one.setup))
            all.setups.push_back({std::move(*of_kind), Origin::own, std::move(one.file)});
    std::move(shelf.setups.begin(), shelf.setups.end(), std::back_inserter(all.setups));
    return all;
}

} // namespace

LeverShelf read_levers(const std::filesystem::path& folder) {
    return read_folder<setup::LeverSetup>(folder);
}

ExerciseShelf read_exercises(const std::filesystem::path& folder) {
    return read_folder<setup::BodySetup>(folder);
}

LeverShelf with_own(const OwnSetups& own, LeverShelf shelf) {
    return own_before(own, std::move(shelf));
}

ExerciseShelf with_own(const OwnSetups& own, ExerciseShelf shelf) {
    return own_before(own, std::move(shelf));
}

} // namespace steelyard::app
