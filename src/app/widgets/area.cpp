#include "app/widgets/area.h"

namespace steelyard::app {

void begin_area(const char* id, const scene::Point& corner_px, const scene::Point& size_px,
                bool scrolls) {
    ImGuiWindowFlags flags = ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize |
                             ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoCollapse |
                             ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoBackground |
                             ImGuiWindowFlags_NoNav;
    if (!scrolls)
        flags |= ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse;
    ImGui::SetNextWindowPos({static_cast<float>(corner_px.x()), static_cast<float>(corner_px.y())});
    ImGui::SetNextWindowSize({static_cast<float>(size_px.x()), static_cast<float>(size_px.y())});
    ImGui::Begin(id, nullptr, flags);
}

void end_area() {
    ImGui::End();
}

} // namespace steelyard::app
