#include "app/frame/window.h"

#include <GLFW/glfw3.h>
#include <fmt/format.h>
#include <glad/gl.h>
#include <imgui.h>
#include <imgui_impl_glfw.h>
#include <imgui_impl_opengl3.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace steelyard::app {

namespace {

/// As desktops have them; common practice, no source.
constexpr double kDoubleClick_s = 0.5;
constexpr double kDoubleClick_px = 6.0;

std::string last_glfw_error() {
    const char* said = nullptr;
    glfwGetError(&said);
    return said != nullptr ? said : "no reason given";
}

/// Version of the OpenGL that a plain context gets here, or an empty text.
std::string offered_opengl() {
    glfwDefaultWindowHints();
    glfwWindowHint(GLFW_VISIBLE, GLFW_FALSE);
    GLFWwindow* probe = glfwCreateWindow(16, 16, "", nullptr, nullptr);
    if (probe == nullptr)
        return {};
    glfwMakeContextCurrent(probe);
    using GetString = const unsigned char* (*)(unsigned);
    const auto get_string = reinterpret_cast<GetString>(glfwGetProcAddress("glGetString"));
    const unsigned char* version = get_string != nullptr ? get_string(GL_VERSION) : nullptr;
    std::string found = version != nullptr ? reinterpret_cast<const char*>(version) : "";
    glfwDestroyWindow(probe);
    return found;
}

WindowError no_opengl() {
    const std::string said = last_glfw_error();
    const std::string found = offered_opengl();
    return {fmt::format(
        "Steelyard draws with OpenGL 3.3, which this display does not offer ({}).\nFound: {}.\n"
        "Update the graphics driver, or draw without one: LIBGL_ALWAYS_SOFTWARE=1 steelyard.\n"
        "`steelyard solve`, `draw` and `ask` work without a window.",
        said, found.empty() ? "no OpenGL at all" : "OpenGL " + found)};
}

void ask_for_opengl() {
    glfwDefaultWindowHints();
    glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
    glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
    glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
    glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
    glfwWindowHint(GLFW_SCALE_TO_MONITOR, GLFW_TRUE);
}

/// The monitor at a place of the desktop, or the first; null when there is none.
GLFWmonitor* monitor_under(int x, int y) {
    int count = 0;
    GLFWmonitor** const monitors = glfwGetMonitors(&count);
    for (int i = 0; i < count; ++i) {
        int left = 0;
        int top = 0;
        glfwGetMonitorPos(monitors[i], &left, &top);
        const GLFWvidmode* const mode = glfwGetVideoMode(monitors[i]);
        if (mode != nullptr && x >= left && x < left + mode->width && y >= top &&
            y < top + mode->height)
            return monitors[i];
    }
    return glfwGetPrimaryMonitor();
}

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

} // namespace

void Incoming::press(const scene::Point& at_px, double at_s, bool left) {
    const bool second = left && pressed_at_s >= 0.0 && at_s - pressed_at_s <= kDoubleClick_s &&
                        (at_px - pressed_at_px).norm() <= kDoubleClick_px;
    double_clicked = double_clicked || second;
    pressed_at_px = at_px;
    pressed_at_s = left && !second ? at_s : -1.0;
}

tl::expected<Window, WindowError> Window::open(int width_px, int height_px, const char* title) {
    if (glfwInit() == GLFW_FALSE)
        return tl::unexpected(WindowError{fmt::format(
            "There is no display to open a window on ({}).\n"
            "`steelyard solve`, `draw` and `ask` work without one; `steelyard --help` shows how.",
            last_glfw_error())});
    ask_for_opengl();
    Window window;
    window.handle_ = {glfwCreateWindow(width_px, height_px, title, nullptr, nullptr), Close{true}};
    if (!window.handle_) {
        WindowError error = no_opengl();
        glfwTerminate();
        return tl::unexpected(std::move(error));
    }
    glfwMakeContextCurrent(window.handle());
    if (gladLoadGL(glfwGetProcAddress) == 0)
        return tl::unexpected(no_opengl());
    glfwSwapInterval(1);
    window.start_imgui();
    return window;
}

tl::expected<Window, WindowError> Window::open_beside(const Window& main, int width_px,
                                                      int height_px, const char* title) {
    ask_for_opengl();
    Window window;
    window.handle_ = {glfwCreateWindow(width_px, height_px, title, nullptr, main.handle()),
                      Close{false}};
    if (!window.handle_)
        return tl::unexpected(WindowError{
            fmt::format("A second window cannot be opened here ({}).", last_glfw_error())});
    glfwMakeContextCurrent(window.handle());
    glfwSwapInterval(0); // the main window keeps the pace: waiting twice would halve it
    window.start_imgui();
    return window;
}

/// Every event is noted, and ImGui of the very window hears it: its backend cannot tell windows
/// apart by itself.
void Window::listen(GLFWwindow* window) {
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
        events.key_went_down = events.key_went_down || action == GLFW_PRESS;
        if (action == GLFW_RELEASE && events.key_went_down) {
            events.late_releases.push_back({key, code, modifiers});
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
        Incoming& incoming = events_of(w).incoming;
        if (action == GLFW_PRESS)
            incoming.press(incoming.pointer_px, glfwGetTime(), button == GLFW_MOUSE_BUTTON_LEFT);
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

void Window::start_imgui() {
    IMGUI_CHECKVERSION();
    events_ = std::make_unique<Events>();
    events_->imgui = ImGui::CreateContext();
    ImGui::SetCurrentContext(events_->imgui);
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr; // what is remembered is remembered by us
    io.LogFilename = nullptr;
    io.ConfigInputTextCursorBlink = false; // nothing blinks, and idle stays idle
    glfwSetWindowSizeLimits(handle(), 480, 360, GLFW_DONT_CARE, GLFW_DONT_CARE);
    glfwSetWindowUserPointer(handle(), events_.get());
    listen(handle());
    ImGui_ImplGlfw_InitForOpenGL(handle(), false); // our callbacks call its own
    ImGui_ImplOpenGL3_Init("#version 330 core");
}

void Window::make_current() const {
    glfwMakeContextCurrent(handle());
    ImGui::SetCurrentContext(events_->imgui);
}

void Window::Close::operator()(GLFWwindow* window) const {
    glfwDestroyWindow(window);
    if (ends_glfw)
        glfwTerminate();
}

Window::~Window() {
    if (!handle_ || !events_)
        return;
    make_current();
    ImGui_ImplOpenGL3_Shutdown();
    ImGui_ImplGlfw_Shutdown();
    ImGui::DestroyContext(events_->imgui);
}

bool Window::wants_to_close() const {
    return glfwWindowShouldClose(handle()) == GLFW_TRUE;
}

Window::Lie Window::lie() const {
    Lie lie{};
    glfwGetWindowPos(handle(), &lie.x, &lie.y);
    glfwGetWindowSize(handle(), &lie.width, &lie.height);
    return lie;
}

void Window::turn_full_screen() {
    if (lay_) {
        const Lie back = *std::exchange(lay_, std::nullopt);
        glfwSetWindowMonitor(handle(), nullptr, back.x, back.y, back.width, back.height,
                             GLFW_DONT_CARE);
        return;
    }
    const Lie now = lie();
    GLFWmonitor* const monitor = monitor_under(now.x + now.width / 2, now.y + now.height / 2);
    const GLFWvidmode* const mode = monitor != nullptr ? glfwGetVideoMode(monitor) : nullptr;
    if (mode == nullptr)
        return;
    lay_ = now;
    // Going to the notes on another screen must not take the picture from the room.
    glfwSetWindowAttrib(handle(), GLFW_AUTO_ICONIFY, GLFW_FALSE);
    glfwSetWindowMonitor(handle(), monitor, 0, 0, mode->width, mode->height, mode->refreshRate);
}

scene::Point Window::windowed_size_px() const {
    return lay_ ? scene::Point(lay_->width, lay_->height) : size_px();
}

void Window::set_title(const std::string& title) {
    glfwSetWindowTitle(handle(), title.c_str());
}

scene::Point Window::size_px() const {
    int width = 0;
    int height = 0;
    glfwGetWindowSize(handle(), &width, &height);
    return {width, height};
}

double Window::device_pixels() const {
    int width = 0;
    int height = 0;
    glfwGetFramebufferSize(handle(), &width, &height);
    const double sheet_width = size_px().x();
    return sheet_width > 0.0 ? width / sheet_width : 1.0;
}

double Window::content_scale() const {
    float across = 1.0F;
    float down = 1.0F;
    glfwGetWindowContentScale(handle(), &across, &down);
    // Where the framebuffer is already finer than the sheet, the text is enlarged by that.
    return std::max(1.0, static_cast<double>(across) / device_pixels());
}

void Window::renew_font_texture() {
#if IMGUI_VERSION_NUM < 19200 // later versions renew it by themselves
    ImGui_ImplOpenGL3_DestroyFontsTexture();
    ImGui_ImplOpenGL3_CreateFontsTexture();
#endif
}

void Window::begin_frame() {
    ImGui_ImplOpenGL3_NewFrame();
    ImGui_ImplGlfw_NewFrame();
    ImGui::NewFrame();
}

void Window::fill(scene::Rgb colour) const {
    const double pixels = device_pixels();
    glViewport(0, 0, static_cast<int>(std::lround(size_px().x() * pixels)),
               static_cast<int>(std::lround(size_px().y() * pixels)));
    glDisable(GL_SCISSOR_TEST);
    glClearColor(static_cast<float>(colour.red) / 255.0F, static_cast<float>(colour.green) / 255.0F,
                 static_cast<float>(colour.blue) / 255.0F, 1.0F);
    glClear(GL_COLOR_BUFFER_BIT);
}

void Window::end_frame() {
    ImGui::Render();
    ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
    glfwSwapBuffers(handle());
    events_->key_went_down = false;
    for (const KeyRelease& one : std::exchange(events_->late_releases, {}))
        ImGui_ImplGlfw_KeyCallback(handle(), one.key, one.code, GLFW_RELEASE, one.modifiers);
}

} // namespace steelyard::app
