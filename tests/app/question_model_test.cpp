#include "app/question/question_model.h"
#include "learner/shipped_course.h"
#include "problems/generator.h"

#include <cmath>

namespace steelyard::app {

namespace {

using learner::shipped_course;

const problems::Bank& bank() {
    return *shipped_course().bank;
}

problems::Question question_of(const char* family, std::uint64_t seed = 1) {
    return *problems::question_of_family(bank(), *bank().find_family(family), seed);
}

} // namespace

TEST_CASE("A hint first tells what to do, then how it comes out, and is counted") {
    QuestionModel model = begin_question(question_of("effort-on-a-plank"), {});
    REQUIRE(model.question.steps.size() > 1);
    give_hint(model);
    CHECK(model.next_told);
    CHECK(model.open_steps == 0);
    give_hint(model);
    CHECK_FALSE(model.next_told);
    CHECK(model.open_steps == 1);
    model.typed = std::to_string(model.question.answer);
    mark_answer(bank(), model);
    REQUIRE(model.attempts.size() == 1);
    CHECK(model.attempts[0].hints == 2);
    CHECK(model.attempts[0].help == Approx(1.0 / static_cast<double>(model.question.steps.size())));
}

TEST_CASE("A step is asked for once one stands there, or from the beginning where rules say so") {
    QuestionModel model = begin_question(question_of("effort-on-a-plank"), {});
    CHECK_FALSE(has_own_step(model));
    give_hint(model);
    CHECK(has_own_step(model));
    AskRules rules;
    rules.by_steps = true; // a faded example of which no step is done
    CHECK(has_own_step(begin_question(question_of("effort-on-a-plank"), rules)));
    rules.help = false;
    CHECK_FALSE(has_own_step(begin_question(question_of("effort-on-a-plank"), rules)));
}

TEST_CASE("A step done by oneself stands there from then on, a wrong one does not") {
    AskRules rules;
    rules.by_steps = true;
    QuestionModel model = begin_question(question_of("effort-on-a-plank"), rules);
    while (!model.question.steps[model.open_steps].options.empty()) {
        give_hint(model);
        give_hint(model);
    }
    REQUIRE(has_own_step(model));
    const std::size_t before = model.open_steps;
    const problems::Step& step = model.question.steps[before];
    model.step_typed = std::to_string(3.0 * step.value + 1.0);
    mark_own_step(model);
    CHECK(model.open_steps == before);
    REQUIRE(model.step_mark);
    CHECK_FALSE(model.step_mark->correct);
    model.step_typed = std::to_string(step.value);
    mark_own_step(model);
    CHECK(model.open_steps == before + 1);
}

TEST_CASE("A slip of unit may be mended with help, and ends the question without") {
    for (const bool help : {true, false}) {
        AskRules rules;
        rules.help = help;
        QuestionModel model = begin_question(question_of("effort-on-a-plank"), rules);
        model.typed = std::to_string(model.question.answer) + " kg";
        mark_answer(bank(), model);
        REQUIRE(model.attempts.size() == 1);
        CHECK_FALSE(model.attempts[0].marking.correct);
        CHECK(model.finished == !help);
    }
}

TEST_CASE("An answer that cannot be read is no attempt") {
    QuestionModel model = begin_question(question_of("effort-on-a-plank"), {});
    model.typed = "a lot";
    mark_answer(bank(), model);
    REQUIRE(model.mark);
    CHECK(model.mark->verdict == problems::Verdict::unreadable);
    CHECK(model.attempts.empty());
    CHECK_FALSE(model.finished);
}

TEST_CASE("Every way to answer is kept as text and taken up again") {
    for (const char* family : {"effort-on-a-plank", "class-on-the-bench", "rank-by-torque",
                               "place-the-axis", "place-the-arm", "place-the-line-of-a-rope"}) {
        INFO(family);
        QuestionModel model = begin_question(question_of(family), {});
        if (is_placed(model.question)) {
            place(model, problems::right_place(model.question));
        } else if (is_typed(model.question)) {
            model.typed = model.question.answer_text;
        } else {
            for (const std::size_t choice : model.question.correct)
                choose(model, choice);
        }
        const std::string answer = answer_of(model);
        CHECK(problems::mark(bank(), model.question, answer).correct);
        QuestionModel again = begin_question(model.question, {});
        take_answer(again, answer);
        CHECK(answer_of(again) == answer);
        mark_answer(bank(), again);
        REQUIRE(again.mark);
        CHECK(again.mark->correct);
    }
}

TEST_CASE("Keys move a point along the lever and never off it") {
    QuestionModel model = begin_question(question_of("place-the-axis"), {});
    const double step_m = nudge_step_m(model.question);
    for (int i = 0; i < 300; ++i)
        nudge(model, {step_m, 0.0}, false);
    const auto& lever = std::get<problems::LeverPicture>(model.question.picture).lever;
    REQUIRE(model.placed);
    CHECK((model.placed->to_m - lever.path_m.back()).norm() < 1e-9); // rounding only
    nudge(model, {-step_m, 0.0}, false);
    CHECK((model.placed->to_m - lever.path_m.back()).norm() == Approx(step_m));
}

TEST_CASE("Keys alone find the right place of every placed question within its tolerance") {
    for (const char* family : {"place-the-axis", "place-the-counterweight"}) {
        INFO(family);
        QuestionModel model = begin_question(question_of(family), {});
        const double step_m = nudge_step_m(model.question);
        nudge(model, {step_m, 0.0}, false);
        const auto off_m = [&] { return (model.placed->to_m - model.question.place_at_m).norm(); };
        // As a hand does that watches the mark: on while it comes nearer, else back.
        for (const double way : {1.0, -1.0})
            for (double before_m = off_m() + 1.0; off_m() < before_m;) {
                before_m = off_m();
                nudge(model, {way * step_m, 0.0}, false);
                if (off_m() > before_m)
                    nudge(model, {-way * step_m, 0.0}, false);
            }
        mark_answer(bank(), model);
        REQUIRE(model.mark);
        CHECK(model.mark->correct);
    }
}

} // namespace steelyard::app
