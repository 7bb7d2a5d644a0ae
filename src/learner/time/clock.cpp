#include "learner/time/clock.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>

namespace steelyard::learner {

namespace {

/// A whole number that fills the text; nothing else gives -1.
int number_in(std::string_view text) {
    int number = -1;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    const bool all = error == std::errc() && end == text.data() + text.size();
    return all && number >= 0 ? number : -1;
}

} // namespace

Day day_of(const Clock& clock) {
    const std::chrono::milliseconds local{clock.utc_ms + clock.offset_s * kSecond_ms};
    return std::chrono::floor<std::chrono::days>(
        std::chrono::time_point<std::chrono::system_clock, std::chrono::milliseconds>(local));
}

TimeMs begin_of(Day day, int offset_s) {
    return day.time_since_epoch().count() * kDay_ms - offset_s * kSecond_ms;
}

int days_between(Day from, Day to) {
    return static_cast<int>((to - from).count());
}

double gap_days(TimeMs from, TimeMs to) {
    return static_cast<double>(std::max<TimeMs>(0, to - from)) / static_cast<double>(kDay_ms);
}

std::string minutes_text(std::int64_t ms) {
    const std::int64_t seconds = ms / kSecond_ms;
    return fmt::format("{}:{:02}", seconds / 60, seconds % 60);
}

std::string write_day(Day day) {
    const std::chrono::year_month_day date(day);
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()),
                       static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
}

DayOrder day_order_of(std::string_view locale) {
    // Territories by the CLDR's day patterns (from memory): the month comes first in English of
    // the United States with its islands, and of the Philippines.
    constexpr std::array<std::string_view, 7> kMonthFirst{"en_US", "en_PH", "en_PR", "en_GU",
                                                          "en_VI", "en_AS", "en_MP"};
    const bool month_first =
        std::any_of(kMonthFirst.begin(), kMonthFirst.end(),
                    [&](std::string_view one) { return locale.substr(0, one.size()) == one; });
    return month_first ? DayOrder::month_first : DayOrder::day_first;
}

std::string say_day(Day day, DayOrder order) {
    constexpr std::array<const char*, 12> kMonths{"January",   "February", "March",    "April",
                                                  "May",       "June",     "July",     "August",
                                                  "September", "October",  "November", "December"};
    const std::chrono::year_month_day date(day);
    const char* const month = kMonths[static_cast<unsigned>(date.month()) - 1];
    const auto of_month = static_cast<unsigned>(date.day());
    const int year = static_cast<int>(date.year());
    return order == DayOrder::month_first ? fmt::format("{} {}, {}", month, of_month, year)
                                          : fmt::format("{} {} {}", of_month, month, year);
}

tl::expected<Day, std::string> read_day(std::string_view text) {
    const auto refuse = [&] {
        return tl::make_unexpected(fmt::format(
            "\"{}\" is no day of the calendar; write year-month-day, such as 2026-12-03.", text));
    };
    if (text.size() != 10 || text[4] != '-' || text[7] != '-')
        return refuse();
    const int year = number_in(text.substr(0, 4));
    const int month = number_in(text.substr(5, 2));
    const int day = number_in(text.substr(8, 2));
    if (year < 0 || month < 0 || day < 0)
        return refuse();
    const std::chrono::year_month_day date{std::chrono::year(year),
                                           std::chrono::month(static_cast<unsigned>(month)),
                                           std::chrono::day(static_cast<unsigned>(day))};
    if (!date.ok())
        return refuse();
    return Day(date);
}

} // namespace steelyard::learner
