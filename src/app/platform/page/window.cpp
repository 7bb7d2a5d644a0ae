#include "app/platform/window.h"

#include "app/platform/gl.h"
#include "app/platform/page/page.h"

#include <imgui.h>
#include <imgui_impl_opengl3.h>
#include <imgui_internal.h>

#include <array>
#include <cmath>
#include <emscripten.h>
#include <emscripten/html5.h>

namespace steelyard::app {

namespace {

constexpr const char* kCanvas = "#canvas";

// Two letters of a name at a time is all that JavaScript needs to see of us: the rest is page.js.
EM_JS(double, page_width, (), { return Module.page.width(); });
EM_JS(double, page_height, (), { return Module.page.height(); });
EM_JS(double, page_pixels, (), { return Module.page.pixels(); });
EM_JS(void, page_fit, (), { Module.page.fit(); });
EM_JS(void, page_cursor, (int shape), { Module.page.cursor(shape); });
EM_JS(void, page_wants_text, (int wants, int by_touch),
      { Module.page.wantsText(wants, by_touch); });
EM_JS(void, page_copy, (const char* text), { Module.page.copy(UTF8ToString(text)); });
EM_JS(void, page_title, (const char* text), { document.title = UTF8ToString(text); });
EM_JS(void, page_full_screen, (), { Module.page.fullScreen(); });

/// A context for OpenGL ES 3.0, current; 0 = there is none to be had.
EMSCRIPTEN_WEBGL_CONTEXT_HANDLE make_context() {
    EmscriptenWebGLContextAttributes wanted;
    emscripten_webgl_init_context_attributes(&wanted);
    wanted.majorVersion = 2;
    wanted.alpha = EM_FALSE;
    wanted.depth = EM_FALSE;
    wanted.antialias = EM_FALSE; // shapes and letters have soft edges of their own
    const EMSCRIPTEN_WEBGL_CONTEXT_HANDLE context =
        emscripten_webgl_create_context(kCanvas, &wanted);
    if (context > 0)
        emscripten_webgl_make_context_current(context);
    return context;
}

void start_imgui() {
    IMGUI_CHECKVERSION();
    ImGui::CreateContext();
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr; // what is remembered is remembered by us
    io.LogFilename = nullptr;
    io.ConfigInputTextCursorBlink = false; // nothing blinks, and idle stays idle
    io.BackendFlags |= ImGuiBackendFlags_HasMouseCursors;
    io.SetClipboardTextFn = [](void*, const char* text) { page_copy(text); };
    io.GetClipboardTextFn = [](void*) { return ""; }; // what is pasted comes in as if it were typed
    Page::map_keys();
    ImGui_ImplOpenGL3_Init("#version 300 es");
}

} // namespace

struct Window::Native {
    explicit Native(EMSCRIPTEN_WEBGL_CONTEXT_HANDLE made) : context(made) { start_imgui(); }
    Native(const Native&) = delete;
    Native& operator=(const Native&) = delete;
    ~Native() {
        ImGui_ImplOpenGL3_Shutdown();
        ImGui::DestroyContext();
        emscripten_webgl_destroy_context(context);
    }

    EMSCRIPTEN_WEBGL_CONTEXT_HANDLE context;
    Page page;
    double last_frame_ms = 0.0;
    int cursor = -1;
};

Window::Window(std::unique_ptr<Native> native) : native_(std::move(native)) {}
Window::Window(Window&& other) noexcept = default;
Window::~Window() = default;

tl::expected<Window, WindowError> Window::open(int /*width_px*/, int /*height_px*/,
                                               const char* title) {
    const EMSCRIPTEN_WEBGL_CONTEXT_HANDLE context = make_context();
    if (context <= 0)
        return tl::unexpected(WindowError{
            "Steelyard draws with WebGL 2, which this browser does not offer. Bring the browser up "
            "to date, or turn on hardware acceleration in its settings."});
    Window window(std::make_unique<Native>(context));
    window.set_title(title);
    return window;
}

tl::expected<Window, WindowError> Window::open_beside(const Window& /*main*/, int /*width_px*/,
                                                      int /*height_px*/, const char* /*title*/) {
    return tl::unexpected(WindowError{
        "A page has no second window: the notes window needs the program itself on a computer."});
}

std::vector<ScreenArea> Window::screens() {
    return {};
}

Incoming& Window::incoming() {
    return native_->page.incoming;
}

void Window::make_current() const {}

bool Window::wants_to_close() const {
    return false;
}

void Window::turn_full_screen() {
    page_full_screen();
}

void Window::set_title(const std::string& title) {
    page_title(title.c_str());
}

ScreenArea Window::area() const {
    return {0, 0, static_cast<int>(size_px().x()), static_cast<int>(size_px().y())};
}

void Window::move_to(int /*x*/, int /*y*/) {}

void Window::focus() const {}

scene::Point Window::size_px() const {
    return {page_width(), page_height()};
}

scene::Point Window::windowed_size_px() const {
    return size_px();
}

double Window::device_pixels() const {
    return page_pixels();
}

double Window::content_scale() const {
    return 1.0; // the browser's own enlargement makes the sheet smaller
}

void Window::renew_font_texture() {
    ImGui_ImplOpenGL3_DestroyFontsTexture();
    ImGui_ImplOpenGL3_CreateFontsTexture();
}

void Window::begin_frame() {
    page_fit();
    ImGuiIO& io = ImGui::GetIO();
    const auto pixels = static_cast<float>(device_pixels());
    io.DisplaySize = {static_cast<float>(size_px().x()), static_cast<float>(size_px().y())};
    io.DisplayFramebufferScale = {pixels, pixels};
    const double now_ms = emscripten_get_now();
    io.DeltaTime = static_cast<float>(std::max(1.0, now_ms - native_->last_frame_ms) / 1000.0);
    native_->last_frame_ms = now_ms;
    native_->page.feed_imgui();
    ImGui_ImplOpenGL3_NewFrame();
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
    if (native_->page.owes_another_frame())
        incoming().anything = true;
    // What the next frame would say: there may be none for a while.
    const bool wants_text = ImGui::GetCurrentContext()->WantTextInputNextFrame == 1;
    page_wants_text(wants_text, native_->page.last_was_touch());
    const int cursor = ImGui::GetMouseCursor();
    if (cursor != native_->cursor)
        page_cursor(cursor);
    native_->cursor = cursor;
}

} // namespace steelyard::app
