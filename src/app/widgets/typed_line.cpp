#include "app/widgets/typed_line.h"

#include "app/look/text_styles.h"
#include "app/widgets/keyboard_wish.h"
#include "app/widgets/pressed_key.h"

#include <imgui_stdlib.h>

#include <utility>

namespace steelyard::app {

TypedLineEnd draw_typed_line(ColumnPen& pen, const char* id, std::string_view asked,
                             TypedLine& line) {
    pen.skip(20.0F);
    pen.paragraph(kCaption, asked);
    pen.skip(-8.0F);
    ImGui::SetCursorScreenPos({pen.left(), pen.y()});
    ImGui::SetNextItemWidth(pen.width());
    if (gives_keyboard(line.wants_keyboard))
        line.wants_keyboard = false;
    ImGui::PushID(id);
    const bool entered =
        ImGui::InputText("##typed", &line.text, ImGuiInputTextFlags_EnterReturnsTrue);
    const bool left = ImGui::IsItemDeactivated() && is_pressed(ImGuiKey_Escape);
    ImGui::PopID();
    pen.skip(56.0F);
    if (!line.fault.empty())
        pen.paragraph(kFault, line.fault);
    return entered ? TypedLineEnd::entered : left ? TypedLineEnd::left : TypedLineEnd::none;
}

void refuse_line(TypedLine& line, std::string fault) {
    line.fault = std::move(fault);
    line.wants_keyboard = true;
}

} // namespace steelyard::app
