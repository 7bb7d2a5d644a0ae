#include "app/exam/exam_model.h"

#include "problems/marking/marking.h"
#include "problems/question/generator.h"

#include <fmt/format.h>

namespace steelyard::app {

namespace {

void put_on_screen(ExamModel& model, const problems::Bank& bank) {
    model.remark.clear();
    model.question.reset();
    if (model.exam.items.empty())
        return;
    const learner::ExamItem& item = model.exam.items[model.exam.at];
    auto question = problems::question_from_code(bank, item.code);
    if (!question) {
        model.remark = question.error().message;
        return;
    }
    learner::AskRules rules;
    rules.help = false;
    rules.feedback = false;
    rules.calculator = model.calculator;
    model.question.emplace().asking = learner::begin_asking(std::move(*question), rules);
    take_answer(*model.question, item.answer);
}

/// Whether an answer is right stays hidden; that it cannot be read must not.
std::string remark_on(const QuestionModel& question, const problems::Bank& bank,
                      const std::string& answer) {
    if (answer.empty())
        return {};
    const problems::Marking marking =
        problems::mark(bank, question.question(), answer, {question.asking.rules.calculator});
    return marking.verdict == problems::Verdict::unreadable ? marking.feedback : std::string();
}

/// Minutes, and seconds in the last one [ms].
std::int64_t counted_in(std::int64_t left_ms) {
    return left_ms > learner::kMinute_ms ? learner::kMinute_ms : learner::kSecond_ms;
}

} // namespace

ExamModel sit_exam(learner::Exam exam, const problems::Bank& bank, bool calculator) {
    ExamModel model;
    model.calculator = calculator;
    model.exam = std::move(exam);
    put_on_screen(model, bank);
    return model;
}

bool take_in_answer(ExamModel& model, const problems::Bank& bank, const learner::Clock& now) {
    if (model.exam.finished || !model.question)
        return false;
    const std::string answer = answer_of(*model.question);
    if (answer == model.exam.items[model.exam.at].answer)
        return false;
    model.remark = remark_on(*model.question, bank, answer);
    give_answer(model.exam, answer, now);
    return true;
}

bool show_item(ExamModel& model, std::size_t item, const problems::Bank& bank,
               const learner::Clock& now) {
    if (model.exam.finished)
        return false;
    take_in_answer(model, bank, now);
    learner::go_to(model.exam, item, now);
    model.asks_to_end = false;
    put_on_screen(model, bank);
    return true;
}

bool turn_weight(ExamModel& model, std::size_t item, const learner::Clock& now) {
    if (model.exam.finished || item >= model.exam.items.size())
        return false;
    learner::note_to_come_back(model.exam, item, !model.exam.items[item].come_back, now);
    return true;
}

bool pass_time(ExamModel& model, const learner::Clock& now) {
    if (model.exam.finished)
        return false;
    learner::tick(model.exam, now);
    return model.exam.finished;
}

bool end_exam(ExamModel& model, const problems::Bank& bank, const learner::Clock& now) {
    if (model.exam.finished)
        return false;
    take_in_answer(model, bank, now);
    learner::finish(model.exam, now);
    return true;
}

bool go_on(ExamModel& model, const problems::Bank& bank, const learner::Clock& now) {
    const bool kept = take_in_answer(model, bank, now);
    if (!model.remark.empty())
        return kept;
    if (model.exam.at + 1 < model.exam.items.size())
        return show_item(model, model.exam.at + 1, bank, now) || kept;
    model.asks_to_end = true;
    return kept;
}

std::string left_text(std::int64_t left_ms) {
    const std::int64_t unit_ms = counted_in(left_ms);
    return fmt::format("{} {} left", (left_ms + unit_ms - 1) / unit_ms,
                       unit_ms == learner::kMinute_ms ? "min" : "s");
}

std::int64_t until_other_text(std::int64_t left_ms) {
    return (left_ms - 1) % counted_in(left_ms) + 1;
}

std::string end_question(const ExamModel& model) {
    const auto open = static_cast<int>(model.exam.items.size()) - model.exam.answered();
    return open > 0 ? fmt::format("{} without an answer. End the exam?", open)
                    : std::string("All answered. End the exam?");
}

} // namespace steelyard::app
