#pragma once
// Time for the learner's record. Nothing here reads a clock (wall_clock.h does): whoever calls says
// when it is.

#include <tl/expected.hpp>

#include <chrono>
#include <cstdint>
#include <string>
#include <string_view>

namespace steelyard::learner {

/// A moment: milliseconds since 1970-01-01 00:00 UTC.
using TimeMs = std::int64_t;

inline constexpr TimeMs kSecond_ms = 1000;
inline constexpr TimeMs kMinute_ms = 60 * kSecond_ms;
inline constexpr TimeMs kDay_ms = 24 * 60 * kMinute_ms;

/// What the clock on the wall shows.
struct Clock {
    TimeMs utc_ms = 0;
    int offset_s = 0; ///< how far local time is ahead of UTC [s]
};

/// A day of the calendar.
using Day = std::chrono::sys_days;

/// The local day.
Day day_of(const Clock& clock);

/// The moment at which a local day begins, for a clock with this offset.
TimeMs begin_of(Day day, int offset_s);

/// From one day to another; negative when `to` comes first.
int days_between(Day from, Day to);

/// Days between two moments, never negative: a clock that was set back makes no gap.
double gap_days(TimeMs from, TimeMs to);

/// "2026-12-03" (ISO 8601).
std::string write_day(Day day);

/// How people with a locale write a day out.
enum class DayOrder {
    day_first,   ///< "3 December 2026"
    month_first, ///< "December 3, 2026": the United States and those who write as they do
};
/// @param locale  such as "en_US.UTF-8"; empty or "C" = day_first
DayOrder day_order_of(std::string_view locale);
/// A day for people, its month in letters, so that no order of numbers has to be guessed.
std::string say_day(Day day, DayOrder order);

/// Minutes and seconds, rounded down: "52:10".
std::string minutes_text(std::int64_t ms);

/// Reads "2026-12-03".
/// @return the day, or a sentence on what is wrong with it
tl::expected<Day, std::string> read_day(std::string_view text);

} // namespace steelyard::learner
