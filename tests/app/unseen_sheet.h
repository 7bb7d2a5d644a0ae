#pragma once
// ImGui and the sheet's fonts without a window, for whoever wants a view's frames but no pixels.

#include "app/look/style.h"

namespace steelyard::app {

class UnseenSheet {
public:
    explicit UnseenSheet(const scene::Point& size_px, double text_scale = 1.0) {
        ImGui::CreateContext();
        ImGuiIO& io = ImGui::GetIO();
        io.IniFilename = nullptr;
        io.DisplaySize = {static_cast<float>(size_px.x()), static_cast<float>(size_px.y())};
        io.DeltaTime = 1.0F / 60.0F;
        style.fonts = load_fonts(static_cast<float>(text_scale));
        apply_to_imgui(style);
    }
    ~UnseenSheet() { ImGui::DestroyContext(); }
    UnseenSheet(const UnseenSheet&) = delete;
    UnseenSheet& operator=(const UnseenSheet&) = delete;

    Style style;
};

} // namespace steelyard::app
