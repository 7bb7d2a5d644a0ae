#include "app/exam/exam_model.h"
#include "learner/shipped_course.h"

namespace steelyard::app {

namespace {

using learner::Clock;
using learner::kEvening_ms;
using learner::shipped_course;

const problems::Bank& bank() {
    return *shipped_course().bank;
}

ExamModel new_sitting(Clock now) {
    return sit_exam(*learner::new_exam(shipped_course(), 11, now), bank(), true);
}

/// Something for whatever is asked.
void answer_somehow(QuestionModel& question) {
    if (is_placed(question.question()))
        place(question, problems::right_place(question.question()));
    else if (is_typed(question.question()))
        question.typed = "12";
    else
        for (std::size_t i = 0; i < choices_of(question.question()).size(); ++i)
            choose(question, i);
}

} // namespace

TEST_CASE("Answers stand there again when an exam comes back to a question") {
    Clock now{kEvening_ms, 0};
    ExamModel model = new_sitting(now);
    std::vector<std::string> answers;
    for (std::size_t i = 0; i < model.exam.items.size(); ++i) {
        REQUIRE(model.question);
        answer_somehow(*model.question);
        answers.push_back(answer_of(*model.question));
        CHECK_FALSE(answers.back().empty());
        now.utc_ms += 1000;
        go_on(model, bank(), now);
    }
    CHECK(model.asks_to_end);
    CHECK(end_question(model) == "All answered. End the exam?");
    for (std::size_t i = 0; i < model.exam.items.size(); ++i) {
        show_item(model, i, bank(), now);
        CHECK(answer_of(*model.question) == answers[i]);
    }
}

TEST_CASE("An exam never says whether an answer is right, but that it cannot be read") {
    const Clock now{kEvening_ms, 0};
    ExamModel model = new_sitting(now);
    std::size_t at = 0;
    while (!(model.question && wanted_number(model.question->question())))
        show_item(model, ++at, bank(), now);
    model.question->typed = "many";
    go_on(model, bank(), now);
    CHECK(model.exam.at == at);
    CHECK_FALSE(model.remark.empty());
    model.question->typed = "0.001";
    go_on(model, bank(), now);
    CHECK(model.exam.at == at + 1);
    CHECK(model.remark.empty());
    CHECK_FALSE(model.question->asking.told);
}

TEST_CASE("Weights are hung and taken off, and an exam that ended changes no more") {
    const Clock now{kEvening_ms, 0};
    ExamModel model = new_sitting(now);
    CHECK(turn_weight(model, 0, now));
    CHECK(turn_weight(model, 7, now)); // not the one on the screen
    CHECK(model.exam.items[7].come_back);
    CHECK(model.exam.at == 0);
    CHECK(turn_weight(model, 0, now));
    CHECK_FALSE(model.exam.items[0].come_back);
    CHECK_FALSE(turn_weight(model, model.exam.items.size(), now));
    CHECK(end_exam(model, bank(), now));
    CHECK(model.exam.finished);
    CHECK_FALSE(turn_weight(model, 7, now));
    CHECK_FALSE(show_item(model, 3, bank(), now));
    CHECK_FALSE(go_on(model, bank(), now));
}

TEST_CASE("The clock counts minutes begun, and seconds only in the last minute") {
    using learner::kMinute_ms;
    using learner::kSecond_ms;
    CHECK(left_text(60 * kMinute_ms) == "60 min left");
    CHECK(left_text(41 * kMinute_ms - 1) == "41 min left");
    CHECK(left_text(40 * kMinute_ms + 1) == "41 min left");
    CHECK(left_text(kMinute_ms + 1) == "2 min left");
    CHECK(left_text(kMinute_ms) == "60 s left");
    CHECK(left_text(59 * kSecond_ms + 1) == "60 s left");
    CHECK(left_text(1) == "1 s left");
    // A moment before it says another it still says the same.
    for (const std::int64_t left_ms : {60 * kMinute_ms, 41 * kMinute_ms - 1, kMinute_ms + 1,
                                       59 * kSecond_ms, 59 * kSecond_ms - 1}) {
        const std::int64_t wait_ms = until_other_text(left_ms);
        CHECK(left_text(left_ms - wait_ms + 1) == left_text(left_ms));
        CHECK(left_text(left_ms - wait_ms) != left_text(left_ms));
    }
}

TEST_CASE("An exam ends by itself when its time is up") {
    Clock now{kEvening_ms, 0};
    ExamModel model = new_sitting(now);
    const learner::TimeMs end_ms = now.utc_ms + model.exam.allowed_ms;
    bool over = false;
    while (now.utc_ms < end_ms) {
        CHECK_FALSE(over);
        now.utc_ms += 30 * learner::kSecond_ms;
        over = pass_time(model, now);
    }
    CHECK(over);
    CHECK(model.exam.left_ms() == 0);
}

} // namespace steelyard::app
