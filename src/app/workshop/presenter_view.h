#pragma once
// What the presenter's window shows.

#include "app/look/style.h"
#include "app/workshop/show_model.h"

#include <string>

namespace steelyard::app {

/// The step's timer goes on in quarters of a minute, so that the window rests in between [s].
inline constexpr double kTimerStep_s = 15.0;

/// "1:30 of 2:00"; the planned time is left out where there is none.
std::string timer_text(double spent_s, std::optional<double> planned_s);

/// Draws the whole window.
/// @param show  null while no lesson is shown
void draw_presenter_view(const Style& style, const scene::Point& window_px, const ShowModel* show);

} // namespace steelyard::app
