// What a frame of the bench costs, measured by a frame of ImGui's own demonstration window. Both
// draw 1280×720 with the same OpenGL in the same run; without a display there is nothing to time.

#include "app/platform/key.h"
#include "bench/bench_window.h"
#include "setup/files/data_folder.h"
#include "setup/setup.h"

#include <glad/gl.h>

#include <benchmark/benchmark.h>

using namespace steelyard;

namespace {

const scene::Point kSheet_px{1280.0, 720.0};

/// Everything of a frame: a nudge comes in, the lever is solved, drawn, laid out and painted.
void frame_of_the_bench(benchmark::State& state) {
    std::optional<app::Window> window = bench::open_window(state, kSheet_px);
    if (!window)
        return;
    app::Incoming& incoming = window->incoming();
    auto painter = app::ShapePainter::create();
    auto setup = setup::read_lever_setup(setup::data_folder() / "assets/setups/seesaw.setup.toml");
    if (!painter || !setup) {
        state.SkipWithError("the shaders or the seesaw cannot be used");
        return;
    }
    app::Application application(std::move(*window), std::move(*painter), app::SavedWork({}),
                                 setup::data_folder());
    application.open(setup::Setup(*setup));
    bool to_the_right = false;
    for (auto _ : state) {
        incoming.keys.push_back({to_the_right ? app::key::kRight : app::key::kLeft, 0});
        to_the_right = !to_the_right;
        application.frame(1.0 / 60.0);
        glFinish();
    }
}
BENCHMARK(frame_of_the_bench)->MeasureProcessCPUTime()->Unit(benchmark::kMillisecond);

void frame_of_the_demo_window(benchmark::State& state) {
    std::optional<app::Window> window = bench::open_window(state, kSheet_px);
    if (!window)
        return;
    for (auto _ : state)
        bench::draw_demo_frame(*window);
}
BENCHMARK(frame_of_the_demo_window)->MeasureProcessCPUTime()->Unit(benchmark::kMillisecond);

} // namespace
