#include "catch.h"
#include "setup/toml/spelling.h"

using namespace steelyard::setup;

TEST_CASE("spelling distance counts letters added, dropped, changed and swapped", "[spelling]") {
    // kitten -> sitting is the textbook example of edit distance 3 (common practice, no source).
    CHECK(spelling_distance("kitten", "sitting") == 3);
    CHECK(spelling_distance("", "abc") == 3);
    CHECK(spelling_distance("effort", "effort") == 0);
    CHECK(spelling_distance("effort", "EFFORT") == 0);
    CHECK(spelling_distance("effrot", "effort") == 1);
    CHECK(spelling_distance("ca", "abc") == 3); // optimal string alignment, not free transposition
}

TEST_CASE("the nearest spelling is found, and none is made up", "[spelling]") {
    const std::vector<std::string_view> keys = {"mass", "force", "direction", "torque", "at"};
    CHECK(nearest_spelling("froce", keys) == "force");
    CHECK(nearest_spelling("dirction", keys) == "direction");
    CHECK(nearest_spelling("colour", keys).empty());
    CHECK(nearest_spelling("", keys).empty());
    CHECK(nearest_spelling("x", {"y"}).empty());
    CHECK(nearest_spelling(std::string(100000, 'a'), keys).empty());
}
