#include "app/start/start_screen.h"

#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "words/caution.h"

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using scene::Point;
using scene::Role;
using scene::TextSize;

/// Doors side by side, or below each other where the window is narrow.
struct DoorGrid {
    bool row = true;
    Point first_px{24.0, 150.0};
    Point door_px{380.0, 400.0};
    Point picture_px{380.0, 210.0};
    double gap_px = 16.0;

    Point corner(std::size_t index) const {
        const auto step = static_cast<double>(index);
        return first_px + (row ? Point(step * (door_px.x() + gap_px), 0.0)
                               : Point(0.0, step * (door_px.y() + gap_px)));
    }
};

DoorGrid lay_doors(const Style& style, const Point& window_px, std::size_t doors) {
    DoorGrid grid;
    const double scale = style.fonts.scale;
    const auto count = static_cast<double>(doors);
    const double room_px = window_px.x() - 2.0 * grid.first_px.x() - 16.0;
    grid.first_px.y() = 156.0 * scale;
    grid.row = (room_px - (count - 1.0) * grid.gap_px) / count >= 250.0 * scale;
    grid.door_px.x() =
        grid.row ? std::floor((room_px - (count - 1.0) * grid.gap_px) / count) : room_px;
    const double words_px = 190.0 * scale;
    const double tallest_px = window_px.y() - grid.first_px.y() - words_px - 150.0 * scale;
    grid.picture_px = {grid.door_px.x(),
                       std::clamp(tallest_px, 90.0 * scale, 0.62 * grid.door_px.x())};
    if (!grid.row)
        grid.picture_px.y() = 120.0 * scale;
    grid.door_px.y() = grid.picture_px.y() + words_px;
    return grid;
}

void make_pictures(const StartContent& content, const DoorGrid& grid, StartScreen& screen) {
    if ((screen.pictures_px - grid.picture_px).norm() < 0.5)
        return;
    screen.pictures_px = grid.picture_px;
    screen.pictures.clear();
    for (const StartDoor& door : content.doors)
        screen.pictures.push_back(door.make_picture(grid.picture_px));
}

void read_keys(const std::vector<KeyPress>& keys, const StartContent& content, StartScreen& screen,
               StartFrame& frame) {
    const std::size_t last = content.doors.size() - 1;
    for (const KeyPress& key : keys) {
        const auto digit = static_cast<std::size_t>(key.key - key::k1);
        if (key.key == key::kRight || key.key == key::kDown || key.key == key::kTab)
            screen.chosen = std::min(screen.chosen + 1, last);
        else if (key.key == key::kLeft || key.key == key::kUp)
            screen.chosen -= screen.chosen > 0 ? 1 : 0;
        else if (key.key == key::kEnter || key.key == key::kKeypadEnter)
            frame.taken = content.doors[screen.chosen].ways.front().id;
        else if (key.key >= key::k1 && digit <= last)
            frame.taken = content.doors[digit].ways.front().id;
        else if (key.key == key::kSpace && !content.below.empty())
            frame.taken = content.below.front().id;
    }
}

/// Words in a line that goes on below where it does not fit.
/// @return the baseline of the last line
float draw_ways(const Style& style, const std::vector<StartWay>& ways, ImVec2 at, float right_px,
                StartFrame& frame) {
    float x = at.x;
    for (const StartWay& way : ways) {
        const float width_px = text_width(style, {TextSize::body, true}, way.word);
        if (x > at.x && x + width_px > right_px) {
            x = at.x;
            at.y += style.px(32.0F);
        }
        if (word_button(style, way.word.c_str(), {x, at.y}, way.word, true))
            frame.taken = way.id;
        x += width_px + style.px(24.0F);
    }
    return at.y;
}

void draw_door(const Style& style, const StartDoor& door, std::size_t number, const DoorGrid& grid,
               const ImVec2& corner, bool chosen, StartFrame& frame) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 far_corner{corner.x + static_cast<float>(grid.door_px.x()),
                            corner.y + static_cast<float>(grid.door_px.y())};
    const float left = corner.x + style.px(20.0F);
    const float words_px = static_cast<float>(grid.door_px.x()) - style.px(40.0F);
    const float base = corner.y + static_cast<float>(grid.picture_px.y());
    // The words below have their own areas: the door's ends above them.
    if (press_area(style, "door", corner,
                   {static_cast<float>(grid.door_px.x()), base + style.px(112.0F) - corner.y}))
        frame.taken = door.ways.front().id;
    const bool hovered = ImGui::IsItemHovered();
    list.AddRect(corner, far_corner, style.mark(chosen || hovered ? Role::ink : Role::hairline),
                 6.0F, 0, chosen ? 2.5F : 1.0F);
    draw_text(list, style, {TextSize::reading, true, Role::ink}, {left, base + style.px(32.0F)},
              std::to_string(number) + "  " + door.title);
    draw_paragraph(list, style, {TextSize::body, false, Role::quiet_ink},
                   {left, base + style.px(62.0F)}, words_px, door.sentence);
    draw_ways(style, door.ways, {left, base + style.px(138.0F)}, left + words_px, frame);
}

} // namespace

StartFrame run_start(const Style& style, const Point& window_px, const std::vector<KeyPress>& keys,
                     const StartContent& content, StartScreen& screen) {
    StartFrame frame;
    read_keys(keys, content, screen, frame);
    const DoorGrid grid = lay_doors(style, window_px, content.doors.size());
    make_pictures(content, grid, screen);
    const double row_px = style.px(58.0F); // of places, which lies above
    begin_area("start", {0.0, row_px}, {window_px.x(), window_px.y() - row_px}, true);
    const float scroll = ImGui::GetScrollY();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    draw_text(list, style, {TextSize::key, true, Role::ink}, {24.0F, style.px(106.0F) - scroll},
              "Steelyard");
    const TextStyle quiet{TextSize::body, false, Role::quiet_ink};
    const char* about = "levers, moment arms and torque, on beams and on the body";
    if (24.0F + text_width(style, quiet, about) > ImGui::GetWindowWidth())
        about = "levers, moment arms and torque";
    draw_text(list, style, quiet, {24.0F, style.px(132.0F) - scroll}, about);
    for (std::size_t i = 0; i < content.doors.size(); ++i) {
        const Point at = grid.corner(i) - Point(0.0, scroll);
        ImGui::PushID(static_cast<int>(i));
        draw_door(style, content.doors[i], i + 1, grid,
                  {static_cast<float>(at.x()), static_cast<float>(at.y())}, i == screen.chosen,
                  frame);
        ImGui::PopID();
        frame.pictures.push_back({&screen.pictures[i], at});
    }
    const Point last = grid.corner(content.doors.size() - 1);
    const float below = static_cast<float>(last.y() + grid.door_px.y()) - scroll;
    float y = draw_ways(style, content.below, {24.0F, below + style.px(44.0F)},
                        static_cast<float>(window_px.x()) - 24.0F, frame);
    y = draw_paragraph(list, style, {TextSize::caption, false, Role::quiet_ink},
                       {24.0F, y + style.px(40.0F)}, static_cast<float>(window_px.x()) - 64.0F,
                       words::kCaution);
    ImGui::SetCursorScreenPos({0.0F, y});
    ImGui::Dummy({1.0F, 1.0F});
    end_area();
    return frame;
}

} // namespace steelyard::app
