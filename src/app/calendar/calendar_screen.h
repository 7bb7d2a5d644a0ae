#pragma once
// The calendar to the exam: a month on the stage, what each day asks for, and in the column the
// chosen day in words.

#include "app/frame/frame_input.h"
#include "app/frame/layout.h"
#include "app/look/style.h"
#include "app/practice/desk.h"
#include "app/widgets/typed_line.h"
#include "learner/path/calendar.h"

#include <map>
#include <optional>
#include <string>

namespace steelyard::app {

struct CalendarScreen {
    learner::Day chosen{};
    learner::StudyCalendar calendar;
    std::map<learner::Day, int> done; ///< answers that were given on a day
    bool sunday_first = false;
    learner::DayOrder order = learner::DayOrder::day_first;
    std::optional<TypedLine> typing; ///< of the exam's day
};

/// Reads what is shown; once, not in every frame.
void open_calendar(CalendarScreen& screen, Desk& desk, const learner::Clock& now);

struct CalendarFrame {
    bool left = false;
    bool session = false; ///< today's is to begin
    bool exam = false;    ///< a mock exam is to begin
    scene::Drawing drawing;
};

/// Runs one frame. Keys: arrows choose a day, Page Up and Page Down a month, Home today, D types
/// the exam's day, Enter does what today asks for, Escape leaves.
CalendarFrame run_calendar(const Style& style, const Layout& layout, Desk& desk,
                           const learner::Clock& now, const FrameInput& input,
                           CalendarScreen& screen);

} // namespace steelyard::app
