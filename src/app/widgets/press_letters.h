#pragma once
// Pressing anything by keys alone: letters stand at everything on the screen that can be pressed,
// and typing them presses it.

#include "app/look/style.h"
#include "app/platform/window.h"

#include <string>
#include <string_view>
#include <vector>

namespace steelyard::app {

/// The letters of one of many things, all of one length so that none begins another: A, B, … up to
/// 26, else AA, AB, …
/// @param index  below `count`, which is at most 26 × 26
std::string letters_of(std::size_t index, std::size_t count);

class PressLetters {
public:
    bool are_shown() const { return shown_; }
    void show();

    /// Before anything is drawn: takes what was typed. Backspace takes a letter back, the arrows
    /// bring up what lies above and below, Escape and the mouse put the letters away.
    void begin_frame(const std::vector<KeyPress>& keys);

    /// Offers the last ImGui item; its letters are drawn over everything.
    /// @return true in the frame in which it is pressed by them
    bool offer(const Style& style);

private:
    void draw(const Style& style, const std::string& letters) const;

    bool shown_ = false;
    std::string typed_;
    std::size_t offered_ = 0;      ///< in this frame so far
    std::size_t offered_last_ = 0; ///< in the whole frame before
    int bring_up_ = 0;             ///< 1: the next thing below is to come into sight, -1: above
};

} // namespace steelyard::app
