#include "app/side_by_side/change_dial.h"
#include "catch.h"

using namespace steelyard;
using namespace steelyard::app;
using mechanics::ChangeUnit;

TEST_CASE("a dial of weights spans what people lift, every other dial its whole range") {
    const mechanics::ChangeRange load{40.0, {0.0, 2000.0}, ChangeUnit::kilogram};
    CHECK(dial_range(load, std::nullopt).high == 80.0);
    CHECK(dial_range(load, 100.0).high == 125.0); // an aim lies on it
    const mechanics::ChangeRange nothing{0.0, {0.0, 2000.0}, ChangeUnit::kilogram};
    CHECK(dial_range(nothing, std::nullopt).high > 0.0);
    const mechanics::ChangeRange angle{0.3, {-0.5, 2.0}, ChangeUnit::radian};
    CHECK(dial_range(angle, std::nullopt).low == -0.5);
    CHECK(dial_range(angle, std::nullopt).high == 2.0);
}

TEST_CASE("steps at one dial are one run, and at another dial another") {
    const mechanics::Change weight = mechanics::LoadSize{{0}};
    const mechanics::LeverChange grip{mechanics::LeverKnob::effort_place, 0};
    const mechanics::ChangeRange load{40.0, {0.0, 2000.0}, ChangeUnit::kilogram};
    const mechanics::ChangeRange heavy{95.0, {0.0, 2000.0}, ChangeUnit::kilogram};
    ChangeDial dial;
    turn_to(dial, weight, load, std::nullopt);
    const int run = dial.run;
    turn_to(dial, weight, load, std::nullopt);
    CHECK(dial.run == run);
    turn_to(dial, weight, heavy, std::nullopt); // nudged off its end: it spans more, and goes on
    CHECK(dial.run == run);
    CHECK(dial.shown.high == 190.0);
    turn_to(dial, grip, load, std::nullopt);
    CHECK(dial.run != run);
}

TEST_CASE("the part that is allowed is told with what stops it") {
    mechanics::AllowedSpan span;
    span.span = {0.1, 0.4};
    span.above = {mechanics::LimitKind::would_topple, std::nullopt, {}};
    const std::vector<mechanics::AllowedSpan> spans{span};
    DialReading reading;
    reading.range = {0.2, {0.1, 0.8}, ChangeUnit::metre};
    CHECK(span_text(reading).empty()); // not known yet
    reading.spans = &spans;
    CHECK(span_text(reading) ==
          "From 0.100\u00A0m to 0.400\u00A0m; beyond 0.400\u00A0m the body would topple.");
}
