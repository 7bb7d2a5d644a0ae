#pragma once
// The list of places: a new place is a line here.

#include "app/place/place.h"

#include <memory>
#include <span>
#include <string_view>

namespace steelyard::app {

/// One line of the list.
struct PlaceEntry {
    PlaceName name;
    const char* word; ///< in the row at the top
    std::unique_ptr<Place> (*make)(Surroundings& around);
};

/// All places in the order of the row; the function keys from F2 on go to them.
std::span<const PlaceEntry> place_list();

/// The line of a place.
const PlaceEntry& entry_of(PlaceName name);

/// The place with a word in the row; the start for any other word.
PlaceName place_named(std::string_view word);

/// The place where a setup belongs.
PlaceName place_of(const setup::Setup& setup);

} // namespace steelyard::app
