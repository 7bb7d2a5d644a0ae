#include "cli/reports/calendar_text.h"

#include "cli/study/terminal.h"
#include "learner/time/written_day.h"

#include <fmt/format.h>

namespace steelyard::cli {

namespace {

constexpr std::size_t kDayColumns = 14;

/// "Thu 3 Dec     15 questions. ...", further lines under the words.
std::string day_lines(const std::string& day, const std::string& words) {
    const std::string indent(kDayColumns, ' ');
    std::string text = wrapped(words, indent);
    const std::size_t columns = columns_of(day);
    return day + text.substr(std::min(columns, kDayColumns - 1));
}

} // namespace

std::string calendar_text(const learner::Course& course, const learner::StudyCalendar& calendar,
                          learner::DayOrder order) {
    std::string text;
    for (std::size_t i = 0; i < calendar.days.size();) {
        std::size_t end = i + 1;
        while (calendar.days[i].is_free() && end < calendar.days.size() &&
               calendar.days[end].is_free())
            ++end;
        const std::string day = say_short_day(calendar.days[i].day, order);
        text += end > i + 1
                    ? day_lines(day, fmt::format("to {}: nothing is due.",
                                                 say_short_day(calendar.days[end - 1].day, order)))
                    : day_lines(day, say(course, calendar.days[i]));
        i = end;
    }
    if (calendar.exam)
        text += day_lines(say_short_day(*calendar.exam, order), "Your exam.");
    return text + '\n' + wrapped(say(course, calendar));
}

} // namespace steelyard::cli
