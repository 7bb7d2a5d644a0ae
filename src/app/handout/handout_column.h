#pragma once
// The column of a handout: its choices in rows, where it goes, and how far the writing is.

#include "app/handout/handout_screen.h"

namespace steelyard::app {

/// What was asked for in the column.
enum class HandoutWish { none, make, stop };

/// Draws the column; choices that are pressed or typed are taken up at once.
HandoutWish draw_handout_column(const Style& style, const Layout& layout,
                                const problems::Bank& bank, HandoutScreen& screen);

} // namespace steelyard::app
