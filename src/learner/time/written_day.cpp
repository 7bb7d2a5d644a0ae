#include "learner/time/written_day.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <optional>
#include <vector>

namespace steelyard::learner {

namespace {

constexpr std::array<std::string_view, 12> kMonths{"January",   "February", "March",    "April",
                                                   "May",       "June",     "July",     "August",
                                                   "September", "October",  "November", "December"};
constexpr std::array<std::string_view, 7> kWeekdays{"Sun", "Mon", "Tue", "Wed",
                                                    "Thu", "Fri", "Sat"};
constexpr std::size_t kLongestDay = 40; ///< bytes of a typed day

std::chrono::year_month_day date_of(Day day) {
    return std::chrono::year_month_day(day);
}

std::string_view month_name(Day day) {
    return kMonths[static_cast<unsigned>(date_of(day).month()) - 1];
}

/// The words and numbers of a text; blanks and the marks between parts of a date part them.
std::vector<std::string> parts_of(std::string_view text) {
    std::vector<std::string> parts;
    bool within = false;
    for (const char letter : text) {
        const bool parts_here = std::string_view(" ,./-\t").find(letter) != std::string_view::npos;
        if (!parts_here && !within)
            parts.emplace_back();
        within = !parts_here;
        if (within)
            parts.back() += static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
    }
    return parts;
}

std::optional<int> whole_number(const std::string& part) {
    int number = 0;
    const auto [end, error] = std::from_chars(part.data(), part.data() + part.size(), number);
    if (error != std::errc() || end != part.data() + part.size() || number < 0)
        return std::nullopt;
    return number;
}

/// 1 to 12 for "dec", "december"; at least three letters, since "ma" and "ju" are two months each.
std::optional<int> month_number(const std::string& part) {
    constexpr std::size_t kEnough = 3;
    for (std::size_t i = 0; part.size() >= kEnough && i < kMonths.size(); ++i) {
        const std::string name = parts_of(kMonths[i]).front();
        if (name.compare(0, part.size(), part) == 0)
            return static_cast<int>(i) + 1;
    }
    return std::nullopt;
}

/// Year, month and day of three parts.
struct Numbers {
    int year = 0;
    int month = 0;
    int day = 0;
};

std::optional<Numbers> numbers_of(std::string_view text, DayOrder order) {
    const std::vector<std::string> parts = parts_of(text);
    if (parts.size() != 3)
        return std::nullopt;
    for (const bool month_first : {true, false})
        if (const auto month = month_number(parts[month_first ? 0 : 1])) {
            const auto day = whole_number(parts[month_first ? 1 : 0]);
            const auto year = whole_number(parts[2]);
            return day && year ? std::optional(Numbers{*year, *month, *day}) : std::nullopt;
        }
    const auto first = whole_number(parts[0]);
    const auto second = whole_number(parts[1]);
    const auto third = whole_number(parts[2]);
    if (!first || !second || !third)
        return std::nullopt;
    constexpr std::size_t kYear = 4;
    if (parts[0].size() == kYear)
        return Numbers{*first, *second, *third};
    // Dots are written by those who put the day first.
    const bool dots = text.find('.') != std::string_view::npos;
    return order == DayOrder::month_first && !dots ? Numbers{*third, *first, *second}
                                                   : Numbers{*third, *second, *first};
}

} // namespace

tl::expected<Day, std::string> read_written_day(std::string_view text, DayOrder order) {
    const auto numbers = text.size() <= kLongestDay ? numbers_of(text, order) : std::nullopt;
    constexpr int kFirstYear = 2000;
    constexpr int kLastYear = 2200;
    if (numbers && numbers->year >= kFirstYear && numbers->year <= kLastYear) {
        const std::chrono::year_month_day date{
            std::chrono::year(numbers->year),
            std::chrono::month(static_cast<unsigned>(numbers->month)),
            std::chrono::day(static_cast<unsigned>(numbers->day))};
        if (date.ok())
            return Day(date);
    }
    const Day example = std::chrono::year(2026) / std::chrono::December / 3;
    return tl::make_unexpected(
        fmt::format("\"{}\" is no day of the calendar; write it like {} or {}.",
                    text.substr(0, kLongestDay), say_day(example, order), write_day(example)));
}

std::string say_short_day(Day day, DayOrder order) {
    constexpr std::size_t kShort = 3;
    const std::string_view month = month_name(day).substr(0, kShort);
    const auto of_month = static_cast<unsigned>(date_of(day).day());
    const std::string_view weekday = weekday_name(day_of_week(day, true), true);
    return order == DayOrder::month_first ? fmt::format("{}, {} {}", weekday, month, of_month)
                                          : fmt::format("{} {} {}", weekday, of_month, month);
}

std::string say_month(Day day) {
    return fmt::format("{} {}", month_name(day), static_cast<int>(date_of(day).year()));
}

int day_of_week(Day day, bool sunday_first) {
    const auto after_sunday = static_cast<int>(std::chrono::weekday(day).c_encoding());
    return sunday_first ? after_sunday : (after_sunday + 6) % 7;
}

std::string_view weekday_name(int day_of_week, bool sunday_first) {
    return kWeekdays[static_cast<std::size_t>((day_of_week + (sunday_first ? 0 : 1)) % 7)];
}

bool begins_weeks_on_sunday(std::string_view locale) {
    // Of the places where English is written, by the CLDR's week data (from memory).
    constexpr std::array<std::string_view, 5> kSunday{"en_CA", "en_IN", "en_ZA", "en_HK", "en_SG"};
    return day_order_of(locale) == DayOrder::month_first ||
           std::any_of(kSunday.begin(), kSunday.end(),
                       [&](std::string_view one) { return locale.substr(0, one.size()) == one; });
}

} // namespace steelyard::learner
