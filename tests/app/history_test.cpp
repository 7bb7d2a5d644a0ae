#include "app/history.h"
#include "catch.h"

using steelyard::app::History;

TEST_CASE("states come back in the opposite order and go forth again") {
    History<int> history;
    history.before_change(1, 0);
    history.before_change(2, 0);
    CHECK(history.undo(3) == 2);
    CHECK(history.undo(2) == 1);
    CHECK_FALSE(history.can_undo());
    CHECK(history.redo(1) == 2);
    CHECK(history.redo(2) == 3);
    CHECK_FALSE(history.can_redo());
}

TEST_CASE("steps of one gesture count as one, other steps between them end it") {
    History<int> history;
    history.before_change(1, 5);
    history.before_change(2, 5);
    history.before_change(3, 0);
    history.before_change(4, 5);
    CHECK(history.undo(6) == 4);
    CHECK(history.undo(4) == 3);
    CHECK(history.undo(3) == 1);
    CHECK_FALSE(history.can_undo());
}

TEST_CASE("a gesture that goes on after an undo is a new step") {
    History<int> history;
    history.before_change(1, 5);
    CHECK(history.undo(2) == 1);
    history.before_change(1, 5);
    CHECK(history.can_undo());
    CHECK_FALSE(history.can_redo());
}

TEST_CASE("the oldest states are forgotten, so that a long day does not fill the memory") {
    History<int> history;
    for (int i = 0; i < 5000; ++i)
        history.before_change(i, 0);
    int steps = 0;
    int state = 5000;
    while (history.can_undo()) {
        const int earlier = history.undo(state);
        REQUIRE(earlier == state - 1);
        state = earlier;
        ++steps;
    }
    CHECK(steps >= 100);
    CHECK(steps <= 1000);
}
