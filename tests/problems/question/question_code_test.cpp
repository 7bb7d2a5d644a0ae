#include "catch.h"
#include "problems/question/question_code.h"

using namespace steelyard::problems;

TEST_CASE("a question code is read back to what it was made from") {
    const CodeParts parts{family_number("plank-effort"), 4711};
    const std::string code = write_code(parts);
    CHECK(code.size() == 11);
    for (const std::string& typed : {code, std::string(code).erase(5, 1)}) {
        const auto read = read_code(typed);
        REQUIRE(read.has_value());
        CHECK(read->family_number == parts.family_number);
        CHECK(read->seed == parts.seed);
    }
}

TEST_CASE("a question code forgives case, blanks and letters that look like digits") {
    const std::string code = write_code({1, 33});
    std::string typed;
    for (const char c : code)
        typed += c == '0' ? 'o' : c == '1' ? 'l' : static_cast<char>(std::tolower(c));
    const auto read = read_code(" " + typed + " ");
    REQUIRE(read.has_value());
    CHECK(read->family_number == 1);
    CHECK(read->seed == 33);
}

TEST_CASE("a slip in a question code is noticed") {
    const std::string code = write_code({12345, 678901});
    int slips = 0;
    int noticed = 0;
    for (std::size_t i = 0; i < code.size(); ++i) {
        if (code[i] == '-')
            continue;
        for (const char other : std::string("0123456789ABCDEFGHJKMNPQRSTVWXYZ")) {
            if (other == code[i])
                continue;
            std::string wrong = code;
            wrong[i] = other;
            ++slips;
            noticed += read_code(wrong).has_value() ? 0 : 1;
        }
    }
    CHECK(slips == 310);
    // The check counts modulo 31, so that of all slips only 0 for Z can hide.
    CHECK(noticed >= 300);
    CHECK_FALSE(read_code("").has_value());
    CHECK_FALSE(read_code("ABCDE").has_value());
    CHECK_FALSE(read_code(code + "7").has_value());
    CHECK_FALSE(read_code("K7M2Q-9XD4U").has_value());
    CHECK_FALSE(read_code("K7M2Q-\xC3\xA4").has_value());
}
