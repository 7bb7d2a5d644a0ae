#pragma once
// What comes in for a window of GLFW's, and the ImGui that hears it.

#include "app/platform/window.h"

#include <variant>
#include <vector>

struct GLFWwindow;
struct ImGuiContext;

namespace steelyard::app {

struct KeyRelease {
    int key, code, modifiers;
};
struct ButtonRelease {
    int button, modifiers;
};

/// What GLFW's callbacks need to know: which ImGui hears them.
struct Events {
    Incoming incoming;
    ImGuiContext* imgui = nullptr;
    /// ImGui looks at keys and buttons once a frame, and would miss what a slow frame let come and
    /// go: once one went down, it hears of releases, also of Ctrl's, after the frame.
    bool went_down = false;
    std::vector<std::variant<KeyRelease, ButtonRelease>> late_releases;
};

/// Makes an ImGui for a window, has it draw there and hear what comes in for it.
/// @param events  hold what came in; must outlive the window
void start_imgui(GLFWwindow* window, Events& events);

/// Tells ImGui what was kept from it during the frame.
void hear_late_releases(GLFWwindow* window, Events& events);

} // namespace steelyard::app
