#include "app/platform/desktop/events.h"

#include "app/platform/clock.h"
#include "app/platform/key.h"

#include <GLFW/glfw3.h>
#include <imgui.h>
#include <imgui_impl_glfw.h>
#include <imgui_impl_opengl3.h>

#include <utility>

namespace steelyard::app {

static_assert(key::kSpace == GLFW_KEY_SPACE);
static_assert(key::kMinus == GLFW_KEY_MINUS);
static_assert(key::k1 == GLFW_KEY_1);
static_assert(key::k2 == GLFW_KEY_2);
static_assert(key::k3 == GLFW_KEY_3);
static_assert(key::k9 == GLFW_KEY_9);
static_assert(key::kEqual == GLFW_KEY_EQUAL);
static_assert(key::kA == GLFW_KEY_A);
static_assert(key::kB == GLFW_KEY_B);
static_assert(key::kC == GLFW_KEY_C);
static_assert(key::kD == GLFW_KEY_D);
static_assert(key::kE == GLFW_KEY_E);
static_assert(key::kF == GLFW_KEY_F);
static_assert(key::kG == GLFW_KEY_G);
static_assert(key::kH == GLFW_KEY_H);
static_assert(key::kL == GLFW_KEY_L);
static_assert(key::kM == GLFW_KEY_M);
static_assert(key::kN == GLFW_KEY_N);
static_assert(key::kO == GLFW_KEY_O);
static_assert(key::kP == GLFW_KEY_P);
static_assert(key::kQ == GLFW_KEY_Q);
static_assert(key::kR == GLFW_KEY_R);
static_assert(key::kS == GLFW_KEY_S);
static_assert(key::kT == GLFW_KEY_T);
static_assert(key::kU == GLFW_KEY_U);
static_assert(key::kV == GLFW_KEY_V);
static_assert(key::kW == GLFW_KEY_W);
static_assert(key::kX == GLFW_KEY_X);
static_assert(key::kY == GLFW_KEY_Y);
static_assert(key::kZ == GLFW_KEY_Z);
static_assert(key::kEscape == GLFW_KEY_ESCAPE);
static_assert(key::kEnter == GLFW_KEY_ENTER);
static_assert(key::kTab == GLFW_KEY_TAB);
static_assert(key::kBackspace == GLFW_KEY_BACKSPACE);
static_assert(key::kInsert == GLFW_KEY_INSERT);
static_assert(key::kDelete == GLFW_KEY_DELETE);
static_assert(key::kRight == GLFW_KEY_RIGHT);
static_assert(key::kLeft == GLFW_KEY_LEFT);
static_assert(key::kDown == GLFW_KEY_DOWN);
static_assert(key::kUp == GLFW_KEY_UP);
static_assert(key::kPageUp == GLFW_KEY_PAGE_UP);
static_assert(key::kPageDown == GLFW_KEY_PAGE_DOWN);
static_assert(key::kHome == GLFW_KEY_HOME);
static_assert(key::kEnd == GLFW_KEY_END);
static_assert(key::kF1 == GLFW_KEY_F1);
static_assert(key::kF2 == GLFW_KEY_F2);
static_assert(key::kF5 == GLFW_KEY_F5);
static_assert(key::kF9 == GLFW_KEY_F9);
static_assert(key::kF11 == GLFW_KEY_F11);
static_assert(key::kF12 == GLFW_KEY_F12);
static_assert(key::kKeypadSubtract == GLFW_KEY_KP_SUBTRACT);
static_assert(key::kKeypadAdd == GLFW_KEY_KP_ADD);
static_assert(key::kKeypadEnter == GLFW_KEY_KP_ENTER);
static_assert(key::kWithShift == GLFW_MOD_SHIFT);
static_assert(key::kWithControl == GLFW_MOD_CONTROL);
static_assert(key::kWithAlt == GLFW_MOD_ALT);

namespace {

/// ImGui's backend works on whatever context is current: this makes one current for a while.
class ImGuiTurn {
public:
    explicit ImGuiTurn(ImGuiContext* context) : before_(ImGui::GetCurrentContext()) {
        ImGui::SetCurrentContext(context);
    }
    ~ImGuiTurn() { ImGui::SetCurrentContext(before_); }
    ImGuiTurn(const ImGuiTurn&) = delete;
    ImGuiTurn& operator=(const ImGuiTurn&) = delete;

private:
    ImGuiContext* before_;
};

/// Every event is noted, and ImGui of the very window hears it: its backend cannot tell windows
/// apart by itself.
void listen(GLFWwindow* window) {
    static constexpr auto events_of = [](GLFWwindow* w) -> Events& {
        return *static_cast<Events*>(glfwGetWindowUserPointer(w));
    };
    static constexpr auto pass_on = [](GLFWwindow* w, auto to_imgui, auto... what) {
        events_of(w).incoming.anything = true;
        const ImGuiTurn turn(events_of(w).imgui);
        to_imgui(w, what...);
    };
    static constexpr auto note = [](GLFWwindow* w) { events_of(w).incoming.anything = true; };
    glfwSetKeyCallback(window, [](GLFWwindow* w, int key, int code, int action, int modifiers) {
        Events& events = events_of(w);
        if (action != GLFW_RELEASE)
            events.incoming.keys.push_back({key, modifiers, 0});
        events.went_down = events.went_down || action == GLFW_PRESS;
        if (action == GLFW_RELEASE && events.went_down) {
            events.late_releases.emplace_back(KeyRelease{key, code, modifiers});
            return note(w);
        }
        pass_on(w, ImGui_ImplGlfw_KeyCallback, key, code, action, modifiers);
    });
    glfwSetCharCallback(window, [](GLFWwindow* w, unsigned character) {
        events_of(w).incoming.keys.push_back({0, 0, character});
        pass_on(w, ImGui_ImplGlfw_CharCallback, character);
    });
    glfwSetDropCallback(window, [](GLFWwindow* w, int count, const char** paths) {
        note(w);
        for (int i = 0; i < count; ++i)
            events_of(w).incoming.dropped_files.emplace_back(paths[i]);
    });
#if IMGUI_VERSION_NUM < 18700 // earlier ones look where the cursor is in each frame
    glfwSetCursorPosCallback(window, [](GLFWwindow* w, double x, double y) {
        note(w);
        events_of(w).incoming.pointer_px = {x, y};
    });
#else
    glfwSetCursorPosCallback(window, [](GLFWwindow* w, double x, double y) {
        events_of(w).incoming.pointer_px = {x, y};
        pass_on(w, ImGui_ImplGlfw_CursorPosCallback, x, y);
    });
#endif
    glfwSetMouseButtonCallback(window, [](GLFWwindow* w, int button, int action, int modifiers) {
        Events& events = events_of(w);
        Incoming& incoming = events.incoming;
        if (action == GLFW_PRESS)
            incoming.press(incoming.pointer_px, now_s(), button == GLFW_MOUSE_BUTTON_LEFT);
        events.went_down = events.went_down || action == GLFW_PRESS;
        if (action == GLFW_RELEASE && events.went_down) {
            events.late_releases.emplace_back(ButtonRelease{button, modifiers});
            return note(w);
        }
        pass_on(w, ImGui_ImplGlfw_MouseButtonCallback, button, action, modifiers);
    });
    glfwSetScrollCallback(window, [](GLFWwindow* w, double x, double y) {
        pass_on(w, ImGui_ImplGlfw_ScrollCallback, x, y);
    });
    glfwSetCursorEnterCallback(window, [](GLFWwindow* w, int entered) {
        pass_on(w, ImGui_ImplGlfw_CursorEnterCallback, entered);
    });
    glfwSetWindowFocusCallback(window, [](GLFWwindow* w, int focused) {
        pass_on(w, ImGui_ImplGlfw_WindowFocusCallback, focused);
    });
    glfwSetWindowRefreshCallback(window, [](GLFWwindow* w) { note(w); });
    glfwSetFramebufferSizeCallback(window, [](GLFWwindow* w, int, int) { note(w); });
    glfwSetWindowContentScaleCallback(window, [](GLFWwindow* w, float, float) { note(w); });
    glfwSetWindowCloseCallback(window, [](GLFWwindow* w) { note(w); });
}

} // namespace

void start_imgui(GLFWwindow* window, Events& events) {
    IMGUI_CHECKVERSION();
    events.imgui = ImGui::CreateContext();
    ImGui::SetCurrentContext(events.imgui);
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr; // what is remembered is remembered by us
    io.LogFilename = nullptr;
#if IMGUI_VERSION_NUM >= 18700 // all that came in between two frames is heard in the next
    io.ConfigInputTrickleEventQueue = false;
#endif
    io.ConfigInputTextCursorBlink = false; // nothing blinks, and idle stays idle
    glfwSetWindowSizeLimits(window, 480, 360, GLFW_DONT_CARE, GLFW_DONT_CARE);
    glfwSetWindowUserPointer(window, &events);
    listen(window);
    ImGui_ImplGlfw_InitForOpenGL(window, false); // our callbacks call its own
    ImGui_ImplOpenGL3_Init("#version 330 core");
}

void hear_late_releases(GLFWwindow* window, Events& events) {
    events.went_down = false;
    for (const auto& one : std::exchange(events.late_releases, {})) {
        if (const auto* const key = std::get_if<KeyRelease>(&one))
            ImGui_ImplGlfw_KeyCallback(window, key->key, key->code, GLFW_RELEASE, key->modifiers);
        else if (const auto* const button = std::get_if<ButtonRelease>(&one))
            ImGui_ImplGlfw_MouseButtonCallback(window, button->button, GLFW_RELEASE,
                                               button->modifiers);
    }
}

} // namespace steelyard::app
