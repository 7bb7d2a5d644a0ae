#include "catch.h"
#include "publish/paper_questions.h"
#include "publish/sheets/sheet_choice.h"

using namespace steelyard::publish;
using steelyard::problems::Scene;

namespace {

SheetChoice some_choice() {
    SheetChoice choice;
    choice.title = "Evening \"one\"";
    choice.skills = {"balance", "lever-class"};
    choice.each = 4;
    choice.difficulty = 2;
    choice.about = Scene::thing;
    choice.with_own = true;
    choice.prints_codes = true;
    return choice;
}

} // namespace

TEST_CASE("a choice kept as a blueprint is chosen anew from its file") {
    const auto bank = real_bank();
    const SheetChoice choice = some_choice();
    const auto read =
        parse_blueprint(write_blueprint(blueprint_of(choice, bank, "evening")), "evening");
    REQUIRE(read);
    CHECK(choice_of(*read, bank) == choice);
    SheetChoice mixed;
    const auto all = parse_blueprint(write_blueprint(blueprint_of(mixed, bank, "all")), "all");
    REQUIRE(all);
    CHECK(choice_of(*all, bank) == mixed);
}

TEST_CASE("topics stand in the order of the bank under their titles") {
    const auto bank = real_bank();
    const Blueprint blueprint = blueprint_of(some_choice(), bank, "evening");
    REQUIRE(blueprint.parts.size() == 2);
    CHECK(blueprint.parts[0].skill == "lever-class"); // taught before balance
    CHECK(blueprint.parts[0].heading == bank.find_skill("lever-class")->title);
    CHECK(blueprint.parts[1].count == 4);
}

TEST_CASE("a blueprint that says more than can be chosen is none of these") {
    const auto bank = real_bank();
    for (const char* text :
         {"title = \"T\"\n[[part]]\nfamily = \"balance-the-seesaw\"\n",
          "title = \"T\"\n[[part]]\nskill = \"balance\"\ncount = 2\nheading = \"Mine\"\n",
          "title = \"T\"\n[[part]]\nunits = \"US\"\n"}) {
        const auto read = parse_blueprint(text, "t");
        REQUIRE(read);
        CHECK_FALSE(choice_of(*read, bank));
    }
}
