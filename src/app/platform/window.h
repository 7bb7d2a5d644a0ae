#pragma once
// A window with OpenGL and Dear ImGui on it, and what came in since the last frame. There is one
// main window; others, such as the presenter's, open beside it where the platform has more than
// one. On the desktop it is GLFW's, in a page it is the canvas.

#include "scene/drawing.h"
#include "scene/palette.h"

#include <tl/expected.hpp>

#include <memory>
#include <string>
#include <vector>

namespace steelyard::app {

/// A key that went down (or repeats), by the numbers of key.h; or a character that was typed, which
/// then is all there is.
struct KeyPress {
    int key = 0;
    int modifiers = 0;
    unsigned character = 0; ///< Unicode; 0 = a key
};

/// What came in from the window system since the last frame.
struct Incoming {
    std::vector<KeyPress> keys;
    std::vector<std::string> dropped_files;
    bool anything = false; ///< any event at all: a frame is owed
    scene::Point pointer_px = scene::Point::Zero();
    /// Where a mouse button last went down. In a slow frame the pointer may be far from it already,
    /// and what was taken hold of lies here.
    scene::Point pressed_at_px = scene::Point::Zero();
    double pressed_at_s = -1.0; ///< by now_s; negative = not to be taken for a first click
    /// The left button went down for the second time within half a second at one place, which a
    /// slow frame must not hide.
    bool double_clicked = false;

    void press(const scene::Point& at_px, double at_s, bool left);
};

/// Why there is no window, and what to do: sentences for a person.
struct WindowError {
    std::string what;
};

/// A part of the desktop [screen coordinates].
struct ScreenArea {
    int x = 0, y = 0, width = 0, height = 0;
};

class Window {
public:
    /// Opens the main window and makes it current.
    static tl::expected<Window, WindowError> open(int width_px, int height_px, const char* title);

    /// Opens a further window, which is current afterwards. It shares the main window's textures,
    /// buffers and programs, and has an ImGui context of its own. The main window must outlive it.
    static tl::expected<Window, WindowError> open_beside(const Window& main, int width_px,
                                                         int height_px, const char* title);

    /// What each screen offers to windows, the first one's first; empty where that is not known.
    static std::vector<ScreenArea> screens();

    Window(Window&& other) noexcept;
    Window& operator=(Window&&) = delete;
    Window(const Window&) = delete;
    Window& operator=(const Window&) = delete;
    ~Window();

    Incoming& incoming();

    /// OpenGL and ImGui draw into this window from now on.
    void make_current() const;

    bool wants_to_close() const;
    /// Fills the screen that the window is on, or goes back to where and how large it was.
    void turn_full_screen();
    void set_title(const std::string& title);
    /// Where it lies on the desktop.
    ScreenArea area() const;
    void move_to(int x, int y);
    /// Gives it the keyboard.
    void focus() const;
    /// Size in screen coordinates, the sheet's pixels; zero while minimised.
    scene::Point size_px() const;
    /// The same while it does not fill the screen: what it goes back to.
    scene::Point windowed_size_px() const;
    /// Framebuffer pixels per sheet pixel.
    double device_pixels() const;
    /// Text enlargement that the desktop asks for, 1 = none.
    double content_scale() const;

    /// After the fonts were filled anew.
    void renew_font_texture();
    void begin_frame();
    /// Fills the whole window with one colour.
    void fill(scene::Rgb colour) const;
    void end_frame(); ///< paints ImGui and shows what was drawn

private:
    struct Native; ///< the platform's own
    explicit Window(std::unique_ptr<Native> native);

    std::unique_ptr<Native> native_; ///< on the heap: the platform's callbacks hold its address
};

} // namespace steelyard::app
