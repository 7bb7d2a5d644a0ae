#include "bench/bench_window.h"

#include <GLFW/glfw3.h>
#include <glad/gl.h>
#include <imgui.h>

namespace steelyard::bench {

std::optional<app::Window> open_window(benchmark::State& state, const scene::Point& size_px) {
    auto window =
        app::Window::open(static_cast<int>(size_px.x()), static_cast<int>(size_px.y()), "bench");
    if (!window) {
        state.SkipWithError(window.error().what.c_str());
        return std::nullopt;
    }
    glfwSwapInterval(0);
    return std::move(*window);
}

void draw_demo_frame(app::Window& window) {
    window.begin_frame();
    ImGui::ShowDemoWindow();
    window.fill({});
    window.end_frame();
    glFinish();
}

} // namespace steelyard::bench
