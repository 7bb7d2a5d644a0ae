#pragma once
// The one window: GLFW, an OpenGL 3.3 core context and Dear ImGui on it, and what came in since the
// last frame.

#include "scene/drawing.h"

#include <tl/expected.hpp>

#include <memory>
#include <string>
#include <vector>

struct GLFWwindow;

namespace steelyard::app {

/// A key that went down (or repeats), by GLFW's key codes and modifier bits.
struct KeyPress {
    int key = 0;
    int modifiers = 0;
};

/// What came in from the window system since the last frame.
struct Incoming {
    std::vector<KeyPress> keys;
    std::vector<std::string> dropped_files;
    bool anything = false; ///< any event at all: a frame is owed
};

/// Why there is no window, and what to do: sentences for a person.
struct WindowError {
    std::string what;
};

class Window {
public:
    static tl::expected<Window, WindowError> open(int width_px, int height_px, const char* title);

    Window(Window&&) noexcept = default;
    Window& operator=(Window&&) = delete;
    Window(const Window&) = delete;
    Window& operator=(const Window&) = delete;
    ~Window();

    GLFWwindow* handle() const { return handle_.get(); }
    Incoming& incoming() { return *incoming_; }

    bool wants_to_close() const;
    void set_title(const std::string& title);
    /// Size in screen coordinates, the sheet's pixels; zero while minimised.
    scene::Point size_px() const;
    /// Framebuffer pixels per sheet pixel.
    double device_pixels() const;
    /// Text enlargement that the desktop asks for, 1 = none.
    double content_scale() const;

    /// After the fonts were filled anew.
    void renew_font_texture();
    void begin_frame();
    void end_frame(); ///< paints ImGui and swaps

private:
    struct Close {
        void operator()(GLFWwindow* window) const;
    };
    Window() = default;

    std::unique_ptr<Incoming> incoming_; ///< on the heap: GLFW's callbacks hold its address
    std::unique_ptr<GLFWwindow, Close> handle_;
};

} // namespace steelyard::app
