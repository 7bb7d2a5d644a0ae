#include "catch.h"
#include "problems/generator.h"
#include "problems/marking.h"
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
    CHECK_THAT(rope.question.answer, WithinAbs(50.0, 1e-12));
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
    for (const char* answer : {"100", "1 m", "39.4 in"}) {
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
