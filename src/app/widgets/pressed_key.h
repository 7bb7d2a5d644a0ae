#pragma once
// A key that went down in this frame, also while a text field has the keyboard.

#include <imgui.h>

namespace steelyard::app {

inline bool is_pressed(ImGuiKey key) {
#if IMGUI_VERSION_NUM < 18700
    return ImGui::IsKeyPressed(ImGui::GetKeyIndex(key)); // the old form takes the platform's number
#else
    return ImGui::IsKeyPressed(key);
#endif
}

} // namespace steelyard::app
