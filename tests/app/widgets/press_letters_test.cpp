#include "app/widgets/press_letters.h"
#include "catch.h"

#include <set>

using namespace steelyard::app;

TEST_CASE("everything has letters of its own, and none begins another") {
    for (const std::size_t count : {std::size_t{1}, std::size_t{26}, std::size_t{27},
                                    std::size_t{60}, std::size_t{26 * 26}}) {
        std::set<std::string> seen;
        for (std::size_t i = 0; i < count; ++i) {
            const std::string letters = letters_of(i, count);
            CHECK(letters.size() == (count <= 26 ? 1 : 2));
            seen.insert(letters);
        }
        CHECK(seen.size() == count);
    }
    CHECK(letters_of(1, 2) == "B");
    CHECK(letters_of(27, 60) == "BB");
}
