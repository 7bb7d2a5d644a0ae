#include "app/help/help_view.h"

#include "app/widgets/area.h"

#include <GLFW/glfw3.h>

#include <algorithm>

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

struct KeyLine {
    const char* keys;
    const char* does;
};

constexpr KeyLine kKeys[] = {
    {"Tab", "choose the next part: axis, loads, effort, own weight"},
    {"← →", "move the chosen part along the lever; Shift: ten times as far"},
    {"↑ ↓", "make it heavier or lighter, pull harder or softer"},
    {"Ctrl + ← →", "turn its pull"},
    {"Enter", "type its number, with any unit"},
    {"Insert, Delete", "add a load, remove the chosen one"},
    {"H", "set the effort by hand, or let it be found"},
    {"R", "unfold the next reading: how it was computed"},
    {"Q", "ask me a question like this lever"},
    {"O", "choose another lever; a setup file can also be dropped on the window"},
    {"B, F2 to F8", "bench or body; the places of the row in their order"},
    {"Space, ← →, ↑ ↓", "on the body: play the repetition, go through it, size the load"},
    {"Tab, then arrows", "on the body: choose a grip and move it; Enter types it, Escape lets go"},
    {"A, P, S", "on the body: the next axis, the next plot, how much bodies differ"},
    {"1 2 3", "on the body: from the side, from the front, from above"},
    {"E, X, C", "side by side: make B equal A, swap them, let B start again as a copy of A"},
    {"Tab, L, G, T", "side by side: next joint, a limit at it, next aim, type a torque"},
    {"↑ ↓, Enter, + −", "side by side: choose a change, take it, turn it up or down"},
    {"O, A, F, V", "side by side: choose B, choose A, take A from the stage, levers or exercises"},
    {"T, Q, E, P", "practice: today's session, quick quiz, mock exam, progress"},
    {"H, W, N, L", "a question: hint, worked answer, skip, letters of the places; in the answer "
                   "line with Enter"},
    {"F, Page Up, Page Down", "mock exam: flag, back, forward; Ctrl + E ends it"},
    {"↑ ↓, ← →, 1 to 6", "handout: choose a row, change it; what to make"},
    {"Page Up, Page Down, V", "handout: turn the page, look at the next version"},
    {"Enter, Escape", "handout: make the files, stop making them"},
    {"W", "workshop; there ↑ ↓, Enter or F5 start a lesson, E changes one, A makes one"},
    {"Page Down, Page Up", "in a lesson, as on a remote: reveal and on, back; Home, End"},
    {"B or full stop, F", "in a lesson: blank the screen, freeze what the room sees"},
    {"N, I", "in a lesson: the presenter's window, the note on this one"},
    {"U", "SI or US units"},
    {"D", "light, dark or high contrast; Settings has all of these"},
    {"Ctrl + Z, Ctrl + Y", "undo, redo"},
    {"+ −, wheel", "nearer, farther; the right button drags the sheet; Home fits the lever"},
    {"Ctrl + +, Ctrl + −", "larger, smaller text"},
    {"Alt", "held while dragging: no snapping to round numbers"},
};

constexpr const char* kAboutNumbers =
    "Numbers are computed for rigid levers at rest, with g = 9.80665 m/s² unless the setup says "
    "otherwise, and rounded to three figures only where they are shown. Educational, not medical "
    "advice: for work on people and with loads, local codes, your scope of practice and licensed "
    "practitioners come first. Pain means stop.";

} // namespace

bool draw_help(const Style& style, const scene::Point& window_px,
               const std::vector<KeyPress>& keys) {
    begin_area("help", scene::Point::Zero(), window_px, true);
    const float scroll = ImGui::GetScrollY();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    float y = style.px(48.0F) - scroll;
    draw_text(list, style, {TextSize::reading, true, Role::ink}, {24.0F, y}, "Keys");
    y += style.px(36.0F);
    const float width_px = static_cast<float>(window_px.x()) - 48.0F;
    const float column_px = std::min(style.px(190.0F), 0.4F * width_px);
    for (const KeyLine& line : kKeys) {
        draw_text(list, style, {TextSize::body, true, Role::ink}, {24.0F, y}, line.keys);
        y = draw_paragraph(list, style, {TextSize::body, false, Role::quiet_ink},
                           {24.0F + column_px, y}, width_px - column_px, line.does);
        y += style.px(3.0F);
    }
    y += style.px(16.0F);
    draw_text(list, style, {TextSize::reading, true, Role::ink}, {24.0F, y}, "About the numbers");
    y = draw_paragraph(list, style, {TextSize::body, false, Role::quiet_ink},
                       {24.0F, y + style.px(30.0F)}, std::min(width_px, style.px(760.0F)),
                       kAboutNumbers);
    ImGui::SetCursorScreenPos({24.0F, y + style.px(16.0F)});
    ImGui::Dummy({1.0F, 1.0F});
    bool close = ImGui::IsWindowHovered() && ImGui::IsMouseClicked(ImGuiMouseButton_Left);
    end_area();
    for (const KeyPress& key : keys)
        close = close || key.key == GLFW_KEY_ESCAPE || key.key == GLFW_KEY_F1;
    return close;
}

} // namespace steelyard::app
