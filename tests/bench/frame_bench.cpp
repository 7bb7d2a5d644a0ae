// What a frame of the bench costs, measured by a frame of ImGui's own demonstration window. Both
// draw 1280×720 with the same OpenGL in the same run; without a display there is nothing to time.

#include "app/application.h"
#include "setup/data_folder.h"

#include <GLFW/glfw3.h>
#include <glad/gl.h>
#include <imgui.h>

#include <benchmark/benchmark.h>

using namespace steelyard;

namespace {

constexpr int kWidth_px = 1280;
constexpr int kHeight_px = 720;

/// A window whose frames do not wait for the screen; skips the benchmark when there is none.
std::optional<app::Window> open_window(benchmark::State& state) {
    auto window = app::Window::open(kWidth_px, kHeight_px, "bench");
    if (!window) {
        state.SkipWithError(window.error().what.c_str());
        return std::nullopt;
    }
    glfwSwapInterval(0);
    return std::move(*window);
}

/// Everything of a frame: a nudge comes in, the lever is solved, drawn, laid out and painted.
void frame_of_the_bench(benchmark::State& state) {
    std::optional<app::Window> window = open_window(state);
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
    application.open_setup(*setup);
    bool to_the_right = false;
    for (auto _ : state) {
        incoming.keys.push_back({to_the_right ? GLFW_KEY_RIGHT : GLFW_KEY_LEFT, 0});
        to_the_right = !to_the_right;
        application.frame(1.0 / 60.0);
        glFinish();
    }
}
BENCHMARK(frame_of_the_bench)->MeasureProcessCPUTime()->Unit(benchmark::kMillisecond);

void frame_of_the_demo_window(benchmark::State& state) {
    std::optional<app::Window> window = open_window(state);
    if (!window)
        return;
    for (auto _ : state) {
        window->begin_frame();
        ImGui::ShowDemoWindow();
        glViewport(0, 0, kWidth_px, kHeight_px);
        glClear(GL_COLOR_BUFFER_BIT);
        window->end_frame();
        glFinish();
    }
}
BENCHMARK(frame_of_the_demo_window)->MeasureProcessCPUTime()->Unit(benchmark::kMillisecond);

} // namespace
