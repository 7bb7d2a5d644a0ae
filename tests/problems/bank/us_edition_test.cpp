// The US editions of the families: what people read is in pounds and inches, on round numbers, and
// agrees with what is solved.

#include "catch.h"
#include "problems/bank/bank_check.h"
#include "problems/bank/us_edition.h"
#include "problems/draw/instance.h"
#include "problems/marking/marking.h"
#include "problems/question/generator.h"
#include "problems/question/question_code.h"
#include "problems/question/question_writer.h"

#include <algorithm>
#include <cmath>
#include <regex>

using namespace steelyard;
using namespace steelyard::problems;

namespace {

const Bank& shipped() {
    static const Bank bank = load_bank(std::string(STEELYARD_SOURCE_DIR) + "/question_bank");
    return bank;
}

/// All that a learner reads of a question.
std::vector<std::string> read_of(const Question& question) {
    std::vector<std::string> texts{question.prompt, question.answer_text, question.reason};
    for (const Given& given : question.given)
        texts.push_back(given.text);
    for (const Step& step : question.steps)
        for (const std::string& text : {step.says, step.formula, step.result})
            texts.push_back(text);
    for (const Choice& choice : choices_of(question))
        for (const std::string& text : {choice.text, choice.reason})
            texts.push_back(text);
    for (const WrongAnswer& wrong : question.wrong_rules)
        texts.push_back(wrong.feedback);
    return texts;
}

/// A number with an SI unit, or such a unit written out.
bool names_si(const std::string& text) {
    static const std::regex si(
        "[0-9](\xC2\xA0| )(kg|N|kN|cm|mm|m|N\xC2\xB7m|J|N/m|m/s)([^A-Za-z0-9\xC2/]|$)|newton|"
        "kilogram|metre");
    return std::regex_search(text, si);
}

std::string converted(const std::string& draw, const std::string& others = "") {
    const auto document =
        setup::parse_toml("id = \"a\"\n[draw]\nx = \"" + draw + "\"\n" + others, "a.toml");
    REQUIRE(document);
    const setup::TomlDocument us = us_edition(*document);
    for (const setup::TomlNode& entry : std::get<setup::TomlTable>(us.root.value).entries)
        if (entry.key == "draw")
            return std::get<std::string>(
                std::get<setup::TomlTable>(entry.value).entries.front().value);
    return {};
}

} // namespace

TEST_CASE("draws get the grid that people count in") {
    CHECK(converted("10..60 kg step 5") == "30..130 lb step 10");
    CHECK(converted("2..12 kg step 1") == "5..25 lb step 2.5");
    CHECK(converted("0.2..0.6 m step 0.05") == "8..22 in step 2");
    CHECK(converted("30..36 cm step 1") == "12..14 in step 0.5");
    CHECK(converted("0.6, 0.9, 1.2, 1.5 m") == "24, 36, 48, 60 in");
    CHECK(converted("30 cm") == "12 in");
    CHECK(converted("40..200 N step 10") == "10..42.5 lbf step 2.5");
    // Long levers are measured in feet.
    CHECK(converted("2..4 m step 0.5") == "8..12 ft step 2");
    // What has no unit of ours stays.
    CHECK(converted("2..12 step 1") == "2..12 step 1");
    CHECK(converted("30, 40 °") == "30, 40 °");
}

TEST_CASE("every family that is written in SI has a sound US edition") {
    CHECK(shipped().us_editions.size() > 120);
    for (const Family& family : shipped().us_editions) {
        const FamilyCheck check = check_family(shipped(), family, 40);
        for (const std::string& fault : check.faults)
            FAIL_CHECK(family.id << ": " << fault);
        CHECK(check.accepted == (family.items.empty() ? 40 : family.items.size()));
    }
}

TEST_CASE(
    "a question of a US edition names no SI unit and states numbers of three figures at most") {
    std::size_t numbers = 0;
    for (const Family& family : shipped().us_editions)
        for (std::uint64_t seed = 1; seed <= 12 && family.items.empty(); ++seed) {
            const auto question = question_of_family(shipped(), family, seed);
            REQUIRE(question);
            INFO(family.id << " " << question->code << ": " << question->prompt);
            for (const std::string& text : read_of(*question)) {
                INFO(text);
                CHECK_FALSE(names_si(text));
            }
            for (const Given& given : question->given) {
                if (given.unit != "lb" && given.unit != "in" && given.unit != "lbf" &&
                    given.unit != "ft")
                    continue;
                INFO(given.name << " = " << given.text);
                // A hundredth of a unit is the finest grid.
                CHECK(std::abs(given.value * 1000.0 - std::round(given.value * 1000.0)) < 1.0e-6);
                ++numbers;
            }
        }
    CHECK(numbers > 1000);
}

TEST_CASE("a pound of mass weighs a pound of force, and the working says so") {
    const Family* const family = shipped().find_family("torque-of-a-dumbbell");
    REQUIRE(family);
    const Family& us = shipped().in_units(*family, setup::UnitSystem::us);
    REQUIRE(us.is_us_edition);
    const auto question = question_of_family(shipped(), us, 3);
    REQUIRE(question);
    CHECK(question->prompt.find("A mass of 1\u00a0lb weighs 1\u00a0lbf.") != std::string::npos);
    double mass_lb = 0.0;
    double arm_in = 0.0;
    for (const Given& given : question->given) {
        mass_lb = given.name == "load_mass" ? given.value : mass_lb;
        arm_in = given.name == "load_arm" ? given.value : arm_in;
    }
    // By hand: pounds times inches.
    CHECK(wanted_number(*question)->unit == "in·lbf");
    CHECK(wanted_number(*question)->value == Approx(mass_lb * arm_in));
}

TEST_CASE("a torque given for a force is the number that stands there in inch-pounds") {
    const Family* const family = shipped().find_family("effort-of-a-shovel");
    const auto question =
        question_of_family(shipped(), shipped().in_units(*family, setup::UnitSystem::us), 11);
    REQUIRE(question);
    double torque = 0.0;
    for (const Step& step : question->steps)
        torque = step.find == "load_torque" ? step.value : torque;
    REQUIRE(torque > 0.0);
    const auto rule =
        std::find_if(question->wrong_rules.begin(), question->wrong_rules.end(),
                     [](const WrongAnswer& wrong) { return wrong.rule == "torque-for-force"; });
    REQUIRE(rule != question->wrong_rules.end());
    CHECK(rule->value == Approx(torque));
}

TEST_CASE("a code says in which units its question was made") {
    const Family* const family = shipped().find_family("effort-of-a-shovel");
    REQUIRE(family);
    const auto si = question_of_family(shipped(), *family, 11);
    const auto us =
        question_of_family(shipped(), shipped().in_units(*family, setup::UnitSystem::us), 11);
    REQUIRE(si);
    REQUIRE(us);
    CHECK(si->code != us->code);
    CHECK_FALSE(read_code(si->code)->us_edition);
    CHECK(read_code(us->code)->us_edition);
    CHECK(question_from_code(shipped(), si->code)->prompt == si->prompt);
    CHECK(question_from_code(shipped(), us->code)->prompt == us->prompt);
    CHECK(us->prompt.find("lb") != std::string::npos);
}

TEST_CASE("a paper in US units has every family of the bank in its edition") {
    PaperPlan plan;
    plan.count = 60;
    plan.seed = 5;
    plan.units = setup::UnitSystem::us;
    const auto paper = make_paper(shipped(), plan);
    REQUIRE(paper);
    for (const Question& question : *paper) {
        const Family* const family = shipped().find_family(question.family);
        CHECK((family->system != "SI" || !family->items.empty() ||
               read_code(question.code)->us_edition));
    }
    plan.units = setup::UnitSystem::si;
    const auto si_paper = make_paper(shipped(), plan);
    REQUIRE(si_paper);
    for (const Question& question : *si_paper)
        CHECK(shipped().find_family(question.family)->system != "US");
}

TEST_CASE("pounds are taken for a force and explained") {
    const Family* const family = shipped().find_family("effort-of-a-shovel");
    const auto question =
        question_of_family(shipped(), shipped().in_units(*family, setup::UnitSystem::us), 11);
    REQUIRE(question);
    REQUIRE(wanted_number(*question)->unit == "lbf");
    const std::string number =
        question->answer_text.substr(0, question->answer_text.find("\u00a0"));
    const Marking pounds = mark(shipped(), *question, number + " lb");
    CHECK(pounds.correct);
    CHECK(pounds.took_pounds);
    CHECK(pounds.feedback.find("a pound of mass weighs one pound of force") != std::string::npos);
    const Marking again = mark(shipped(), *question, number + " lb", {true, false});
    CHECK(again.correct);
    CHECK(again.feedback.find("weighs") == std::string::npos);
    CHECK_FALSE(mark(shipped(), *question, number + " lbf").took_pounds);
    CHECK(mark(shipped(), *question, number + " kg").verdict == Verdict::wrong_dimension);
}

TEST_CASE("a written question whose numbers hold in other units has its units changed") {
    const Family* const family = shipped().find_family("sums-of-torques");
    REQUIRE(family);
    const Family& us = shipped().in_units(*family, setup::UnitSystem::us);
    REQUIRE(us.is_us_edition);
    const auto item_of = [](const Family& in, const char* id) {
        return *std::find_if(in.items.begin(), in.items.end(),
                             [&](const Item& item) { return item.id == id; });
    };
    CHECK(item_of(us, "heavier-is-more").prompt ==
          "5 lb hang 60 in from the axis, 10 lb hang 20 in from it. Which has the larger torque?");
    // One that says what is different there, in round numbers of its own.
    CHECK(item_of(us, "no-axis-named").prompt ==
          "A dumbbell of 10 lb lies on the floor. What is its torque?");
    CHECK(item_of(us, "no-axis-named").choices.front().text ==
          item_of(*family, "no-axis-named").choices.front().text);
}

TEST_CASE("only what is written in SI has a US edition") {
    const auto document = setup::parse_toml("system = \"US\"", "a.toml");
    REQUIRE(document);
    CHECK_FALSE(has_us_edition(*document));
    CHECK(has_us_edition(*setup::parse_toml("system = \"SI\"", "a.toml")));
    CHECK(has_us_edition(*setup::parse_toml("id = \"a\"", "a.toml")));
    CHECK_FALSE(has_us_edition(*setup::parse_toml("system = \"SI only\"", "a.toml")));
}
