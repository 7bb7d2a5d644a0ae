#include "catch.h"
#include "learner/record/exchange/moment_text.h"
#include "learner/time/clock.h"

using namespace steelyard::learner;

// ISO 8601 and the Unix epoch: 1 000 000 000 s is 2001-09-09T01:46:40Z (POSIX; widely published).
TEST_CASE("moments and days are those of the calendar") {
    CHECK(write_moment(1000000000000) == "2001-09-09T01:46:40.000Z");
    CHECK(read_moment("2001-09-09T01:46:40Z") == 1000000000000);
    CHECK(read_moment("2001-09-09T01:46:40.250Z") == 1000000000250);
    CHECK(write_day(day_of({1000000000000, 0})) == "2001-09-09");
    // Two hours west of Greenwich it was still the day before.
    CHECK(write_day(day_of({1000000000000, -2 * 3600})) == "2001-09-08");
    // One hour east, 2001-09-09 began at 23:00 UTC the day before: 2 h 46 min 40 s earlier.
    CHECK(begin_of(day_of({1000000000000, 3600}), 3600) == 1000000000000 - 10000000);
}

TEST_CASE("leap days are days, and what is no day is refused") {
    CHECK(read_day("2028-02-29"));
    for (const char* text : {"2026-02-29", "2026-13-01", "2026-1-1", "tomorrow", "", "2026-12-3x"})
        CHECK_FALSE(read_day(text));
    CHECK_THAT(read_day("3.12.2026").error(), ContainsSubstring("such as 2026-12-03"));
    CHECK(days_between(*read_day("2026-11-25"), *read_day("2026-12-03")) == 8);
    for (const char* text : {"2026-11-25", "2026-11-25T25:00:00Z", "2026-11-25 18:00:00Z"})
        CHECK_FALSE(read_moment(text));
}

TEST_CASE("a day is said as the locale writes it") {
    const Day day = *read_day("2026-12-03");
    CHECK(say_day(day, day_order_of("en_US.UTF-8")) == "December 3, 2026");
    CHECK(say_day(day, day_order_of("en_GB.UTF-8")) == "3 December 2026");
    CHECK(say_day(day, day_order_of("C")) == "3 December 2026");
    CHECK(say_day(day, day_order_of("")) == "3 December 2026");
}
