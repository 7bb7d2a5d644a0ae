#pragma once
// Where the days of a month lie: a row for each week, a column for each day of the week.

#include "learner/time/clock.h"

#include <cstddef>
#include <vector>

namespace steelyard::app {

/// A month on the wall.
struct MonthGrid {
    learner::Day first{};           ///< of the month
    std::vector<learner::Day> days; ///< all of it, from the first
    int before = 0;                 ///< empty places before the first
    int weeks() const { return (before + static_cast<int>(days.size()) + 6) / 7; }

    /// Row and column of a day of the month by its index.
    int week_of(std::size_t index) const { return (before + static_cast<int>(index)) / 7; }
    int weekday_of(std::size_t index) const { return (before + static_cast<int>(index)) % 7; }
};

/// The month that holds a day.
MonthGrid month_of(learner::Day day, bool sunday_first);

/// The same day of another month, or its last where it is shorter.
learner::Day in_month(learner::Day day, int months_later);

} // namespace steelyard::app
