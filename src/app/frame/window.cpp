#include "app/frame/window.h"

#include <GLFW/glfw3.h>
#include <fmt/format.h>
#include <glad/gl.h>
#include <imgui.h>
#include <imgui_impl_glfw.h>
#include <imgui_impl_opengl3.h>

#include <algorithm>

namespace steelyard::app {

namespace {

Incoming& incoming_of(GLFWwindow* window) {
    return *static_cast<Incoming*>(glfwGetWindowUserPointer(window));
}

void note_event(GLFWwindow* window) {
    incoming_of(window).anything = true;
}

/// GLFW calls these; ImGui's backend, installed afterwards, calls them on after its own.
void install_callbacks(GLFWwindow* window) {
    glfwSetKeyCallback(window, [](GLFWwindow* w, int key, int, int action, int modifiers) {
        note_event(w);
        if (action != GLFW_RELEASE)
            incoming_of(w).keys.push_back({key, modifiers});
    });
    glfwSetDropCallback(window, [](GLFWwindow* w, int count, const char** paths) {
        note_event(w);
        for (int i = 0; i < count; ++i)
            incoming_of(w).dropped_files.emplace_back(paths[i]);
    });
    glfwSetCursorPosCallback(window, [](GLFWwindow* w, double, double) { note_event(w); });
    glfwSetMouseButtonCallback(window, [](GLFWwindow* w, int, int, int) { note_event(w); });
    glfwSetScrollCallback(window, [](GLFWwindow* w, double, double) { note_event(w); });
    glfwSetCharCallback(window, [](GLFWwindow* w, unsigned) { note_event(w); });
    glfwSetCursorEnterCallback(window, [](GLFWwindow* w, int) { note_event(w); });
    glfwSetWindowFocusCallback(window, [](GLFWwindow* w, int) { note_event(w); });
    glfwSetWindowRefreshCallback(window, [](GLFWwindow* w) { note_event(w); });
    glfwSetFramebufferSizeCallback(window, [](GLFWwindow* w, int, int) { note_event(w); });
    glfwSetWindowContentScaleCallback(window, [](GLFWwindow* w, float, float) { note_event(w); });
    glfwSetWindowCloseCallback(window, [](GLFWwindow* w) { note_event(w); });
}

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

void start_imgui(GLFWwindow* window) {
    IMGUI_CHECKVERSION();
    ImGui::CreateContext();
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr; // what is remembered is remembered by us
    io.LogFilename = nullptr;
    io.ConfigInputTextCursorBlink = false; // nothing blinks, and idle stays idle
    ImGui_ImplGlfw_InitForOpenGL(window, true);
    ImGui_ImplOpenGL3_Init("#version 330 core");
}

} // namespace

tl::expected<Window, WindowError> Window::open(int width_px, int height_px, const char* title) {
    if (glfwInit() == GLFW_FALSE)
        return tl::unexpected(WindowError{fmt::format(
            "There is no display to open a window on ({}).\n"
            "`steelyard solve`, `draw` and `ask` work without one; `steelyard --help` shows how.",
            last_glfw_error())});
    glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
    glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
    glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
    glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
    glfwWindowHint(GLFW_SCALE_TO_MONITOR, GLFW_TRUE);
    Window window;
    window.handle_.reset(glfwCreateWindow(width_px, height_px, title, nullptr, nullptr));
    if (!window.handle_) {
        WindowError error = no_opengl();
        glfwTerminate();
        return tl::unexpected(std::move(error));
    }
    glfwMakeContextCurrent(window.handle());
    if (gladLoadGL(glfwGetProcAddress) == 0)
        return tl::unexpected(no_opengl());
    glfwSwapInterval(1);
    glfwSetWindowSizeLimits(window.handle(), 480, 360, GLFW_DONT_CARE, GLFW_DONT_CARE);
    window.incoming_ = std::make_unique<Incoming>();
    glfwSetWindowUserPointer(window.handle(), window.incoming_.get());
    install_callbacks(window.handle());
    start_imgui(window.handle());
    return window;
}

void Window::Close::operator()(GLFWwindow* window) const {
    glfwDestroyWindow(window);
    glfwTerminate();
}

Window::~Window() {
    if (!handle_ || ImGui::GetCurrentContext() == nullptr)
        return;
    ImGui_ImplOpenGL3_Shutdown();
    ImGui_ImplGlfw_Shutdown();
    ImGui::DestroyContext();
}

bool Window::wants_to_close() const {
    return glfwWindowShouldClose(handle()) == GLFW_TRUE;
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

void Window::end_frame() {
    ImGui::Render();
    ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
    glfwSwapBuffers(handle());
}

} // namespace steelyard::app
