#include "learner/record/exchange/moment_text.h"

#include <fmt/format.h>

#include <charconv>

namespace steelyard::learner {

namespace {

/// The number that fills a text of digits; nothing else.
std::optional<int> digits(std::string_view text) {
    int number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error != std::errc() || end != text.data() + text.size() || text.front() == '-')
        return std::nullopt;
    return number;
}

} // namespace

std::string write_moment(TimeMs at_ms) {
    const Day day = day_of({at_ms, 0});
    const TimeMs of_day = at_ms - begin_of(day, 0);
    return fmt::format("{}T{:02}:{:02}:{:02}.{:03}Z", write_day(day), of_day / 3600000,
                       of_day / 60000 % 60, of_day / 1000 % 60, of_day % 1000);
}

std::optional<TimeMs> read_moment(std::string_view text) {
    // 2026-11-25T18:00:00Z or 2026-11-25T18:00:00.000Z
    if ((text.size() != 20 && text.size() != 24) || text[10] != 'T' || text[13] != ':' ||
        text[16] != ':' || text.back() != 'Z' || (text.size() == 24 && text[19] != '.'))
        return std::nullopt;
    const auto day = read_day(text.substr(0, 10));
    const auto hours = digits(text.substr(11, 2));
    const auto minutes = digits(text.substr(14, 2));
    const auto seconds = digits(text.substr(17, 2));
    const auto ms = text.size() == 24 ? digits(text.substr(20, 3)) : std::optional(0);
    if (!day || !hours || !minutes || !seconds || !ms || *hours > 23 || *minutes > 59 ||
        *seconds > 59)
        return std::nullopt;
    return begin_of(*day, 0) + *hours * 60 * kMinute_ms + *minutes * kMinute_ms +
           *seconds * kSecond_ms + *ms;
}

} // namespace steelyard::learner
