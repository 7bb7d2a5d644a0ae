#include "catch.h"
#include "learner/time/written_day.h"

using namespace steelyard::learner;

TEST_CASE("a typed day is read in the order of the place") {
    const Day third = *read_day("2026-12-03");
    for (const DayOrder order : {DayOrder::day_first, DayOrder::month_first})
        for (const char* text : {"2026-12-03", "3 December 2026", "3 dec 2026", "December 3, 2026",
                                 "Dec 3 2026", "03.12.2026", " 3. Dec. 2026 "})
            CHECK(read_written_day(text, order) == third);
    CHECK(read_written_day("12/3/2026", DayOrder::month_first) == third);
    CHECK(read_written_day("3/12/2026", DayOrder::day_first) == third);
}

TEST_CASE("what is no day is refused with an example as the place writes it") {
    for (const char* text : {"", "tomorrow", "30 Feb 2026", "ju 3 2026", "3 12", "1 2 3 4",
                             "3 December 26", "99999999999999999999 Dec 2026"})
        CHECK_FALSE(read_written_day(text, DayOrder::day_first));
    CHECK_THAT(read_written_day("soon", DayOrder::month_first).error(),
               ContainsSubstring("December 3, 2026 or 2026-12-03"));
    CHECK_THAT(read_written_day("soon", DayOrder::day_first).error(),
               ContainsSubstring("3 December 2026 or 2026-12-03"));
}

// 3 December 2026 is a Thursday (any calendar; Zeller's congruence gives 5 = Thursday).
TEST_CASE("days are said short, and weeks begin as the place begins them") {
    const Day third = *read_day("2026-12-03");
    CHECK(say_short_day(third, DayOrder::day_first) == "Thu 3 Dec");
    CHECK(say_short_day(third, DayOrder::month_first) == "Thu, Dec 3");
    CHECK(say_month(third) == "December 2026");
    CHECK(day_of_week(third, true) == 4);
    CHECK(day_of_week(third, false) == 3);
    CHECK(weekday_name(0, true) == "Sun");
    CHECK(weekday_name(6, false) == "Sun");
    CHECK(begins_weeks_on_sunday("en_US.UTF-8"));
    CHECK_FALSE(begins_weeks_on_sunday("en_GB.UTF-8"));
}
