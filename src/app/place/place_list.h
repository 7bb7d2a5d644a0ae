#pragma once
// The list of places: a new place is a line here.

#include "app/opened_file.h"
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
    int letter = 0; ///< a key that goes there, besides its function key; 0 = none
    /// True for files that are shown here; null = for none. Such a place is Opening.
    bool (*opens)(const OpenedFile& file) = nullptr;
};

/// All places in the order of the row; the function keys from F2 on go to them.
std::span<const PlaceEntry> place_list();

/// The line of a place.
const PlaceEntry& entry_of(PlaceName name);

/// The place with a word in the row; the start for any other word.
PlaceName place_named(std::string_view word);

/// The place that shows a file.
PlaceName place_for(const OpenedFile& file);

/// The place that a key leads to: by its turn for function keys, else by its letter. Where several
/// have the same letter, it goes from one to the next.
std::optional<PlaceName> place_at_key(int key, PlaceName present);

} // namespace steelyard::app
