#include "app/side_by_side/pair_screen.h"
#include "catch.h"

using namespace steelyard::app;

TEST_CASE("going through a list of changes goes round, and begins at the end that is nearer") {
    const std::vector<int> changes{4, 7, 9};
    CHECK(change_after(changes, std::optional(4), 1) == 7);
    CHECK(change_after(changes, std::optional(9), 1) == 4);
    CHECK(change_after(changes, std::optional(4), -1) == 9);
    CHECK(change_after(changes, std::optional<int>(), 1) == 4);
    CHECK(change_after(changes, std::optional<int>(), -1) == 9);
    CHECK(change_after(changes, std::optional(5), 1) == 4); // selected, but no longer in the list
    CHECK_FALSE(change_after(std::vector<int>{}, std::optional(4), 1));
}

TEST_CASE("the keys of a pair mean the same whatever is compared") {
    const auto meaning = [](int key, int modifiers = 0) {
        return meaning_of_pair_key({key, modifiers});
    };
    CHECK(std::get<SelectNext>(meaning(key::kUp)).step == -1);
    CHECK(std::get<NudgeSelected>(meaning(key::kMinus)).hundredths == -1.0);
    CHECK(std::get<NudgeSelected>(meaning(key::kEqual, key::kWithShift)).hundredths == 10.0);
    CHECK(std::get<PairKey>(meaning(key::kX)) == PairKey::swap);
    CHECK(std::get<PairKey>(meaning(key::kZ, key::kWithControl)) == PairKey::undo);
    CHECK(std::get<PairKey>(meaning(key::kZ, key::kWithControl | key::kWithShift)) ==
          PairKey::redo);
    CHECK(std::get<SideBySideWish>(meaning(key::kF)) == SideBySideWish::take_stage);
    CHECK(std::holds_alternative<std::monostate>(meaning(key::kX, key::kWithControl)));
    CHECK(std::holds_alternative<std::monostate>(meaning(key::kM)));
}
