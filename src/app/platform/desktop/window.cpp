#include "app/platform/window.h"

#include "app/platform/desktop/events.h"
#include "app/platform/gl.h"

#include <GLFW/glfw3.h>
#include <fmt/format.h>
#include <imgui.h>
#include <imgui_impl_glfw.h>
#include <imgui_impl_opengl3.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace steelyard::app {

namespace {

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

} // namespace

struct Window::Native {
    struct Close {
        bool ends_glfw; ///< the main window's closing ends it
        void operator()(GLFWwindow* window) const {
            glfwDestroyWindow(window);
            if (ends_glfw)
                glfwTerminate();
        }
    };
    using Handle = std::unique_ptr<GLFWwindow, Close>;

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
    Native::Handle handle{glfwCreateWindow(width_px, height_px, title, nullptr, nullptr),
                          Native::Close{true}};
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
    Native::Handle handle{
        glfwCreateWindow(width_px, height_px, title, nullptr, main.native_->handle.get()),
        Native::Close{false}};
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
    hear_late_releases(native_->handle.get(), native_->events);
}

} // namespace steelyard::app
