#include "app/frame/stage_pointer.h"

#include <imgui.h>

#include <utility>

namespace steelyard::app {

StagePointer read_stage_pointer(Incoming& incoming, const Layout& layout) {
    const ImGuiIO& io = ImGui::GetIO();
    StagePointer pointer;
    pointer.at_px = {io.MousePos.x, io.MousePos.y};
    const bool inside = pointer.at_px.x() >= 0.0 && pointer.at_px.y() >= 0.0 &&
                        pointer.at_px.x() < layout.stage_px.x() &&
                        pointer.at_px.y() < layout.stage_px.y();
    pointer.on_stage = inside && !io.WantCaptureMouse;
    pointer.pressed = pointer.on_stage && ImGui::IsMouseClicked(ImGuiMouseButton_Left);
    pointer.released = ImGui::IsMouseReleased(ImGuiMouseButton_Left);
    pointer.double_clicked = std::exchange(incoming.double_clicked, false) && pointer.on_stage;
    if (pointer.pressed)
        pointer.at_px = incoming.pressed_at_px;
    pointer.panning = pointer.on_stage && (ImGui::IsMouseDown(ImGuiMouseButton_Middle) ||
                                           ImGui::IsMouseDown(ImGuiMouseButton_Right));
    pointer.moved_px = {io.MouseDelta.x, io.MouseDelta.y};
    pointer.wheel = pointer.on_stage ? io.MouseWheel : 0.0;
    pointer.snap_off = io.KeyAlt;
    return pointer;
}

} // namespace steelyard::app
