#pragma once
// Days as people write them, which differs between places: read when typed, and written out short.

#include "learner/time/clock.h"

#include <tl/expected.hpp>

#include <string>
#include <string_view>

namespace steelyard::learner {

/// Reads a day however it is usually written: "2026-12-03", "3 December 2026", "Dec 3, 2026",
/// "3.12.2026", and "12/3/2026" with day and month in the order of the place.
/// @return the day, or a sentence on what is wrong with it
tl::expected<Day, std::string> read_written_day(std::string_view text, DayOrder order);

/// "Thu 3 Dec" or "Thu, Dec 3".
std::string say_short_day(Day day, DayOrder order);

/// "December 2026".
std::string say_month(Day day);

/// How far a day stands from the beginning of its week, 0 to 6.
int day_of_week(Day day, bool sunday_first);
/// "Mon", from the same count.
std::string_view weekday_name(int day_of_week, bool sunday_first);

/// Whether weeks begin on Sunday there, else on Monday.
/// @param locale  such as "en_US.UTF-8"
bool begins_weeks_on_sunday(std::string_view locale);

} // namespace steelyard::learner
