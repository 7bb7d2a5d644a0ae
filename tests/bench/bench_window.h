#pragma once
// Windows whose frames do not wait for the screen, for timing what is drawn in them.

#include "app/application.h"

#include <benchmark/benchmark.h>
#include <optional>

namespace steelyard::bench {

/// Opens one; skips the benchmark when there is no display to have it on.
std::optional<app::Window> open_window(benchmark::State& state, const scene::Point& size_px);

/// Draws a frame of ImGui's own demonstration, and waits until it is there.
void draw_demo_frame(app::Window& window);

} // namespace steelyard::bench
