#include "learner/time/wall_clock.h"

#include <chrono>
#include <cstdlib>
#include <ctime>

namespace steelyard::learner {

Clock wall_clock() {
    const auto now = std::chrono::system_clock::now();
    const std::time_t seconds = std::chrono::system_clock::to_time_t(now);
    const std::tm* const utc = std::gmtime(&seconds);
    Clock clock;
    clock.utc_ms =
        std::chrono::duration_cast<std::chrono::milliseconds>(now.time_since_epoch()).count();
    if (utc != nullptr) {
        // UTC's hands read as local time are off by just the offset; summer time is left to tell.
        std::tm as_local = *utc;
        as_local.tm_isdst = -1;
        clock.offset_s = static_cast<int>(std::difftime(seconds, std::mktime(&as_local)));
    }
    return clock;
}

std::string usual_locale() {
    for (const char* const name : {"LC_ALL", "LC_TIME", "LANG"})
        if (const char* const locale = std::getenv(name); locale != nullptr && *locale != '\0')
            return locale;
    return {};
}

DayOrder usual_day_order() {
    return day_order_of(usual_locale());
}

} // namespace steelyard::learner
