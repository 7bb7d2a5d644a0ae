#include "learner/shipped_course.h"
#include "learner/study/asking.h"
#include "problems/marking/placing.h"
#include "problems/question/generator.h"

#include <fmt/format.h>

#include <algorithm>

using namespace steelyard;
using namespace steelyard::learner;

namespace {

const problems::Bank& bank() {
    return *shipped_course().bank;
}

problems::Question question_of(const char* family, std::uint64_t seed = 1) {
    return *problems::question_of_family(bank(), *bank().find_family(family), seed);
}

/// A typed question with four steps, of which the first, the axis, is chosen.
Asking plank(const AskRules& rules = {}) {
    Asking asking = begin_asking(question_of("effort-on-a-plank"), rules);
    REQUIRE(asking.question.steps.size() == 4);
    return asking;
}

std::string number(double value) {
    return std::to_string(value);
}

const problems::WrongAnswer& swapped_arms(const Asking& asking) {
    const auto& wrong = asking.question.wrong_rules;
    return *std::find_if(wrong.begin(), wrong.end(),
                         [](const auto& one) { return one.rule == "arms-swapped"; });
}

/// A number that neither a rule nor a slip gives.
std::string strange_number(const Asking& asking) {
    return number(3.7 * wanted_number(asking.question)->value);
}

AskRules by_steps(std::size_t done_steps = 0) {
    AskRules rules;
    rules.by_steps = true;
    rules.done_steps = done_steps;
    return rules;
}

std::string right_step(const Asking& asking) {
    const problems::Step& step = asking.question.steps[asking.open_steps];
    return step.options.empty() ? number(step.value) : step.options[step.correct_option];
}

} // namespace

TEST_CASE("a wrong number may be tried once more, after a hint that keeps the answer back") {
    Asking asking = plank();
    mark_answer(bank(), asking, number(swapped_arms(asking).value));
    CHECK_FALSE(asking.finished);
    REQUIRE(asking.told);
    CHECK_FALSE(asking.told->correct);
    CHECK_THAT(asking.told->feedback,
               ContainsSubstring(bank().find_wrong_rule("arms-swapped")->ask));
    CHECK(asking.told->feedback.find(asking.question.answer_text) == std::string::npos);
    for (const problems::Step& step : asking.question.steps)
        CHECK(asking.told->feedback.find(step.result) == std::string::npos);
    CHECK_FALSE(asking.told->drawn_right);
    CHECK(asking.told->follow_up.empty());
    mark_answer(bank(), asking, asking.question.answer_text);
    CHECK(asking.finished);
    CHECK(asking.told->correct);
    REQUIRE(asking.attempts.size() == 2);
    // What was made of the first answer is kept whole, though not all of it was said.
    CHECK(asking.attempts[0].marking.wrong_rule == "arms-swapped");
    CHECK_FALSE(right_at_first(asking));
}

TEST_CASE("the second wrong number is the last, and then the whole feedback is given") {
    Asking asking = plank();
    const std::string wrong = number(swapped_arms(asking).value);
    mark_answer(bank(), asking, wrong);
    mark_answer(bank(), asking, wrong);
    CHECK(asking.finished);
    CHECK(asking.told->feedback == problems::mark(bank(), asking.question, wrong).feedback);
    mark_answer(bank(), asking, asking.question.answer_text);
    CHECK(asking.attempts.size() == 2);
}

TEST_CASE("no hint before a second try of any family gives the answer away") {
    int tried = 0;
    for (const problems::Family& family : bank().families) {
        if (family.kind != problems::Kind::numeric)
            continue;
        const auto question = problems::question_of_family(bank(), family, 5);
        REQUIRE(question);
        for (const problems::WrongAnswer& wrong : question->wrong_rules) {
            Asking asking = begin_asking(*question, {});
            mark_answer(bank(), asking, fmt::format("{:.6g}", wrong.value));
            if (asking.finished)
                continue; // within the answer's own tolerance
            ++tried;
            INFO(family.id << ": " << wrong.rule << ": " << asking.told->feedback);
            CHECK(asking.told->feedback.find(asking.question.answer_text) == std::string::npos);
            CHECK_FALSE(asking.told->feedback.empty());
        }
    }
    CHECK(tried > 100);
}

TEST_CASE("a number that no mistake gives is answered by the step to look at, which counts") {
    Asking asking = plank();
    mark_answer(bank(), asking, strange_number(asking));
    CHECK_FALSE(asking.finished);
    CHECK(asking.attempts[0].help == 0.0);
    CHECK(halves_shown(asking) == 1);
    CHECK_THAT(asking.told->feedback, ContainsSubstring("step 1"));
    mark_answer(bank(), asking, strange_number(asking));
    CHECK(asking.attempts[1].help == Approx(0.5 / 4.0));
}

TEST_CASE("a slip of unit may be mended once with help, and ends the question without") {
    for (const bool help : {true, false}) {
        AskRules rules;
        rules.help = help;
        Asking asking = plank(rules);
        mark_answer(bank(), asking, number(wanted_number(asking.question)->value) + " kg");
        REQUIRE(asking.attempts.size() == 1);
        CHECK_FALSE(asking.attempts[0].marking.correct);
        CHECK(asking.finished == !help);
        CHECK(asking.told->feedback == asking.attempts[0].marking.feedback);
        CHECK(halves_shown(asking) == (help ? 0U : 8U));
    }
}

TEST_CASE("what is drawn by hand may be drawn once more, after a hint that keeps the place back") {
    for (const char* family : {"place-the-axis", "place-the-arm", "place-the-line-of-a-rope",
                               "place-the-counterweight"}) {
        INFO(family);
        Asking asking = begin_asking(question_of(family), {});
        const std::string wrong =
            problems::placed_text(asking.question, {{0.011, 0.3}, {0.013, -0.2}});
        mark_answer(bank(), asking, wrong);
        CHECK_FALSE(asking.finished);
        CHECK_THAT(asking.told->feedback, ContainsSubstring("Try once more."));
        const auto& place = *problems::wanted_place(asking.question);
        CHECK(asking.told->feedback.find(place.spots[place.correct].reason) == std::string::npos);
        mark_answer(bank(), asking, wrong);
        CHECK(asking.finished);
        CHECK_FALSE(right_at_first(asking));
    }
}

TEST_CASE("where calculations are not allowed, one cannot be read and costs no try") {
    AskRules rules;
    rules.calculator = false;
    Asking asking = plank(rules);
    mark_answer(bank(), asking, "12+30");
    CHECK(asking.told->verdict == problems::Verdict::unreadable);
    CHECK(asking.attempts.empty());
    Asking allowed = plank();
    mark_answer(bank(), allowed, "12+30");
    CHECK(allowed.attempts.size() == 1);
}

TEST_CASE("what is chosen, ordered or placed by a letter has one try") {
    for (const char* family : {"class-on-the-bench", "rank-by-torque", "place-the-axis"}) {
        INFO(family);
        Asking asking = begin_asking(question_of(family), {});
        // Of all answers that can be read, one that is wrong.
        for (const char* typed : {"a", "b", "a b c d", "b a c d", "a b c", "b a c", "A", "B"}) {
            const auto marking = problems::mark(bank(), asking.question, typed);
            if (marking.correct || marking.verdict == problems::Verdict::unreadable)
                continue;
            mark_answer(bank(), asking, typed);
            break;
        }
        REQUIRE(asking.attempts.size() == 1);
        CHECK(asking.finished);
        CHECK_FALSE(asking.told->correct);
    }
}

TEST_CASE("without help there is one try and no hint") {
    AskRules rules;
    rules.help = false;
    Asking asking = plank(rules);
    CHECK_FALSE(has_hint(asking));
    give_hint(asking);
    CHECK(asking.hints == 0);
    mark_answer(bank(), asking, strange_number(asking));
    CHECK(asking.finished);
}

TEST_CASE("what cannot be read is no attempt, and is forgotten when the answer changes") {
    Asking asking = plank();
    mark_answer(bank(), asking, "a lot");
    REQUIRE(asking.told);
    CHECK(asking.told->verdict == problems::Verdict::unreadable);
    CHECK(asking.attempts.empty());
    CHECK_FALSE(asking.finished);
    change_answer(asking);
    CHECK_FALSE(asking.told);
    mark_answer(bank(), asking, strange_number(asking));
    change_answer(asking); // the hint stays while the second answer is typed
    CHECK(asking.told);
}

TEST_CASE("hints tell of each step what to do, then how it comes out") {
    Asking asking = begin_asking(question_of("place-the-axis"), {});
    asking.question.steps.resize(2);
    for (std::size_t half = 1; half <= 4; ++half) {
        give_hint(asking);
        CHECK(halves_shown(asking) == half);
        CHECK(help_of(asking) == Approx(static_cast<double>(half) / 4.0));
    }
    CHECK_FALSE(has_hint(asking));
    CHECK(asking.hints == 4);
}

// Four steps, each a quarter of the solution, half of it for what to do and half for how it comes
// out. By hand:
TEST_CASE("the share of help is what stood there before the answer") {
    CHECK(help_of(plank()) == 0.0);
    SECTION("steps that are done by the rules count whole") {
        AskRules rules;
        rules.done_steps = 3; // the last one is the learner's: 3/4
        CHECK(help_of(plank(rules)) == Approx(0.75));
        rules.done_steps = 2; // and of the third it is asked, so told, what to do: (2 + 1/2)/4
        CHECK(help_of(plank(rules)) == Approx(0.625));
    }
    SECTION("a hint counts half a step; asking for the next step by itself tells its way") {
        Asking asking = plank();
        give_hint(asking);
        CHECK(help_of(asking) == Approx(0.125)); // 1/2 of 4
        give_hint(asking);
        CHECK(help_of(asking) == Approx(0.375)); // 1 + 1/2 of 4
    }
    SECTION("a step found by oneself counts half, one that had to be told counts whole") {
        Asking asking = plank(by_steps());
        CHECK(help_of(asking) == Approx(0.125));
        mark_own_step(asking, right_step(asking)); // 1/2, and 1/2 of the next
        CHECK(help_of(asking) == Approx(0.25));
        mark_own_step(asking, number(7.3 * asking.question.steps[1].value)); // 1/2 + 1 + 1/2
        CHECK(help_of(asking) == Approx(0.5));
        mark_answer(bank(), asking, asking.question.answer_text);
        CHECK(asking.attempts[0].help == Approx(0.5));
        CHECK(asking.attempts[0].hints == 0);
    }
    SECTION("everything shown is everything") {
        Asking asking = plank();
        while (has_hint(asking))
            give_hint(asking);
        CHECK(help_of(asking) == 1.0);
    }
    SECTION("where there is no worked solution there is no share of it") {
        Asking asking = begin_asking(question_of("class-on-the-bench"), {});
        asking.question.steps.clear();
        CHECK(help_of(asking) == 0.0);
    }
}

TEST_CASE("a step is asked for once steps are under way, in typed questions, and never the last") {
    Asking asking = plank();
    CHECK_FALSE(has_own_step(asking));
    CHECK(can_go_by_steps(asking));
    go_by_steps(asking);
    for (std::size_t i = 0; i + 1 < asking.question.steps.size(); ++i) {
        REQUIRE(has_own_step(asking));
        mark_own_step(asking, right_step(asking));
        CHECK(asking.step_told->correct);
        CHECK(asking.open_steps == i + 1);
    }
    CHECK_FALSE(has_own_step(asking));
    CHECK_FALSE(asking.finished);
    Asking chosen = begin_asking(question_of("class-on-the-bench"), by_steps());
    CHECK_FALSE(has_own_step(chosen));
    AskRules no_help = by_steps();
    no_help.help = false;
    CHECK_FALSE(has_own_step(plank(no_help)));
}

TEST_CASE("a wrong step is told and stands there; one that cannot be read may be typed again") {
    Asking asking = plank(by_steps(1));
    mark_own_step(asking, "much");
    CHECK(asking.open_steps == 1);
    mark_own_step(asking, number(7.3 * asking.question.steps[1].value));
    CHECK(asking.open_steps == 2);
    CHECK(asking.own_steps == 0);
    CHECK_THAT(asking.step_told->feedback, ContainsSubstring(asking.question.steps[1].result));
}

TEST_CASE("giving up ends the question at either try and says that it was given up") {
    for (const bool after_one : {false, true}) {
        Asking asking = plank();
        if (after_one)
            mark_answer(bank(), asking, strange_number(asking));
        give_up(asking);
        CHECK(asking.finished);
        CHECK(asking.attempts.size() == (after_one ? 2U : 1U));
        CHECK(asking.attempts.back().gave_up);
        CHECK_FALSE(asking.told);
        give_up(asking);
        CHECK(asking.attempts.size() == (after_one ? 2U : 1U));
    }
}

TEST_CASE("letters mean the same as keys, where the rules allow what they stand for") {
    AskRules rules;
    rules.may_skip = true;
    const Asking open = plank(rules);
    CHECK(aside_of(open, "h") == Aside::hint);
    CHECK(aside_of(open, "w") == Aside::give_up);
    CHECK(aside_of(open, "?") == Aside::give_up);
    CHECK(aside_of(open, "n") == Aside::skip);
    CHECK_FALSE(aside_of(open, "12"));
    AskRules exam;
    exam.help = false;
    exam.feedback = false;
    for (const char* letter : {"h", "w", "?", "n"})
        CHECK_FALSE(aside_of(plank(exam), letter));
    Asking sat = plank(exam);
    give_up(sat);
    CHECK_FALSE(sat.finished);
}
