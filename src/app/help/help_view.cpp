#include "app/help/help_view.h"

#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "words/caution.h"

#include <algorithm>

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

/// A key and what it does; without keys a heading.
struct KeyLine {
    const char* keys;
    const char* does;
};

constexpr KeyLine kKeys[] = {
    {nullptr, "Anywhere"},
    {"F2 to F8", "the places of the row, in their order; B: bench or body"},
    {"O",
     "choose a lever or an exercise; a file of a setup, a lesson or a blueprint can be dropped "
     "on the window"},
    {"F9", "letters at everything that can be pressed: type them to press it; ↑ ↓ bring up more"},
    {"U, D", "SI or US units; light, dark or high contrast: Settings has these and more"},
    {"Ctrl + Z, Ctrl + Y", "undo, redo"},
    {"Ctrl + S", "save the lever or the exercise as one of yours: the shelf has them first"},
    {"Ctrl + +, Ctrl + −", "larger, smaller text"},
    {"Ctrl + G",
     "the glossary, at the first underlined term on the screen; each of them can be pressed"},
    {"F11", "full screen and back"},
    {nullptr, "On the bench"},
    {"Tab", "choose the next part: axis, loads, effort, own weight, ends and corners"},
    {"← →", "move the chosen part along the lever; Shift: ten times as far"},
    {"↑ ↓", "make it heavier or lighter, pull harder or softer"},
    {"Ctrl + ← →", "turn its pull"},
    {"Enter", "type its number, with any unit"},
    {"Insert, Delete", "add a load, remove the chosen one or a corner"},
    {"H, R, Q", "effort by hand or found; unfold the next reading; a question like this lever"},
    {"+ −, wheel", "nearer, farther; the right button drags the sheet; Home fits the lever"},
    {"Alt", "held while dragging: no snapping to round numbers"},
    {nullptr, "On the body"},
    {"Space, ← →, ↑ ↓", "play the repetition, go through it, size the load"},
    {"Tab, then arrows", "choose a grip and move it; Enter types it, Escape lets go"},
    {"A, P, S", "the next axis, the next plot, how much bodies differ"},
    {"C, N", "the chosen joint near by, and back; antagonists and other muscles that rest"},
    {"M", "how the exercise is made, and back to its readings"},
    {"1 2 3 4", "from the side, the front, above, obliquely"},
    {nullptr, "Side by side"},
    {"E, X, C", "make B equal A, swap them, let B start again as a copy of A"},
    {"Tab, L, G, T", "next joint, a limit at it, next aim, type a torque"},
    {"↑ ↓, Enter, + −", "choose a change, take it, turn it up or down"},
    {"O, A, F, V", "choose B, choose A, take A from the stage, levers or exercises"},
    {nullptr, "Study"},
    {"T, Q, E, C, P, K",
     "today's session, quick quiz, mock exam, calendar, progress, a question by its "
     "code"},
    {"Arrows, Page Up, D", "calendar: a day, a month, set the exam's day; Home: today"},
    {"H, W, N, L", "a question: hint, worked answer, skip, letters of the places; in the answer "
                   "line with Enter"},
    {"E", "the pages about a question, or about the chosen step of the staircase"},
    {"Digits, ← →, Enter", "a page: guess, move the drawing, on; Page Up: back"},
    {"Page Up, Page Down", "mock exam: back and forth; with Shift between those to come back to"},
    {"M, Ctrl + M",
     "mock exam: come back to this one; in an answer line with Ctrl. Ctrl + E ends it"},
    {nullptr, "Workshop"},
    {"W",
     "the lessons; there ↑ ↓ and Enter begin one, E changes one, A makes one, N opens the notes "
     "window"},
    {"Page Down, Page Up", "in a lesson, as on a remote: reveal and on, back; Home, End"},
    {"Digits, Enter", "in a lesson: what the room says; Enter ends a number and does nothing else"},
    {"B or full stop, F", "in a lesson: blank the screen, freeze what the room sees"},
    {"N, I", "in a lesson: the notes window, the note on this one"},
    {"Ctrl + a letter", "in a lesson: the same while a number may be coming, when letters are "
                        "letters"},
    {"Escape, Escape", "in a lesson: leave it"},
    {nullptr, "Handout"},
    {"↑ ↓, ← →, 1 to 6", "choose a row, change it; what to make"},
    {"Page Up, Page Down, V", "turn the page, look at the next version"},
    {"N", "put a sheet together by its topics"},
    {"Enter, Escape", "make the files, stop making them"},
};

constexpr const char* kAboutNumbers =
    "Numbers are computed for rigid levers at rest, with g = 9.80665 m/s² unless the setup says "
    "otherwise, and rounded to three figures only where they are shown. On the body a second ring "
    "marks the joint with the largest torque, not the one nearest to its limit: how strong each "
    "joint of a person is, no table here says.";

} // namespace

bool draw_help(const Style& style, const scene::Point& window_px, const std::vector<KeyPress>& keys,
               const std::vector<std::string>& sources) {
    begin_area("help", scene::Point::Zero(), window_px, true);
    const float scroll = ImGui::GetScrollY();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    float y = style.px(48.0F) - scroll;
    draw_text(list, style, {TextSize::reading, true, Role::ink}, {24.0F, y}, "Keys");
    y += style.px(36.0F);
    const float width_px = static_cast<float>(window_px.x()) - 48.0F;
    const float column_px = std::min(style.px(190.0F), 0.4F * width_px);
    for (const KeyLine& line : kKeys) {
        if (line.keys == nullptr) {
            y += style.px(10.0F);
            draw_text(list, style, {TextSize::caption, true, Role::quiet_ink}, {24.0F, y},
                      line.does);
            y += style.px(24.0F);
            continue;
        }
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
    y += style.px(10.0F);
    y = draw_paragraph(list, style, {TextSize::body, false, Role::quiet_ink}, {24.0F, y},
                       std::min(width_px, style.px(760.0F)), words::kCaution);
    y += style.px(10.0F);
    draw_text(list, style, {TextSize::body, true, Role::ink}, {24.0F, y}, "Where they come from");
    y += style.px(24.0F);
    for (const std::string& source : sources)
        y = draw_paragraph(list, style, {TextSize::caption, false, Role::quiet_ink}, {24.0F, y},
                           std::min(width_px, style.px(760.0F)), source) +
            style.px(2.0F);
    ImGui::SetCursorScreenPos({24.0F, y + style.px(16.0F)});
    ImGui::Dummy({1.0F, 1.0F});
    bool close = ImGui::IsWindowHovered() && ImGui::IsMouseClicked(ImGuiMouseButton_Left);
    end_area();
    for (const KeyPress& key : keys)
        close = close || key.key == key::kEscape || key.key == key::kF1;
    return close;
}

} // namespace steelyard::app
