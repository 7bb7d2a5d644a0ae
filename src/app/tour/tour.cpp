#include "app/tour/tour.h"

#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"

#include <fmt/format.h>

#include <algorithm>

namespace steelyard::app {

namespace {

using scene::Point;
using scene::Role;
using scene::TextSize;

struct TourStep {
    PlaceName place;
    const char* beside; ///< beginning of the text or grip that is pointed at; empty = the middle
    const char* says;
};

constexpr TourStep kSteps[] = {
    {PlaceName::bench, "axis",
     "This is the axis. Drag it, or the arrows' ends, and everything follows at once."},
    {PlaceName::bench, "Mechanical advantage",
     "The one number that matters stands here. Click any reading: it unfolds how it was computed, "
     "with the numbers of this lever."},
    {PlaceName::bench, "balanced",
     "The balance strip: load torque grows from the left, effort torque from the right. Where "
     "they meet, the lever is at rest. It means the same on every screen."},
    {PlaceName::bench, "Ask me one like this",
     "A question about a lever like this one. A wrong answer is told which wrong rule gave it."},
    {PlaceName::body, "The load pulls hardest at",
     "On the body every joint that could be the axis has its torque. Click a joint to look at it; "
     "Space plays the repetition."},
    {PlaceName::body, "Exercises",
     "Exercises with weights, cables, bands and body weight stand on this shelf. Your own setup "
     "file can be dropped on the window."},
    {PlaceName::side_by_side, "",
     "Two exercises at one scale, moved together: change one until both ask the same of a joint."},
    {PlaceName::practice, "Study",
     "Study knows what you need next, gives a mock exam and says honestly how ready you are."},
    {PlaceName::workshop, "Workshop",
     "In front of a room: one sentence, a prediction, and the reveal by one key."},
    {PlaceName::handout, "Handout", "Worksheets with their keys, on paper or for a course site."},
    {PlaceName::start, "Keys",
     "Everything works by keyboard; the keys stand here. Units, look and text size are in "
     "Settings."},
};

constexpr std::size_t kLast = std::size(kSteps) - 1;

void go(Tour& tour, bool onward) {
    if (onward && tour.step == kLast)
        tour = {};
    else if (onward)
        ++tour.step;
    else if (tour.step > 0)
        --tour.step;
}

constexpr double kBoxWidth_px = 380.0;

/// A box of words near what is pointed at, inside the window.
Point box_corner(const Point& window_px, const std::optional<Narration::Entry>& target,
                 const Point& box_px, double gap_px) {
    if (!target)
        return 0.5 * (window_px - box_px);
    const double right = target->at_px.x() + target->width_px + gap_px;
    Point corner(right, target->at_px.y() + gap_px);
    if (right + box_px.x() > window_px.x() - 24.0)
        corner.x() = target->at_px.x() - box_px.x() - gap_px;
    corner.x() = std::clamp(corner.x(), 24.0, std::max(24.0, window_px.x() - box_px.x() - 24.0));
    if (corner.y() + box_px.y() > window_px.y() - 24.0)
        corner.y() = target->at_px.y() - box_px.y() - 1.6 * gap_px;
    corner.y() = std::clamp(corner.y(), 24.0, std::max(24.0, window_px.y() - box_px.y() - 24.0));
    return corner;
}

void draw_ring(const Style& style, const Narration::Entry& target, ImDrawList& list) {
    const float left = static_cast<float>(target.at_px.x()) - style.px(10.0F);
    const float base = static_cast<float>(target.at_px.y());
    const float width = static_cast<float>(target.width_px) + style.px(20.0F);
    list.AddRect({left, base - style.px(26.0F)}, {left + width, base + style.px(14.0F)},
                 style.mark(Role::ink), 6.0F, 0, style.px(2.5F));
}

} // namespace

PlaceName tour_place(const Tour& tour) {
    return kSteps[tour.step].place;
}

void run_tour(const Style& style, const Point& window_px, const Narration& shown,
              const std::vector<KeyPress>& keys, Tour& tour) {
    const TourStep& step = kSteps[tour.step];
    const std::optional<Narration::Entry> target = shown.find(step.beside);
    const double scale = style.fonts.scale;
    const Point box_px(std::min(kBoxWidth_px * scale, window_px.x() - 48.0), 172.0 * scale);
    const Point corner = box_corner(window_px, target, box_px, 24.0 * scale);
    const ImVec2 at{static_cast<float>(corner.x()), static_cast<float>(corner.y())};
    const ImVec2 end{at.x + static_cast<float>(box_px.x()), at.y + static_cast<float>(box_px.y())};
    ImGui::SetNextWindowFocus();
    begin_area("tour", corner, box_px);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.PushClipRectFullScreen();
    if (target)
        draw_ring(style, *target, list);
    list.AddRectFilled(at, end, style.mark(Role::panel), 6.0F);
    list.AddRect(at, end, style.mark(Role::ink), 6.0F, 0, 1.5F);
    list.PopClipRect();
    const float left = at.x + style.px(20.0F);
    draw_paragraph(list, style, {TextSize::body, false, Role::ink}, {left, at.y + style.px(34.0F)},
                   static_cast<float>(box_px.x()) - style.px(40.0F), step.says);
    const float base = end.y - style.px(20.0F);
    bool onward =
        word_button(style, "on", {left, base}, tour.step == kLast ? "Begin" : "Go on", true);
    bool back =
        word_button(style, "back", {left + style.px(84.0F), base}, "Back", false, tour.step > 0);
    bool leave = word_button(style, "leave", {left + style.px(144.0F), base}, "Leave", false);
    draw_text(list, style, {TextSize::caption, false, Role::quiet_ink},
              {end.x - style.px(64.0F), base},
              fmt::format("{} of {}", tour.step + 1, std::size(kSteps)));
    end_area();
    for (const KeyPress& key : keys) {
        onward =
            onward || key.key == key::kEnter || key.key == key::kRight || key.key == key::kSpace;
        back = back || key.key == key::kLeft;
        leave = leave || key.key == key::kEscape;
    }
    if (leave)
        tour = {};
    else if (onward || back)
        go(tour, onward);
}

} // namespace steelyard::app
