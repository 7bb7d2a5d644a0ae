#include "app/look/style.h"

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

ImVec4 to_vec4(scene::Rgb rgb, float opacity = 1.0F) {
    return {static_cast<float>(rgb.red) / 255.0F, static_cast<float>(rgb.green) / 255.0F,
            static_cast<float>(rgb.blue) / 255.0F, opacity};
}

} // namespace

float text_width(const Style& style, const TextStyle& how, std::string_view text) {
    ImFont* font = style.fonts.get(how.size, how.strong);
    return font
        ->CalcTextSizeA(style.fonts.height(how.size), 1.0e9F, 0.0F, text.data(),
                        text.data() + text.size())
        .x;
}

float draw_text(ImDrawList& list, const Style& style, const TextStyle& how, ImVec2 at,
                std::string_view text) {
    if (text.empty())
        return 0.0F;
    ImFont* font = style.fonts.get(how.size, how.strong);
    const float height_px = style.fonts.height(how.size);
    const ImVec2 corner{std::round(at.x), std::round(at.y - baseline_of(*font, height_px))};
    list.AddText(font, height_px, corner, style.text(how.role), text.data(),
                 text.data() + text.size());
    const float width_px = text_width(style, how, text);
    if (style.narration != nullptr)
        style.narration->add_text(text, {at.x, at.y}, width_px, style.em_px(how.size));
    return width_px;
}

std::string shortened(const Style& style, const TextStyle& how, std::string_view text,
                      float width_px) {
    if (text_width(style, how, text) <= width_px)
        return std::string(text);
    std::size_t end = text.size();
    std::string shorter;
    do {
        // Back to the start of a character: continuation bytes of UTF-8 begin with the bits 10.
        do
            --end;
        while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U);
        shorter = std::string(text.substr(0, end)) + "…";
    } while (end > 0 && text_width(style, how, shorter) > width_px);
    return shorter;
}

float line_height(const Style& style, scene::TextSize size) {
    return std::round(1.42F * style.px(static_cast<float>(scene::text_height_px(size))));
}

namespace {

/// End of the first line of a text that is to be broken at blanks to fit a width; a single word
/// that is too long stands on a line of its own.
std::size_t line_end(const Style& style, const TextStyle& how, std::string_view text,
                     float width_px) {
    const std::size_t forced = std::min(text.find('\n'), text.size());
    std::size_t end = 0;
    while (end < forced) {
        const std::size_t word_end = std::min(text.find(' ', end + 1), forced);
        if (end > 0 && text_width(style, how, text.substr(0, word_end)) > width_px)
            break;
        end = word_end;
    }
    return end;
}

} // namespace

std::vector<std::string_view> broken_lines(const Style& style, const TextStyle& how,
                                           std::string_view text, float width_px) {
    std::vector<std::string_view> lines;
    while (!text.empty()) {
        const std::size_t end = line_end(style, how, text, width_px);
        lines.push_back(text.substr(0, end));
        // The blank or the line break at the end of a line is not shown.
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return lines;
}

float draw_paragraph(ImDrawList& list, const Style& style, const TextStyle& how, ImVec2 at,
                     float width_px, std::string_view text) {
    const float step_px = line_height(style, how.size);
    while (!text.empty()) {
        const std::size_t end = line_end(style, how, text, width_px);
        draw_text(list, style, how, at, text.substr(0, end));
        at.y += step_px;
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return at.y;
}

int paragraph_lines(const Style& style, const TextStyle& how, float width_px,
                    std::string_view text) {
    int lines = 0;
    for (; !text.empty(); ++lines)
        text.remove_prefix(std::min(line_end(style, how, text, width_px) + 1, text.size()));
    return lines;
}

void apply_to_imgui(const Style& style) {
    using scene::Role;
    ImGuiStyle& imgui = ImGui::GetStyle();
    imgui = ImGuiStyle();
    imgui.WindowPadding = {0.0F, 0.0F};
    imgui.WindowRounding = 0.0F;
    imgui.WindowBorderSize = 0.0F;
    imgui.FrameRounding = 6.0F;
    imgui.FrameBorderSize = 1.5F;
    imgui.FramePadding = {style.px(10.0F), style.px(7.0F)};
    imgui.ScrollbarSize = style.px(10.0F);
    imgui.ScrollbarRounding = 6.0F;
    const auto mark = [&](Role role, float opacity = 1.0F) {
        return to_vec4(scene::colour_of(role, style.look), opacity);
    };
    imgui.Colors[ImGuiCol_Text] = to_vec4(scene::text_colour_of(Role::ink, style.look));
    imgui.Colors[ImGuiCol_TextDisabled] = mark(Role::quiet_ink);
    imgui.Colors[ImGuiCol_WindowBg] = mark(Role::sheet, 0.0F);
    imgui.Colors[ImGuiCol_ChildBg] = mark(Role::sheet, 0.0F);
    imgui.Colors[ImGuiCol_FrameBg] = mark(Role::sheet);
    imgui.Colors[ImGuiCol_FrameBgHovered] = mark(Role::sheet);
    imgui.Colors[ImGuiCol_FrameBgActive] = mark(Role::sheet);
    imgui.Colors[ImGuiCol_Border] = mark(Role::ink);
    imgui.Colors[ImGuiCol_TextSelectedBg] = mark(Role::effort, 0.3F);
    imgui.Colors[ImGuiCol_ScrollbarBg] = mark(Role::sheet, 0.0F);
    imgui.Colors[ImGuiCol_ScrollbarGrab] = mark(Role::hairline);
    imgui.Colors[ImGuiCol_ScrollbarGrabHovered] = mark(Role::quiet_ink);
    imgui.Colors[ImGuiCol_ScrollbarGrabActive] = mark(Role::ink);
    imgui.Colors[ImGuiCol_NavHighlight] = mark(Role::ink);
}

} // namespace steelyard::app
