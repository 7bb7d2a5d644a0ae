#include "catch.h"
#include "problems/marking/typed_choice.h"

using namespace steelyard::problems;

TEST_CASE("a choice is read by letter, number or words") {
    const std::vector<std::string> texts{"First class", "Second class", "Third class"};
    for (const char* typed : {"b", "B", " b ", "2", "second class", "Second Class", "second", "b."})
        CHECK(read_choice(typed, texts) == std::size_t{1});
    for (const char* typed : {"", "d", "4", "0", "class", "fourth", "-1", "99999999999"})
        CHECK_FALSE(read_choice(typed, texts).has_value());
}

TEST_CASE("several letters are read with or without blanks and commas") {
    const std::vector<std::size_t> wanted{1, 0, 2};
    for (const char* typed : {"b a c", "bac", "B,A,C", "2 1 3", "b > a > c", "b, a and c"}) {
        INFO(typed);
        const auto read = read_letters(typed, 3);
        REQUIRE(read.has_value());
        CHECK(*read == wanted);
    }
    CHECK_FALSE(read_letters("b d", 3).has_value());
    CHECK_FALSE(read_letters("", 3).has_value());
    CHECK_FALSE(read_letters("hello", 3).has_value());
}
