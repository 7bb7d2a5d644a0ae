// What is said to a wrong number that no rule gives, and how seldom a rule is named that was not
// followed.

#include "catch.h"
#include "problems/bank/bank.h"
#include "problems/language/number_text.h"
#include "problems/marking/marking.h"
#include "problems/marking/remarks.h"
#include "problems/question/generator.h"

#include <cmath>
#include <random>

using namespace steelyard::problems;

namespace {

const Bank& our_bank() {
    static const Bank bank = load_bank(std::string(STEELYARD_SOURCE_DIR) + "/question_bank");
    return bank;
}

Question question_of(const char* family, std::uint64_t seed = 3) {
    return *question_of_family(our_bank(), *our_bank().find_family(family), seed);
}

std::string number(double value) {
    return number_text(value, 6);
}

/// A question of one number, with nothing to blame.
Question wanting(double value, const std::string& unit) {
    Question question;
    question.wanted = NumberWanted{unit, value, value, 0.01 * value};
    question.answer_text = with_unit(number_text(value, 3), unit);
    question.asked_text = "the answer";
    return question;
}

Marking marked(const Question& question, const std::string& answer, MarkRules rules = {}) {
    return mark(our_bank(), question, answer, rules);
}

} // namespace

TEST_CASE("a number that a step on the way ends in is told so, without the answer") {
    const Question question = question_of("effort-on-a-plank");
    const auto step =
        std::find_if(question.steps.begin(), question.steps.end(), [](const Step& one) {
            return one.find == "load_force" || one.find == "load_torque";
        });
    REQUIRE(step != question.steps.end());
    Question unruled = question;
    unruled.wrong_rules.clear();
    const Marking marking = marked(unruled, number(step->value));
    CHECK_FALSE(marking.wrong_rule.has_value());
    CHECK_THAT(marking.remark, ContainsSubstring("Go on from there"));
    CHECK_THAT(marking.remark, ContainsSubstring(step->says));
    CHECK(marking.remark.find(question.answer_text) == std::string::npos);
    CHECK_THAT(marking.feedback, ContainsSubstring(question.answer_text));
}

TEST_CASE("a given number, a sign, a near miss and a far one are told apart") {
    Question question = wanting(40.0, "N·m");
    Given load;
    load.value = 12.5;
    load.text = "12.5 kg";
    question.given = {load};
    CHECK_THAT(marked(question, "12.5").remark,
               ContainsSubstring("12.5 kg stands in the question"));
    CHECK_THAT(marked(question, "-63").remark, ContainsSubstring("minus sign"));
    CHECK_THAT(marked(question, "41.3").remark, ContainsSubstring("rounding"));
    CHECK_THAT(marked(question, "63").remark, ContainsSubstring("too large"));
    CHECK_THAT(marked(question, "23").remark, ContainsSubstring("too small"));
    CHECK_THAT(marked(question, "70000").remark, ContainsSubstring("units"));
    CHECK(marked(question, "-40").wrong_rule == "sign");
}

TEST_CASE("a number with few figures is right, and so is one with zeros for figures") {
    const Question question = wanting(186.6, "N");
    for (const char* answer : {"190", "187", "186.6", "1.9e2", "0.19 kN"}) {
        INFO(answer);
        CHECK(marked(question, answer).correct);
    }
    CHECK_THAT(marked(question, "190").feedback, ContainsSubstring("fewer figures"));
    CHECK_FALSE(marked(question, "200").correct); // one figure says too little
    CHECK_FALSE(marked(question, "190.0").correct);
}

TEST_CASE("rounding is not blamed on g") {
    // 20 kg at 0.97 m: 20 × 9.81 × 0.97 = 190.3 N·m; with g as 10 it would be 194.
    Question question = wanting(190.314, "N·m");
    Given gravity;
    gravity.name = "gravity";
    gravity.value_si = 9.81;
    gravity.value = 9.81;
    question.given = {gravity};
    CHECK(marked(question, "194").wrong_rule == "gravity-as-ten");
    for (const char* answer : {"193", "195", "196", "193.5", "187", "200"}) {
        INFO(answer);
        CHECK_FALSE(marked(question, answer).wrong_rule.has_value());
    }
    CHECK_THAT(marked(question, "195").remark, ContainsSubstring("rounding"));
}

TEST_CASE("a share is read where a percentage is asked") {
    const Question question = wanting(92.7, "%");
    for (const char* answer : {"0.927", "92.7", "92.7 %", "0.927 ", "92.7%", ",927"}) {
        INFO(answer);
        CHECK(marked(question, answer).correct);
    }
    CHECK_FALSE(marked(question, "0.927 %").correct);
    CHECK_FALSE(marked(question, "0.073").correct);
}

TEST_CASE("what people write around a number is read, and calculations in its place") {
    for (const char* answer : {"= 187 N", "~187", "187N", "F = 187", "≈187 N", "180+7 N", "374/2",
                               "374 sin 30", "374 sin 30 N", "0.187*1 kN"}) {
        INFO(answer);
        CHECK(marked(wanting(187.0, "N"), answer).correct);
    }
    CHECK(marked(wanting(1255.0, "N"), "1'255").correct);
    CHECK(marked(wanting(0.12, ""), "4.5/37.5").correct);
    CHECK(marked(wanting(88.0, "N·m"), "70*0.4+50*1.2").correct);
    CHECK(marked(wanting(88.0, "N·m"), "70*0.4+50*1.2 N").verdict == Verdict::wrong_dimension);
    CHECK(marked(wanting(187.0, "N"), "187/0").verdict == Verdict::unreadable);
    CHECK(marked(wanting(187.0, "N"), "(187").verdict == Verdict::unreadable);
}

TEST_CASE("calculations can be kept out of an exam, where numbers are still read") {
    const Question question = wanting(187.0, "N");
    CHECK(marked(question, "374/2", {false}).correct); // a fraction is a number
    CHECK(marked(question, "180+7", {false}).verdict == Verdict::unreadable);
    CHECK(marked(question, "374 sin 30", {false}).verdict == Verdict::unreadable);
    CHECK(marked(question, "= 187 N", {false}).correct);
}

TEST_CASE("of 300 random wrong numbers, a rule is named for fewer than one in a hundred") {
    std::mt19937 random(300);
    // Even in size from a hundredth of the answer to a hundred times it: nobody knows where the
    // numbers of people who guess lie.
    const auto factor = [&random] {
        const double share = static_cast<double>(random()) / 4294967296.0;
        return std::pow(10.0, 4.0 * share - 2.0);
    };
    double worst = 0.0;
    int blamed = 0;
    int all = 0;
    for (const Family& family : our_bank().families) {
        if (family.kind != Kind::numeric)
            continue;
        const auto question = question_of_family(our_bank(), family, 11);
        REQUIRE(question.has_value());
        int here = 0;
        for (int i = 0; i < 300; ++i) {
            const double wrong = wanted_number(*question)->value * factor();
            const Marking marking = marked(*question, number_text(wrong, 4));
            here += marking.wrong_rule.has_value() ? 1 : 0;
            all += marking.correct ? 0 : 1;
        }
        blamed += here;
        worst = std::max(worst, here / 300.0);
    }
    INFO(blamed << " of " << all << ", in the worst family " << worst);
    CHECK(blamed < 0.01 * all);
    CHECK(worst < 0.03);
}
