#include "app/platform/window.h"

#include "app/platform/clock.h"
#include "app/platform/gl.h"
#include "app/platform/key.h"
#include "app/platform/loop.h"

#include <GLFW/glfw3.h>
#include <fmt/format.h>
#include <imgui.h>
#include <imgui_impl_glfw.h>
#include <imgui_impl_opengl3.h>

#include <algorithm>
#include <cmath>
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

struct KeyRelease {
    int key, code, modifiers;
};

/// What GLFW's callbacks need to know: which ImGui hears them.
struct Events {
    Incoming incoming;
    ImGuiContext* imgui = nullptr;
    /// ImGui looks at keys once a frame, and would miss what a slow frame let come and go: once
    /// a key went down, it hears of releases, also of Ctrl's, after the frame.
    bool key_went_down = false;
    std::vector<KeyRelease> late_releases;
};

struct Close {
    bool ends_glfw; ///< the main window's closing ends it
    void operator()(GLFWwindow* window) const {
        glfwDestroyWindow(window);
        if (ends_glfw)
            glfwTerminate();
    }
};
using Handle = std::unique_ptr<GLFWwindow, Close>;

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
            incoming.press(incoming.pointer_px, now_s(), button == GLFW_MOUSE_BUTTON_LEFT);
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

void start_imgui(GLFWwindow* window, Events& events) {
    IMGUI_CHECKVERSION();
    events.imgui = ImGui::CreateContext();
    ImGui::SetCurrentContext(events.imgui);
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr; // what is remembered is remembered by us
    io.LogFilename = nullptr;
    io.ConfigInputTextCursorBlink = false; // nothing blinks, and idle stays idle
    glfwSetWindowSizeLimits(window, 480, 360, GLFW_DONT_CARE, GLFW_DONT_CARE);
    glfwSetWindowUserPointer(window, &events);
    listen(window);
    ImGui_ImplGlfw_InitForOpenGL(window, false); // our callbacks call its own
    ImGui_ImplOpenGL3_Init("#version 330 core");
}

} // namespace

void Incoming::press(const scene::Point& at_px, double at_s, bool left) {
    const bool second = left && pressed_at_s >= 0.0 && at_s - pressed_at_s <= kDoubleClick_s &&
                        (at_px - pressed_at_px).norm() <= kDoubleClick_px;
    double_clicked = double_clicked || second;
    pressed_at_px = at_px;
    pressed_at_s = left && !second ? at_s : -1.0;
}

struct Window::Native {
    explicit Native(Handle opened) : handle(std::move(opened)) {
        start_imgui(handle.get(), events);
    }
    Native(const Native&) = delete;
    Native& operator=(const Native&) = delete;
    ~Native() {
        make_current();
        ImGui_ImplOpenGL3_Shutdown();
        ImGui_ImplGlfw_Shutdown();
        ImGui::DestroyContext(events.imgui);
    }
    void make_current() const {
        glfwMakeContextCurrent(handle.get());
        ImGui::SetCurrentContext(events.imgui);
    }

    Handle handle; ///< outlives what draws into it
    Events events;
    std::optional<ScreenArea> lay; ///< before it filled the screen; empty while it does not
};

Window::Window(std::unique_ptr<Native> native) : native_(std::move(native)) {}
Window::Window(Window&& other) noexcept = default;
Window::~Window() = default;

tl::expected<Window, WindowError> Window::open(int width_px, int height_px, const char* title) {
    if (glfwInit() == GLFW_FALSE)
        return tl::unexpected(WindowError{fmt::format(
            "There is no display to open a window on ({}).\n"
            "`steelyard solve`, `draw` and `ask` work without one; `steelyard --help` shows how.",
            last_glfw_error())});
    ask_for_opengl();
    Handle handle{glfwCreateWindow(width_px, height_px, title, nullptr, nullptr), Close{true}};
    if (!handle) {
        WindowError error = no_opengl();
        glfwTerminate();
        return tl::unexpected(std::move(error));
    }
    glfwMakeContextCurrent(handle.get());
    if (gladLoadGL(glfwGetProcAddress) == 0)
        return tl::unexpected(no_opengl());
    glfwSwapInterval(1);
    return Window(std::make_unique<Native>(std::move(handle)));
}

tl::expected<Window, WindowError> Window::open_beside(const Window& main, int width_px,
                                                      int height_px, const char* title) {
    ask_for_opengl();
    Handle handle{glfwCreateWindow(width_px, height_px, title, nullptr, main.native_->handle.get()),
                  Close{false}};
    if (!handle)
        return tl::unexpected(WindowError{
            fmt::format("A second window cannot be opened here ({}).", last_glfw_error())});
    glfwMakeContextCurrent(handle.get());
    glfwSwapInterval(0); // the main window keeps the pace: waiting twice would halve it
    return Window(std::make_unique<Native>(std::move(handle)));
}

std::vector<ScreenArea> Window::screens() {
    int count = 0;
    GLFWmonitor** monitors = glfwGetMonitors(&count);
    std::vector<ScreenArea> areas(static_cast<std::size_t>(count));
    for (std::size_t i = 0; i < areas.size(); ++i)
        glfwGetMonitorWorkarea(monitors[i], &areas[i].x, &areas[i].y, &areas[i].width,
                               &areas[i].height);
    return areas;
}

Incoming& Window::incoming() {
    return native_->events.incoming;
}

void Window::make_current() const {
    native_->make_current();
}

bool Window::wants_to_close() const {
    return glfwWindowShouldClose(native_->handle.get()) == GLFW_TRUE;
}

ScreenArea Window::area() const {
    ScreenArea area;
    glfwGetWindowPos(native_->handle.get(), &area.x, &area.y);
    glfwGetWindowSize(native_->handle.get(), &area.width, &area.height);
    return area;
}

void Window::move_to(int x, int y) {
    glfwSetWindowPos(native_->handle.get(), x, y);
}

void Window::focus() const {
    glfwFocusWindow(native_->handle.get());
}

void Window::turn_full_screen() {
    if (native_->lay) {
        const ScreenArea back = *std::exchange(native_->lay, std::nullopt);
        glfwSetWindowMonitor(native_->handle.get(), nullptr, back.x, back.y, back.width,
                             back.height, GLFW_DONT_CARE);
        return;
    }
    const ScreenArea now = area();
    GLFWmonitor* const monitor = monitor_under(now.x + now.width / 2, now.y + now.height / 2);
    const GLFWvidmode* const mode = monitor != nullptr ? glfwGetVideoMode(monitor) : nullptr;
    if (mode == nullptr)
        return;
    native_->lay = now;
    // Going to the notes on another screen must not take the picture from the room.
    glfwSetWindowAttrib(native_->handle.get(), GLFW_AUTO_ICONIFY, GLFW_FALSE);
    glfwSetWindowMonitor(native_->handle.get(), monitor, 0, 0, mode->width, mode->height,
                         mode->refreshRate);
}

scene::Point Window::windowed_size_px() const {
    return native_->lay ? scene::Point(native_->lay->width, native_->lay->height) : size_px();
}

void Window::set_title(const std::string& title) {
    glfwSetWindowTitle(native_->handle.get(), title.c_str());
}

scene::Point Window::size_px() const {
    int width = 0;
    int height = 0;
    glfwGetWindowSize(native_->handle.get(), &width, &height);
    return {width, height};
}

double Window::device_pixels() const {
    int width = 0;
    int height = 0;
    glfwGetFramebufferSize(native_->handle.get(), &width, &height);
    const double sheet_width = size_px().x();
    return sheet_width > 0.0 ? width / sheet_width : 1.0;
}

double Window::content_scale() const {
    float across = 1.0F;
    float down = 1.0F;
    glfwGetWindowContentScale(native_->handle.get(), &across, &down);
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
    glfwSwapBuffers(native_->handle.get());
    native_->events.key_went_down = false;
    for (const KeyRelease& one : std::exchange(native_->events.late_releases, {}))
        ImGui_ImplGlfw_KeyCallback(native_->handle.get(), one.key, one.code, GLFW_RELEASE,
                                   one.modifiers);
}

double now_s() {
    return glfwGetTime();
}

void wake() {
    glfwPostEmptyEvent();
}

void take_turns(std::unique_ptr<Turns> turns) {
    while (!turns->is_over()) {
        glfwPollEvents();
        const double rest_s = turns->rest_s();
        if (std::isinf(rest_s))
            glfwWaitEvents();
        else if (rest_s > 0.0)
            glfwWaitEventsTimeout(rest_s);
        turns->turn();
    }
}

} // namespace steelyard::app
