#pragma once
// The bench's column of readings; each unfolds how it was computed.

#include "app/bench/readings.h"
#include "app/frame/layout.h"
#include "app/look/style.h"

#include <optional>

namespace steelyard::app {

/// What is unfolded between frames.
struct ColumnState {
    std::optional<setup::LeverReading> unfolded;
};

/// What was asked for in the column.
struct ColumnOutcome {
    bool ask_question = false;
    bool switch_hand = false; ///< take the effort by hand, or give it back to the solver
};

ColumnOutcome draw_column(const Style& style, const BenchModel& model,
                          const BenchReadings& readings, const Layout& layout, ColumnState& state);

} // namespace steelyard::app
