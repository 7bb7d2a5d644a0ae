#include "app/calendar/month_grid.h"

#include "learner/time/written_day.h"

#include <algorithm>

namespace steelyard::app {

using learner::Day;

namespace {

std::chrono::year_month month_with(Day day) {
    const std::chrono::year_month_day date(day);
    return date.year() / date.month();
}

Day first_of(const std::chrono::year_month& month) {
    return Day(month / std::chrono::day(1));
}

} // namespace

MonthGrid month_of(Day day, bool sunday_first) {
    MonthGrid grid;
    const std::chrono::year_month month = month_with(day);
    grid.first = first_of(month);
    const Day end = first_of(month + std::chrono::months(1));
    for (Day one = grid.first; one < end; one += std::chrono::days(1))
        grid.days.push_back(one);
    grid.before = learner::day_of_week(grid.first, sunday_first);
    return grid;
}

Day in_month(Day day, int months_later) {
    const std::chrono::year_month month = month_with(day) + std::chrono::months(months_later);
    const Day last = first_of(month + std::chrono::months(1)) - std::chrono::days(1);
    return std::min(first_of(month) + (day - first_of(month_with(day))), last);
}

} // namespace steelyard::app
