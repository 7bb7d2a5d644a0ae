#pragma once
// A text field that is to have the keyboard without a click on it.

#include <imgui.h>

namespace steelyard::app {

/// Gives the next item of the present area the keyboard if that is wanted and can be done in this
/// frame.
/// @return true once it is given: until then the wish has to be kept for a later frame. A click
///         beside all areas takes the keyboard away at the end of its frame, and while the button
///         is down later versions of ImGui do not give it.
inline bool gives_keyboard(bool wanted) {
    if (!wanted || ImGui::IsMouseDown(ImGuiMouseButton_Left))
        return false;
    ImGui::SetWindowFocus(); // ImGui 1.90 finds no item in an area that has not the focus
    ImGui::SetKeyboardFocusHere();
    return true;
}

} // namespace steelyard::app
