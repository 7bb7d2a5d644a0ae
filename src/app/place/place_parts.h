#pragma once
// What several places have in common: choosing from the shelf, and saying why nothing is there.

#include "app/place/place.h"
#include "app/shelf/shelf_view.h"

#include <functional>

namespace steelyard::app {

/// What the shelf shows of levers. The shelf is to outlive it.
ShelfContent lever_content(std::string heading, const Shelf& levers);

/// The same of exercises.
ShelfContent exercise_content(std::string heading, const Shelf& exercises);

/// Runs a frame of a place whose shelf is open.
/// @param put  puts what was chosen on the stage, by its index
PlaceFrame run_shelf(const PlaceInput& input, const ShelfContent& content, ShelfState& state,
                     const std::function<void(std::size_t)>& put);

/// Says in a place's own room why there is nothing to show.
void draw_trouble(const PlaceInput& input, const std::string& sentence);

} // namespace steelyard::app
