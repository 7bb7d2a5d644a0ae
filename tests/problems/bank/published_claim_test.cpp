// What a family may call published, on the families that come with the program.

#include "catch.h"
#include "problems/bank/reading/family_reader.h"
#include "setup/muscle/muscle_file.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <string>

using namespace steelyard;

namespace {

std::string shipped_family(const std::string& id) {
    std::ifstream file(std::string(STEELYARD_SOURCE_DIR) + "/question_bank/families/" + id +
                       ".toml");
    REQUIRE(file);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

std::string replaced(std::string text, const std::string& what, const std::string& with) {
    const std::size_t at = text.find(what);
    REQUIRE(at != std::string::npos);
    return text.replace(at, what.size(), with);
}

auto read(const std::string& text) {
    static const problems::Published data{setup::shipped_segment_tables().value(),
                                          setup::shipped_muscles().value()};
    const auto document = setup::parse_toml(text, "family.toml");
    REQUIRE(document);
    return problems::read_family(*document, data);
}

} // namespace

TEST_CASE("an arm from memory is not called published", "[bank][published]") {
    const std::string deltoid = shipped_family("deltoid-in-a-side-raise");
    REQUIRE(read(deltoid));
    const auto claimed = read(replaced(deltoid, "its moment arm\"", "its published moment arm\""));
    REQUIRE_FALSE(claimed);
    REQUIRE(claimed.error().size() == 1);
    CHECK(claimed.error()[0].key == "title");
    CHECK(claimed.error()[0].line == 2);
    CHECK(claimed.error()[0].expected.find("from memory") != std::string::npos);

    const auto in_a_step = read(replaced(deltoid, "says = \"The muscle", "says = \"Published: it"));
    REQUIRE_FALSE(in_a_step);
    CHECK(in_a_step.error()[0].key.find("step") == 0);
}

TEST_CASE("an arm that was seen in a copy of its source may be called published",
          "[bank][published]") {
    const std::string biceps = shipped_family("biceps-at-an-angle");
    CHECK(biceps.find("published moment arm") != std::string::npos);
    CHECK(read(biceps));
    // The same words about a remembered muscle are refused.
    CHECK_FALSE(read(replaced(biceps, "muscle = \"biceps\"", "muscle = \"gluteus maximus\"")));
}
