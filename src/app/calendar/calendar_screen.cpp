#include "app/calendar/calendar_screen.h"

#include "app/calendar/month_grid.h"
#include "app/look/text_styles.h"
#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/column_pen.h"
#include "learner/time/wall_clock.h"
#include "learner/time/written_day.h"
#include "words/counted.h"

#include <fmt/format.h>

#include <algorithm>

namespace steelyard::app {

namespace {

using learner::CalendarDay;
using learner::Day;
using scene::Role;
using scene::TextSize;

constexpr int kAnswersRead = 2000;

void read_calendar(CalendarScreen& screen, const Desk& desk, const learner::Clock& now) {
    screen.calendar = plan_calendar(desk.course(), desk.standing(), desk.outlook().plan, now);
}

bool is_exam(const CalendarScreen& screen, Day day) {
    return screen.calendar.exam == day;
}

/// What stands in the cell of a day: two short lines at most.
std::string cell_words(const CalendarScreen& screen, Day day, Day today) {
    const auto done = screen.done.find(day);
    if (is_exam(screen, day))
        return "exam";
    if (day < today)
        return done == screen.done.end() ? "" : fmt::format("{} done", done->second);
    const CalendarDay* const planned = screen.calendar.find(day);
    if (planned == nullptr)
        return "";
    if (planned->mock_exam)
        return "mock exam";
    if (planned->questions == 0)
        return day == today && done != screen.done.end() ? "done" : "free";
    const std::string questions = words::counted(planned->questions, "question");
    return planned->begun.empty() ? questions
                                  : fmt::format("{}, {} new", questions, planned->begun.size());
}

/// Begins typing the exam's day with the present one in the field.
void type_day(CalendarScreen& screen, const Desk& desk) {
    screen.typing.emplace();
    if (const auto& day = desk.standing().exam_day)
        screen.typing->text = say_day(*day, screen.order);
}

/// What the present day asks for.
void begin_today(const CalendarScreen& screen, Day today, CalendarFrame& frame) {
    const CalendarDay* const planned = screen.calendar.find(today);
    (planned != nullptr && planned->mock_exam ? frame.exam : frame.session) = true;
}

void read_keys(const std::vector<KeyPress>& keys, const Desk& desk, Day today,
               CalendarScreen& screen, CalendarFrame& frame) {
    const auto move = [&](int days) { screen.chosen += std::chrono::days(days); };
    for (const KeyPress& key : keys)
        switch (key.key) {
        case key::kEscape:
            frame.left = true;
            break;
        case key::kLeft:
            move(-1);
            break;
        case key::kRight:
            move(1);
            break;
        case key::kUp:
            move(-7);
            break;
        case key::kDown:
            move(7);
            break;
        case key::kPageUp:
            screen.chosen = in_month(screen.chosen, -1);
            break;
        case key::kPageDown:
            screen.chosen = in_month(screen.chosen, 1);
            break;
        case key::kHome:
            screen.chosen = today;
            break;
        case key::kD:
            type_day(screen, desk);
            break;
        case key::kEnter:
        case key::kKeypadEnter:
            begin_today(screen, today, frame);
            break;
        default:
            break;
        }
}

/// Places of the month on the stage [px].
struct GridPlaces {
    ImVec2 corner;
    ImVec2 cell;
};

/// A day of the month. @return true when it was pressed
bool draw_cell(const Style& style, const CalendarScreen& screen, Day day, Day today, ImVec2 corner,
               ImVec2 size) {
    const bool pressed = press_area(style, "day", corner, size);
    const bool chosen = screen.chosen == day;
    const bool bright = chosen || ImGui::IsItemHovered();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 end{corner.x + size.x, corner.y + size.y};
    const bool marked = is_exam(screen, day) || day == today;
    if (marked)
        list.AddRectFilled(corner, end, style.mark(Role::panel), style.px(4.0F));
    list.AddRect(corner, end, style.mark(bright ? Role::ink : Role::hairline), style.px(4.0F), 0,
                 chosen ? style.px(2.5F) : 1.0F);
    const auto of_month = static_cast<unsigned>(std::chrono::year_month_day(day).day());
    const TextStyle number{TextSize::body, marked, day < today ? Role::quiet_ink : Role::ink};
    const float left = corner.x + style.px(8.0F);
    const float drawn = draw_text(list, style, number, {left, corner.y + style.px(20.0F)},
                                  std::to_string(of_month));
    if (day == today)
        draw_text(list, style, kCaption,
                  {left + drawn + style.px(6.0F), corner.y + style.px(20.0F)}, "today");
    const std::string words = cell_words(screen, day, today);
    const TextStyle how = marked ? TextStyle{TextSize::caption, true, Role::ink} : kCaption;
    draw_paragraph(list, style, how, {left, corner.y + style.px(42.0F)}, size.x - style.px(12.0F),
                   words);
    return pressed;
}

void draw_month(const Style& style, const MonthGrid& month, const GridPlaces& places, Day today,
                CalendarScreen& screen) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    for (int i = 0; i < 7; ++i)
        draw_text(list, style, kCaption,
                  {places.corner.x + static_cast<float>(i) * places.cell.x + style.px(8.0F),
                   places.corner.y - style.px(8.0F)},
                  learner::weekday_name(i, screen.sunday_first));
    const float gap_px = style.px(4.0F);
    for (std::size_t i = 0; i < month.days.size(); ++i) {
        const ImVec2 corner{places.corner.x +
                                static_cast<float>(month.weekday_of(i)) * places.cell.x,
                            places.corner.y + static_cast<float>(month.week_of(i)) * places.cell.y};
        ImGui::PushID(static_cast<int>(i));
        if (draw_cell(style, screen, month.days[i], today, corner,
                      {places.cell.x - gap_px, places.cell.y - gap_px}))
            screen.chosen = month.days[i];
        ImGui::PopID();
    }
}

void draw_stage(const Style& style, const Layout& layout, Day today, CalendarScreen& screen) {
    const double top_px = style.px(64.0F);
    begin_area("month", {0.0, top_px}, layout.stage_px - scene::Point(0.0, top_px), true);
    const MonthGrid month = month_of(screen.chosen, screen.sunday_first);
    const float y = static_cast<float>(top_px) - ImGui::GetScrollY();
    const float left = 24.0F;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float title_y = y + style.px(38.0F);
    draw_text(list, style, {TextSize::reading, true, Role::ink}, {left, title_y},
              learner::say_month(month.first));
    const float right = static_cast<float>(layout.stage_px.x()) - 24.0F;
    const float later_px = text_width(style, kBody, "Next month");
    const float earlier_px = text_width(style, kBody, "Month before");
    if (word_button(style, "later", {right - later_px, title_y}, "Next month", false))
        screen.chosen = in_month(screen.chosen, 1);
    if (word_button(style, "earlier", {right - later_px - earlier_px - style.px(24.0F), title_y},
                    "Month before", false))
        screen.chosen = in_month(screen.chosen, -1);
    const float grid_y = title_y + style.px(46.0F);
    const float room_px =
        static_cast<float>(layout.stage_px.y()) - grid_y - style.px(16.0F) - ImGui::GetScrollY();
    const float least_px = style.px(62.0F);
    const GridPlaces places{
        {left, grid_y},
        {(right - left) / 7.0F,
         std::clamp(room_px / static_cast<float>(month.weeks()), least_px, style.px(112.0F))}};
    draw_month(style, month, places, today, screen);
    ImGui::SetCursorScreenPos({left, grid_y + static_cast<float>(month.weeks()) * places.cell.y});
    ImGui::Dummy({1.0F, 1.0F});
    end_area();
}

/// The chosen day in words.
void draw_day(const Desk& desk, Day today, const CalendarScreen& screen, ColumnPen& pen) {
    pen.paragraph(kStrong, say_short_day(screen.chosen, screen.order) +
                               (screen.chosen == today ? ", today" : ""));
    if (const auto done = screen.done.find(screen.chosen); done != screen.done.end())
        pen.paragraph(kBody, words::counted(done->second, "question") + " answered.");
    else if (screen.chosen < today)
        pen.paragraph(kBody, "Nothing was answered.");
    if (is_exam(screen, screen.chosen))
        pen.paragraph(kBody, "Your exam. Sleep, eat, and read nothing new.");
    else if (const CalendarDay* const planned = screen.calendar.find(screen.chosen))
        pen.paragraph(kBody, say(desk.course(), *planned));
    else if (screen.chosen > today)
        pen.paragraph(kBody, screen.calendar.exam
                                 ? "After the exam."
                                 : "Beyond what is planned without an exam's day.");
}

void draw_exam_day(Desk& desk, const learner::Clock& now, CalendarScreen& screen, ColumnPen& pen) {
    pen.skip(24.0F);
    pen.paragraph(kStrong, "Your exam");
    const auto& day = desk.standing().exam_day;
    pen.paragraph(kBody, day ? say_day(*day, screen.order) : std::string("No day is set."));
    if (!screen.typing) {
        pen.skip(4.0F);
        return;
    }
    const TypedLineEnd end = draw_typed_line(pen, "day", asked_exam_day(), *screen.typing);
    if (end == TypedLineEnd::left) {
        screen.typing.reset();
    } else if (end == TypedLineEnd::entered) {
        const std::string fault = desk.set_exam_day(screen.typing->text, now);
        if (fault.empty()) {
            screen.typing.reset();
            read_calendar(screen, desk, now);
        } else {
            refuse_line(*screen.typing, fault);
        }
    }
}

void draw_column(const Style& style, const Layout& layout, Desk& desk, const learner::Clock& now,
                 CalendarScreen& screen, CalendarFrame& frame) {
    const Day today = day_of(now);
    begin_area("column", layout.column_at_px, layout.column_px, true);
    ColumnPen pen(style, layout);
    pen.skip(layout.narrow ? 28.0F : 46.0F);
    draw_day(desk, today, screen, pen);
    draw_exam_day(desk, now, screen, pen);
    if (!screen.typing &&
        word_button(style, "set", {pen.left(), pen.y()},
                    desk.standing().exam_day ? "Change its day (D)" : "Set exam date (D)", false))
        type_day(screen, desk);
    pen.skip(40.0F);
    pen.paragraph(kStrong, "Does it fit?");
    pen.paragraph(kBody, say(desk.course(), screen.calendar));
    pen.skip(10.0F);
    pen.paragraph(kCaption, "A forecast, made anew after every answer: who answers better than "
                            "expected has less to do, who misses a day has more.");
    pen.skip(12.0F);
    if (word_button(style, "leave", {pen.left(), pen.y()}, "Back to practice", false))
        frame.left = true;
    pen.skip(22.0F);
    const CalendarDay* const planned = screen.calendar.find(today);
    const bool mock = planned != nullptr && planned->mock_exam;
    if (column_button(style, layout, pen, mock ? "Begin the mock exam" : "Begin today's session"))
        begin_today(screen, today, frame);
    end_area();
}

} // namespace

void open_calendar(CalendarScreen& screen, Desk& desk, const learner::Clock& now) {
    screen = {};
    screen.chosen = day_of(now);
    screen.order = learner::usual_day_order();
    screen.sunday_first = learner::begins_weeks_on_sunday(learner::usual_locale());
    for (const learner::Answer& answer : desk.last_answers(kAnswersRead))
        if (answer.is_evidence())
            ++screen.done[learner::day_of({answer.at_ms, now.offset_s})];
    read_calendar(screen, desk, now);
}

CalendarFrame run_calendar(const Style& style, const Layout& layout, Desk& desk,
                           const learner::Clock& now, const FrameInput& input,
                           CalendarScreen& screen) {
    CalendarFrame frame;
    frame.drawing.size_px = layout.stage_px;
    const Day today = day_of(now);
    read_keys(*input.keys, desk, today, screen, frame);
    draw_stage(style, layout, today, screen);
    draw_column(style, layout, desk, now, screen, frame);
    return frame;
}

} // namespace steelyard::app
