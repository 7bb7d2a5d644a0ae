#pragma once
// What came in for the page's canvas since the last frame, told to ImGui frame by frame.

#include "app/platform/gestures.h"
#include "app/platform/window.h"

#include <array>
#include <set>
#include <string>

namespace steelyard::app {

class Page {
public:
    Page();
    Page(const Page&) = delete;
    Page& operator=(const Page&) = delete;
    ~Page();

    void pointer(TouchPhase phase, int id, bool is_touch, PointerButton button,
                 const scene::Point& at_px);
    void scroll(double notches);
    /// @param key  see key.h
    void key(bool goes_down, int key, int modifiers);
    void text(const char* utf8);
    void lose_focus();

    /// Tells ImGui all of it, before its frame begins.
    void feed_imgui();
    /// ImGui's numbers for keys are ours.
    static void map_keys();
    /// True while ImGui has yet to hear that a button went up.
    bool owes_another_frame() const;
    /// The person pointed with a finger last, and has the keys on the screen.
    bool last_was_touch() const { return last_was_touch_; }

    Incoming incoming;

private:
    void feed(const PointerAct& act);

    Gestures gestures_;
    std::array<bool, 3> down_{};
    std::array<bool, 3> pressed_{}; ///< since the last frame
    bool has_moved_ = false;        ///< the pointer, since the last frame
    double wheel_ = 0.0;
    double pull_px_ = 0.0; ///< of a finger that scrolls, since the last frame
    bool is_pointer_gone_ = false;
    bool last_was_touch_ = false;
    std::set<int> keys_down_;
    std::set<int> went_down_; ///< since the last frame
    int modifiers_ = 0;
    std::string typed_; ///< UTF-8
};

} // namespace steelyard::app
