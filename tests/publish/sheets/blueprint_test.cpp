#include "catch.h"
#include "publish/paper_questions.h"
#include "publish/sheets/blueprint.h"

#include <set>

using namespace steelyard;
using namespace steelyard::publish;
using problems::Question;

namespace {

constexpr const char* kSmall = R"(
title = "Small"
[[part]]
heading = "Arms"
skill = "moment-arm-oblique"
count = 3
[[part]]
count = 4
difficulty = 2
)";

Blueprint small() {
    const auto blueprint = parse_blueprint(kSmall, "small.blueprint.toml");
    REQUIRE(blueprint);
    return *blueprint;
}

std::string error_of(const std::string& text) {
    const auto blueprint = parse_blueprint(text, "bad.blueprint.toml");
    REQUIRE_FALSE(blueprint);
    return to_text(blueprint.error());
}

std::vector<std::string> codes(const Worksheet& sheet) {
    std::vector<std::string> all;
    for (const SheetPart& part : sheet.parts)
        for (const Question& question : part.questions)
            all.push_back(question.code);
    return all;
}

} // namespace

TEST_CASE("a blueprint is read with its defaults") {
    const Blueprint blueprint = small();
    CHECK(blueprint.name == "small");
    CHECK(blueprint.title == "Small");
    CHECK(blueprint.paper == PaperSize::a4);
    CHECK_FALSE(blueprint.large_print);
    REQUIRE(blueprint.parts.size() == 2);
    CHECK(blueprint.parts[0].skill == "moment-arm-oblique");
    CHECK(blueprint.parts[1].difficulty == 2);
}

TEST_CASE("the blueprints that come with the program make sheets") {
    const problems::Bank bank = real_bank();
    const auto folder = std::filesystem::path(STEELYARD_SOURCE_DIR) / "assets" / "blueprints";
    int count = 0;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        if (entry.path().extension() == ".toml") {
            const auto blueprint = read_blueprint(entry.path());
            REQUIRE(blueprint);
            CHECK(make_worksheets(bank, *blueprint, 1, 3));
            ++count;
        }
    }
    CHECK(count >= 1);
}

TEST_CASE("the same seed gives the same sheets, another seed others") {
    const problems::Bank bank = real_bank();
    const auto once = make_worksheets(bank, small(), 42, 3);
    const auto again = make_worksheets(bank, small(), 42, 3);
    const auto other = make_worksheets(bank, small(), 43, 3);
    REQUIRE(once);
    REQUIRE(other);
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(codes((*once)[i]) == codes((*again)[i]));
        CHECK(codes((*once)[i]) != codes((*other)[i]));
    }
}

TEST_CASE("versions share families and difficulty, question by question, and not the numbers") {
    const problems::Bank bank = real_bank();
    const auto sheets = make_worksheets(bank, small(), 42, 3);
    REQUIRE(sheets);
    REQUIRE(sheets->size() == 3);
    std::set<std::string> prompts;
    for (const Worksheet& sheet : *sheets) {
        REQUIRE(sheet.count() == 7);
        for (std::size_t part = 0; part < sheet.parts.size(); ++part) {
            for (std::size_t i = 0; i < sheet.parts[part].questions.size(); ++i) {
                const Question& question = sheet.parts[part].questions[i];
                const Question& first = sheets->front().parts[part].questions[i];
                CHECK(question.family == first.family);
                CHECK(question.difficulty == first.difficulty);
            }
        }
        // The oblique arms are drawn, not written: each prompt is new.
        for (const Question& question : sheet.parts[0].questions)
            CHECK(prompts.insert(question.prompt).second);
    }
    CHECK((*sheets)[0].version == "A");
    CHECK((*sheets)[2].code == "small-42-C");
}

TEST_CASE("a single version has no letter, and versions made later change nothing before") {
    const problems::Bank bank = real_bank();
    const auto one = make_worksheets(bank, small(), 42, 1);
    const auto many = make_worksheets(bank, small(), 42, 4);
    REQUIRE(one);
    REQUIRE(many);
    CHECK(one->front().version.empty());
    CHECK(one->front().code == "small-42");
    CHECK(codes(one->front()) == codes(many->front()));
    CHECK(codes((*make_worksheets(bank, small(), 42, 2))[1]) == codes((*many)[1]));
}

TEST_CASE("a bank of which a part cannot be read makes no sheet under the code of another") {
    problems::Bank bank = real_bank();
    bank.families.pop_back();
    setup::InputError lost;
    lost.file = "families/lost.family.toml";
    bank.faults.push_back(lost);
    const auto sheets = make_worksheets(bank, small(), 7, 2);
    REQUIRE_FALSE(sheets);
    CHECK(sheets.error().fault == PublishFault::bad_paper);
    CHECK_THAT(sheets.error().message, ContainsSubstring("lost.family.toml"));
}

TEST_CASE("making sheets tells of every question and stops at any") {
    const problems::Bank bank = real_bank();
    std::size_t told = 0;
    REQUIRE(make_worksheets(bank, small(), 42, 3, [&](std::size_t done, std::size_t all) {
        CHECK(done == ++told);
        CHECK(all == 21);
        return true;
    }));
    CHECK(told == 21);
    for (std::size_t stop = 1; stop <= 21; ++stop) {
        std::size_t asked = 0;
        const auto sheets = make_worksheets(
            bank, small(), 42, 3, [&](std::size_t, std::size_t) { return ++asked < stop; });
        REQUIRE_FALSE(sheets);
        CHECK(sheets.error().fault == PublishFault::stopped);
        CHECK(asked == stop);
    }
}

TEST_CASE("the code of a sheet says blueprint, seed and version") {
    for (const SheetCode& code : {SheetCode{"boathouse", 42, 1},
                                  {"two-words", 0, -1},
                                  {"x", 7, 25},
                                  {"boathouse", 42, 1, true},
                                  {"two-words", 7, -1, true}}) {
        const auto read = read_sheet_code(write_sheet_code(code));
        REQUIRE(read);
        CHECK(read->blueprint == code.blueprint);
        CHECK(read->seed == code.seed);
        CHECK(read->version == code.version);
        CHECK(read->us_units == code.us_units);
    }
    CHECK(write_sheet_code({"boathouse", 42, 1, true}) == "boathouse-42us-B");
    CHECK(read_sheet_code("boathouse-42-b")->version == 1);
    for (const char* text : {"", "-", "boathouse", "boathouse-", "-42", "boathouse-4x2", "a--B",
                             "boathouse-99999999999999999999999"}) {
        INFO(text);
        CHECK_FALSE(read_sheet_code(text));
    }
}

TEST_CASE("what is wrong with a blueprint is said with its place") {
    CHECK_THAT(error_of("title = \"x\"\n"), ContainsSubstring("part"));
    CHECK_THAT(error_of("[[part]]\n"), ContainsSubstring("title"));
    CHECK_THAT(error_of("title = \"x\"\n[[part]]\ncount = 0\n"), ContainsSubstring("line 3"));
    CHECK_THAT(error_of("title = \"x\"\n[[part]]\ncuont = 5\n"), ContainsSubstring("count"));
    CHECK_THAT(error_of("title = \"x\"\npaper = \"A3\"\n[[part]]\n"), ContainsSubstring("A4"));
    CHECK_THAT(error_of("title = \"x\"\n[[part]]\ncount = 900\n[[part]]\ncount = 900\n"),
               ContainsSubstring("1800"));
}

TEST_CASE("a part that the bank cannot fill is named") {
    const problems::Bank bank = real_bank();
    const auto blueprint =
        parse_blueprint("title = \"x\"\n[[part]]\nskill = \"juggling\"\n", "bad.blueprint.toml");
    REQUIRE(blueprint);
    const auto sheets = make_worksheets(bank, *blueprint, 1, 1);
    REQUIRE_FALSE(sheets);
    CHECK_THAT(sheets.error().message, ContainsSubstring("bad.blueprint.toml"));
    CHECK_THAT(sheets.error().message, ContainsSubstring("line 2"));
    CHECK_THAT(sheets.error().message, ContainsSubstring("juggling"));
}
