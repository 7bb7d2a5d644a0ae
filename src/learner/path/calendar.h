#pragma once
// What to do on which day until the exam, day by day from today: which skills are begun or gone on
// with, which come back, when a mock exam is worth sitting, and what no longer fits.
//
// A forecast by the rules that sessions follow (next.h), for somebody who answers as the model
// expects. It is made anew from what was really answered, so that it never goes stale.

#include "learner/path/plan.h"

#include <string>
#include <vector>

namespace steelyard::learner {

struct CalendarDay {
    Day day{};
    int questions = 0; ///< of the session, reviews included; a mock exam's are not among them
    std::vector<std::size_t> begun;    ///< skills, by index, met for the first time
    std::vector<std::size_t> gone_on;  ///< begun earlier and not mastered
    std::vector<std::size_t> reviewed; ///< mastered before; a question each
    bool mock_exam = false;            ///< instead of a session

    bool is_free() const { return questions == 0 && !mock_exam; }
};

struct StudyCalendar {
    std::vector<CalendarDay> days;     ///< from today to the day before the exam
    std::optional<Day> exam;           ///< empty without a date, or when it is past
    std::vector<std::size_t> left_out; ///< skills that are not mastered by then

    /// The day of that date; null when it is none of them.
    const CalendarDay* find(Day day) const;
};

/// @param plan  as plan_study gives it for the same standing and moment
/// Under a millisecond a month.
StudyCalendar plan_calendar(const Course& course, const Standing& standing, const StudyPlan& plan,
                            const Clock& clock);

/// "Begin: lever class. Go on: balance. Review: 3 skills." or "Sit a mock exam: 40 questions, 60
/// minutes." or "Nothing is due: a free day."
std::string say(const Course& course, const CalendarDay& day);

/// Whether everything fits, and what is left out: one or two sentences.
std::string say(const Course& course, const StudyCalendar& calendar);

} // namespace steelyard::learner
