#pragma once
// The bench's column of readings; each unfolds how it was computed.

#include "app/bench/readings.h"
#include "app/frame/layout.h"
#include "app/look/style.h"

#include <string>

namespace steelyard::app {

/// What is unfolded between frames.
struct ColumnState {
    std::string unfolded; ///< name of the unfolded reading; empty = none
};

/// Unfolds the next reading, or the one before; after the last none is unfolded.
void unfold_next(const BenchReadings& readings, int step, ColumnState& state);

/// What was asked for in the column.
struct ColumnWishes {
    bool ask_question = false;
    bool switch_hand = false; ///< take the effort by hand, or give it back to the solver
    std::optional<DrawAs> draw_as;
};

ColumnWishes draw_column(const Style& style, const BenchModel& model, const BenchReadings& readings,
                         const Layout& layout, ColumnState& state);

} // namespace steelyard::app
