#include "catch.h"
#include "words/counted.h"

using steelyard::words::counted;

TEST_CASE("one thing has no plural, none and many have") {
    CHECK(counted(0, "answer") == "0 answers");
    CHECK(counted(1, "answer") == "1 answer");
    CHECK(counted(1000000, "mock exam") == "1000000 mock exams");
}
