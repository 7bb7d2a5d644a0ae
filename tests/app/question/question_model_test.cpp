#include "app/question/question_model.h"
#include "learner/shipped_course.h"
#include "problems/question/generator.h"

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

QuestionModel asked(const problems::Question& question) {
    QuestionModel model;
    model.asking = learner::begin_asking(question, {});
    return model;
}

QuestionModel asked(const char* family) {
    return asked(question_of(family));
}

} // namespace

TEST_CASE("The line for an own step is empty again once the step stands there") {
    QuestionModel model = asked("effort-on-a-plank");
    go_by_steps(model.asking);
    model.step_typed = "no idea";
    enter_own_step(model);
    CHECK(model.step_typed == "no idea");
    model.step_typed = "a";
    enter_own_step(model);
    CHECK(model.asking.open_steps == 1);
    CHECK(model.step_typed.empty());
}

TEST_CASE(
    "A number that was marked wrong stays in its line, and so does the hint, until it is right") {
    QuestionModel model = asked("effort-on-a-plank");
    model.typed = std::to_string(3.7 * wanted_number(model.question())->value);
    enter_answer(bank(), model);
    CHECK_FALSE(model.asking.finished);
    CHECK_FALSE(model.typed.empty());
    model.typed = model.question().answer_text;
    change_answer(model.asking);
    CHECK(model.asking.told);
    enter_answer(bank(), model);
    CHECK(model.asking.finished);
    CHECK(model.asking.told->correct);
}

TEST_CASE("A place is chosen by its letter too, and by no other letter") {
    QuestionModel model = asked("place-the-axis");
    place(model, problems::right_place(model.question()));
    CHECK_FALSE(place_by_letter(model, "Z"));
    CHECK(model.placed);
    CHECK(place_by_letter(model, "B"));
    CHECK_FALSE(model.placed);
    CHECK(answer_of(model) == "B");
}

TEST_CASE("Every way to answer is kept as text and taken up again") {
    for (const char* family : {"effort-on-a-plank", "class-on-the-bench", "rank-by-torque",
                               "place-the-axis", "place-the-arm", "place-the-line-of-a-rope"}) {
        INFO(family);
        QuestionModel model = asked(family);
        if (is_placed(model.question()))
            place(model, problems::right_place(model.question()));
        else if (is_typed(model.question()))
            model.typed = model.question().answer_text;
        else
            for (const std::size_t choice : right_ones(model.question()))
                choose(model, choice);
        const std::string answer = answer_of(model);
        CHECK(problems::mark(bank(), model.question(), answer).correct);
        QuestionModel again = asked(model.question());
        take_answer(again, answer);
        CHECK(answer_of(again) == answer);
        enter_answer(bank(), again);
        REQUIRE(again.asking.told);
        CHECK(again.asking.told->correct);
    }
}

TEST_CASE("Keys move a point along the lever and never off it") {
    QuestionModel model = asked("place-the-axis");
    const double step_m = nudge_step_m(model.question());
    for (int i = 0; i < 300; ++i)
        nudge(model, {step_m, 0.0}, false);
    const auto& lever = std::get<problems::LeverPicture>(model.question().picture).lever;
    REQUIRE(model.placed);
    CHECK((model.placed->to_m - lever.path_m.back()).norm() < 1e-9); // rounding only
    nudge(model, {-step_m, 0.0}, false);
    CHECK((model.placed->to_m - lever.path_m.back()).norm() == Approx(step_m));
}

TEST_CASE("Keys alone find the right place of every placed question within its tolerance") {
    for (const char* family : {"place-the-axis", "place-the-counterweight"}) {
        INFO(family);
        QuestionModel model = asked(family);
        const double step_m = nudge_step_m(model.question());
        nudge(model, {step_m, 0.0}, false);
        const auto off_m = [&] {
            return (model.placed->to_m - wanted_place(model.question())->at_m).norm();
        };
        // As a hand does that watches the mark: on while it comes nearer, else back.
        for (const double way : {1.0, -1.0})
            for (double before_m = off_m() + 1.0; off_m() < before_m;) {
                before_m = off_m();
                nudge(model, {way * step_m, 0.0}, false);
                if (off_m() > before_m)
                    nudge(model, {-way * step_m, 0.0}, false);
            }
        enter_answer(bank(), model);
        REQUIRE(model.asking.told);
        CHECK(model.asking.told->correct);
    }
}

} // namespace steelyard::app
