#include "catch.h"
#include "problems/marking/marking.h"
#include "problems/question/generator.h"
#include "problems/small_bank.h"

using namespace steelyard::problems;

namespace {

/// The rope question: the arm is 50 cm, the distance 100 cm, with the cosine 86.6 cm.
struct Rope {
    SmallBank files;
    Bank bank;
    Question question;

    Rope() {
        files.write("families/rope.toml", kRopeFamily);
        bank = files.load();
        REQUIRE(bank.faults.empty());
        const auto made = question_of_family(bank, bank.families.front(), 1);
        REQUIRE(made.has_value());
        question = *made;
    }

    Marking mark(const std::string& answer) const { return problems_mark(answer); }

private:
    Marking problems_mark(const std::string& answer) const {
        return steelyard::problems::mark(bank, question, answer);
    }
};

} // namespace

TEST_CASE("the question says exactly what it was solved with") {
    const Rope rope;
    CHECK(rope.question.prompt ==
          "A rope pulls 1\u00a0m from the pin at 30° to the bar. How long is its moment arm?");
    REQUIRE(rope.question.given.size() == 2);
    CHECK(rope.question.given[0].name == "effort_distance");
    CHECK(rope.question.given[0].value == 1.0);
    CHECK(rope.question.given[1].unit == "°");
    // A sine's rounding.
    CHECK_THAT(wanted_number(rope.question)->value, WithinAbs(50.0, 1e-12));
    CHECK(rope.question.answer_text == "50\u00a0cm");
}

TEST_CASE("an answer is right in any unit, notation and sensible rounding") {
    const Rope rope;
    for (const char* answer : {"50", "50 cm", "0.5 m", "0,5 m", "500mm", "1/2 m", "5e-1 m",
                               "19.7 in", "1 ft 7.7 in", " 50.0 cm ", "0.496 m", "50.4"}) {
        INFO(answer);
        CHECK(rope.mark(answer).correct);
    }
    for (const char* answer : {"0.5", "51 cm", "49", "20 in", "-50"}) {
        INFO(answer);
        CHECK_FALSE(rope.mark(answer).correct);
    }
}

TEST_CASE("a wrong unit and a wrong dimension are told apart") {
    const Rope rope;
    CHECK(rope.mark("50 mm").verdict == Verdict::wrong_unit);
    CHECK(rope.mark("50 m").verdict == Verdict::wrong_unit);
    const Marking force = rope.mark("50 N");
    CHECK(force.verdict == Verdict::wrong_dimension);
    CHECK(force.feedback.find("force") != std::string::npos);
    CHECK(force.feedback.find("length") != std::string::npos);
    CHECK(rope.mark("fifty").verdict == Verdict::unreadable);
    CHECK(rope.mark("").verdict == Verdict::unreadable);
    CHECK(rope.mark("nan").verdict == Verdict::unreadable);
}

TEST_CASE("a wrong number is matched to the rule that gives it, in any unit") {
    const Rope rope;
    // 39.37 in typed to two figures is 0.9 % off: more than a rule may be missed by, but rounded.
    for (const char* answer : {"100", "1 m", "39.4 in", "39 in"}) {
        const Marking marking = rope.mark(answer);
        INFO(answer);
        REQUIRE(marking.wrong_rule.has_value());
        CHECK(*marking.wrong_rule == "distance-for-arm");
        CHECK(marking.feedback.find("Measure square to the line.") != std::string::npos);
        REQUIRE(marking.drawn_wrong.has_value());
        CHECK(marking.drawn_wrong->text == "1\u00a0m");
        CHECK_THAT((marking.drawn_right->to_m - marking.drawn_right->from_m).norm(),
                   WithinAbs(0.5, 1e-12));
        REQUIRE(marking.parts_at.has_value());
        CHECK(rope.question.steps[*marking.parts_at].find == "effort_arm");
    }
    CHECK(rope.mark("86.6").wrong_rule == "sine-cosine-swapped");
    CHECK_FALSE(rope.mark("70").wrong_rule.has_value());
}

TEST_CASE("each step is marked alone") {
    const Rope rope;
    REQUIRE(rope.question.steps.size() == 2);
    const Step& axis = rope.question.steps[0];
    CHECK(axis.options.at(axis.correct_option) == "the pin");
    CHECK(mark_step(rope.question, 0, "the pin").correct);
    CHECK_FALSE(mark_step(rope.question, 0, "the rope").correct);
    CHECK(mark_step(rope.question, 1, "0.5 m").correct);
    CHECK(mark_step(rope.question, 1, "30 cm").verdict == Verdict::wrong);
    CHECK(mark_step(rope.question, 7, "1").verdict == Verdict::unreadable);
}

namespace {

/// A bank whose only rules are those of the program's bank, and a question of one number.
struct Slipped {
    Bank bank = load_bank(std::string(STEELYARD_SOURCE_DIR) + "/question_bank");
    Question question;

    Slipped(double answer, const std::string& unit, std::vector<Given> given) {
        question.wanted = NumberWanted{unit, answer, answer, 0.01 * answer};
        question.given = std::move(given);
    }

    std::string rule_of(const std::string& answer) const {
        return mark(bank, question, answer).wrong_rule.value_or("none");
    }
};

Given given(const std::string& name, double value, const std::string& unit) {
    Given stated;
    stated.name = name;
    stated.value = value;
    stated.unit = unit;
    stated.value_si = unit == "cm" ? value / 100.0 : value; // SI already, or not looked at
    return stated;
}

} // namespace

// 20 kg hang 50 cm from the axis, g = 9.81 m/s²: 20 × 9.81 × 0.5 = 98.1 N·m.
TEST_CASE("a slip of a factor is named by the number that it gives") {
    const Slipped weight(98.1, "N·m",
                         {given("load_mass", 20.0, "kg"), given("load_arm", 50.0, "cm"),
                          given("gravity", 9.81, "m/s²")});
    CHECK(weight.rule_of("98.1") == "none");
    CHECK(weight.rule_of("100") == "gravity-as-ten");         // 20 × 10 × 0.5
    CHECK(weight.rule_of("10.0") == "mass-for-weight");       // 20 × 0.5
    CHECK(weight.rule_of("962") == "gravity-twice");          // 20 × 9.81 × 9.81 × 0.5 = 962.4
    CHECK(weight.rule_of("9810") == "length-not-converted");  // 20 × 9.81 × 50
    CHECK(weight.rule_of("0.981") == "length-not-converted"); // 50 cm taken as 0.005 m
    CHECK(weight.rule_of("98100") == "thousand-slip");        // kN for N
    CHECK(weight.rule_of("0.0981") == "thousand-slip");       // N for kN
    CHECK(weight.rule_of("981") == "decimal-slip");           // 20 × 9.81 × 5
    CHECK(weight.rule_of("9.81") == "decimal-slip");          // 20 × 9.81 × 0.05
    CHECK(weight.rule_of("-98.1") == "sign");                 // the other way round
    CHECK(weight.rule_of("216.3") == "pounds-for-kilograms"); // 20 kg are 44.09 lb; × 9.81 × 0.5
    CHECK(weight.rule_of("44.5") == "pounds-for-kilograms");  // 20 lb are 9.072 kg; × 9.81 × 0.5
    CHECK(weight.rule_of("96.2") == "none");                  // 9.81 / 10 is nobody's slip
    CHECK(weight.rule_of("1177") == "none");                  // nothing is in feet or inches
    // A tenth of a per cent is the limit: farther off, rounding on the way is as likely.
    CHECK(weight.rule_of("100.05") == "gravity-as-ten");
    CHECK(weight.rule_of("100.4") == "none");
}

// 20 lbf at 2 ft: 40 ft·lbf; as 2 in for 2 ft a twelfth, as 24 for 2 twelve times as much.
TEST_CASE("a slip is named only where it can happen") {
    const Slipped feet(40.0, "ft·lbf",
                       {given("load_force", 20.0, "lbf"), given("load_arm", 2.0, "ft")});
    CHECK(feet.rule_of("480") == "inches-for-feet");
    CHECK(feet.rule_of("3.333") == "inches-for-feet");
    // No mass and no g: 40 × 10 / 9.81, 40 × 9.81 and 40 × 2.2046 are only wrong.
    CHECK(feet.rule_of("40.77") == "none");
    CHECK(feet.rule_of("392.4") == "none");
    CHECK(feet.rule_of("88.18") == "none");
}

// A rope at 30° to the bar, 1 m from the axis, 100 N: 50 N·m; the sine of 30 radians is −0.988.
TEST_CASE("a calculator that stood on radians is found out by the angle that is given") {
    Given angle = given("effort_angle", 30.0, "°");
    angle.value_si = 30.0 * 3.14159265358979323846 / 180.0;
    const Slipped rope(50.0, "N·m", {given("effort_force", 100.0, "N"), angle});
    CHECK(rope.rule_of("98.8") == "angle-in-radians");
    CHECK(rope.rule_of("8.906") == "angle-in-radians"); // the cosine: 50 × 0.15425 / 0.86603
    CHECK(rope.rule_of("97") == "none");
}
