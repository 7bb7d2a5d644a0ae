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

TEST_CASE("a class of lever is read however it is written") {
    const std::vector<std::string> texts{"First class", "Second class", "Third class"};
    for (const char* typed : {"third class", "third-class lever", "class 3", "3rd class", "III",
                              "3", "a third class lever"}) {
        INFO(typed);
        CHECK(read_choice(typed, texts) == std::size_t{2});
    }
    CHECK(read_choice("II", texts) == std::size_t{1});
}

TEST_CASE("another name of what a choice says is taken for it") {
    const Synonyms synonyms{{"axis", "fulcrum", "pivot"},
                            {"frontal plane", "coronal plane", "coronal"}};
    CHECK(read_choice("fulcrum", {"The load", "The axis", "The effort"}, synonyms) ==
          std::size_t{1});
    CHECK(read_choice("coronal", {"Sagittal plane", "Frontal plane"}, synonyms) == std::size_t{1});
    // Of two that would fit none is taken.
    CHECK_FALSE(
        read_choice("pivot", {"Left of the axis", "Right of the axis"}, synonyms).has_value());
}
