#pragma once
// The page of settings: units, look, text size, motion.

#include "app/look/style.h"
#include "app/platform/window.h"
#include "app/saved/saved_work.h"

namespace steelyard::app {

/// The page between frames.
struct SettingsState {
    std::size_t chosen = 0; ///< row that the arrow keys change
};

/// The text size that is a step larger or smaller than one [0.8 to 2.5].
double next_text_size(double size, int step);

/// The look after another one, in a round.
scene::Look next_look(scene::Look look);

/// Draws the page over the whole window and reads its keys: up and down choose a row, left and
/// right change it.
/// @return false when it is to be closed: Escape or a press beside the rows
bool draw_settings(const Style& style, const scene::Point& window_px,
                   const std::vector<KeyPress>& keys, SettingsState& state,
                   Preferences& preferences);

} // namespace steelyard::app
