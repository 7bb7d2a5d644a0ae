#include "catch.h"
#include "problems/bank/bank.h"
#include "problems/bank/bank_check.h"
#include "problems/question/generator.h"
#include "problems/small_bank.h"

using namespace steelyard::problems;

namespace {

/// The one fault of a bank whose rope family has a slip.
steelyard::setup::InputError fault_with(const std::string& from, const std::string& to) {
    const SmallBank files;
    files.write("families/rope.toml", replaced(kRopeFamily, from, to));
    const Bank bank = files.load();
    INFO(to);
    CHECK(bank.families.empty());
    REQUIRE_FALSE(bank.faults.empty());
    INFO(to_text(bank.faults.front()));
    CHECK(bank.faults.front().file.find("rope.toml") != std::string::npos);
    return bank.faults.front();
}

} // namespace

TEST_CASE("the bank that comes with the program has no fault") {
    const Bank bank = load_bank(std::string(STEELYARD_SOURCE_DIR) + "/question_bank");
    for (const auto& fault : bank.faults)
        UNSCOPED_INFO(to_text(fault));
    CHECK(bank.faults.empty());
    for (const Family& family : bank.families) {
        const FamilyCheck check = check_family(bank, family, 200);
        INFO(family.id);
        for (const std::string& fault : check.faults)
            UNSCOPED_INFO(fault);
        CHECK(check.faults.empty());
        CHECK(check.accepted >= (family.items.empty() ? 200U : 1U));
    }
}

TEST_CASE("a skill stands on the step above the highest that it needs") {
    const Bank bank = load_bank(std::string(STEELYARD_SOURCE_DIR) + "/question_bank");
    REQUIRE(bank.find_skill("name-the-parts"));
    CHECK(bank.find_skill("name-the-parts")->level == 1);
    for (const Skill& skill : bank.skills)
        for (const std::string& need : skill.needs)
            CHECK(bank.find_skill(need)->level < skill.level);
}

TEST_CASE("a number that is none is a fault of the file, not a crash") {
    // Found by bank_fuzz.
    for (const char* none : {"nan", "inf", "-inf"}) {
        const auto fault = fault_with("\"effort_distance * cos(effort_angle)\"", none);
        CHECK(fault.key == "wrong.sine-cosine-swapped");
        CHECK(fault.expected.find("or a number") != std::string::npos);
    }
}

TEST_CASE("a drawn number with the name of the class is shown as the number that it is") {
    const SmallBank files;
    files.write("families/odd.toml", R"toml(id = "odd"
title = "Odd"
skill = "arms"
strategy = "double"
kind = "numeric"
prompt = "Question {lever_class}: what is twice {load_force}?"
draw = { lever_class = "7", load_force = "20 N" }
let = { effort_force = { is = "2 * load_force" } }
ask = { find = "effort_force" }

[[step]]
find = "effort_force"
by = "2 * load_force"
says = "Double it."
)toml");
    const Bank bank = files.load();
    REQUIRE(bank.families.size() == 1);
    const auto question = question_of_family(bank, bank.families.front(), 1);
    REQUIRE(question.has_value());
    CHECK(question->prompt == "Question 7: what is twice 20\u00a0N?");
}

TEST_CASE("a slip in a family names file, line, key and the mend") {
    const auto misspelt =
        fault_with("by = \"effort_distance * sin", "by = \"effort_distence * sin");
    CHECK(misspelt.line == 20);
    CHECK(misspelt.key == "step[1].by");
    CHECK(misspelt.mend.find("Did you mean \"effort_distance\"?") != std::string::npos);

    const auto skill = fault_with("skill = \"arms\"", "skill = \"arm\"");
    CHECK(skill.key == "skill");
    CHECK(skill.mend == "Did you mean \"arms\"?");

    const auto rule = fault_with("distance-for-arm =", "distance-for-arms =");
    CHECK(rule.mend == "Did you mean \"distance-for-arm\"?");

    CHECK(fault_with("\"30 °\"", "\"30 kg\"").key == "draw.effort_angle");
    CHECK(fault_with("\"1 m\"", "\"1..2 m\"").mend.find("a range needs its step") == 0);
    CHECK(fault_with("\"1 m\"", "\"1..2 m step 0.3\"").mend.find("end on a step") !=
          std::string::npos);
    CHECK(fault_with("kind = \"numeric\"", "kind = \"number\"").key == "kind");
    CHECK(fault_with("{effort_angle} to", "{effort_angel} to").mend ==
          "Did you mean \"{effort_angle}\"?");
    CHECK(fault_with("find = \"effort_arm\", unit", "find = \"effort_distance\", unit").key ==
          "step");
    CHECK(fault_with("[wrong]", "colour = \"red\"\n[wrong]").key == "step[1].colour");
}

TEST_CASE("a broken family does not stop the rest of the bank") {
    const SmallBank files;
    files.write("families/a.toml", "id = ");
    files.write("families/b.toml", kRopeFamily);
    files.write("families/c.toml", std::string("\0\x01\x02", 3));
    const Bank bank = files.load();
    CHECK(bank.faults.size() == 2);
    REQUIRE(bank.families.size() == 1);
    CHECK(bank.find_family("rope"));
}

TEST_CASE("a bank without files is all faults and no crash") {
    const Bank bank = load_bank("no/such/folder");
    CHECK(bank.families.empty());
    CHECK(bank.faults.size() == 2);
}

TEST_CASE("a family without a valid instance is found") {
    const SmallBank files;
    files.write("families/rope.toml",
                replaced(kRopeFamily, "labels", "where = [\"effort_arm > 2 m\"]\nlabels"));
    const Bank bank = files.load();
    REQUIRE(bank.families.size() == 1);
    const FamilyCheck check = check_family(bank, bank.families.front());
    REQUIRE(check.faults.size() == 1);
    CHECK(check.faults.front().find("no valid instance") == 0);
}

TEST_CASE("a step that does not give the solver's number is found") {
    const SmallBank files;
    files.write("families/rope.toml", replaced(kRopeFamily, "distance * sin", "distance * cos"));
    const Bank bank = files.load();
    REQUIRE(bank.families.size() == 1);
    const FamilyCheck check = check_family(bank, bank.families.front(), 1);
    REQUIRE(check.faults.size() == 1);
    CHECK(check.faults.front().find(
              "the step for \"effort_arm\" gives 0.866025, the solver 0.5 (") == 0);
}

TEST_CASE("a stated number that the drawing contradicts is found") {
    const SmallBank files;
    // Says the rope is tied at the end, but draws it half way.
    files.write("families/rope.toml",
                replaced(kRopeFamily, "at = \"effort_distance\"", "at = \"effort_distance / 2\""));
    const Bank bank = files.load();
    REQUIRE(bank.families.size() == 1);
    const FamilyCheck check = check_family(bank, bank.families.front(), 1);
    CHECK_FALSE(check.faults.empty());
}

TEST_CASE("what has no finite value is found: a step, a condition, the number of a rule") {
    const auto faults_with = [](const std::string& from, const std::string& to) {
        const SmallBank files;
        files.write("families/rope.toml", replaced(kRopeFamily, from, to));
        const Bank bank = files.load();
        REQUIRE(bank.families.size() == 1);
        std::string faults;
        for (const std::string& fault : check_family(bank, bank.families.front(), 20).faults)
            faults += fault + "\n";
        return faults;
    };
    CHECK_THAT(faults_with("by = \"effort_distance * sin(effort_angle)\"", "by = \"1 / 0\""),
               ContainsSubstring("the step for \"effort_arm\" has no finite value"));
    CHECK_THAT(faults_with("[wrong]", "[[harder]]\nwhen = \"1 / 0\"\nwhy = \"none\"\n\n[wrong]"),
               ContainsSubstring("\"when\" of a [[harder]] has no finite value"));
    CHECK_THAT(faults_with("distance-for-arm = \"effort_distance\"",
                           "distance-for-arm = { gives = \"effort_distance\", when = \"0 / 0\" }"),
               ContainsSubstring("\"when\" of the rule \"distance-for-arm\" has no finite value"));
    CHECK_THAT(
        faults_with("distance-for-arm = \"effort_distance\"", "distance-for-arm = \"1 / 0\""),
        ContainsSubstring("the rule \"distance-for-arm\" has no finite value"));
}
