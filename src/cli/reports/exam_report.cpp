#include "cli/reports/exam_report.h"

#include "cli/reports/exam_beam.h"
#include "cli/study/practice.h"
#include "cli/study/terminal.h"

#include <fmt/format.h>

#include <algorithm>
#include <ostream>

namespace steelyard::cli {

namespace {

std::string numbers_text(const std::vector<std::size_t>& items) {
    std::string text;
    for (const std::size_t item : items)
        text += fmt::format("{}{}", text.empty() ? "" : ", ", item + 1);
    return text;
}

void show_mistake(const learner::Exam& exam, const learner::ExamMark& mark, std::ostream& out) {
    out << fmt::format("\n--- Question {} of {}", mark.item + 1, exam.items.size());
    show_question(mark.question, out);
    const std::string& answer = exam.items[mark.item].answer;
    out << (answer.empty() ? std::string("\nYou gave no answer.\n")
                           : fmt::format("\nYou answered: {}\n", answer));
    if (mark.answered)
        out << wrapped(mark.marking.feedback, "  ");
    out << "Worked answer\n";
    show_solution(mark.question, out);
}

} // namespace

void show_report(const learner::Course& course, const learner::Exam& exam,
                 const learner::ExamReport& report, std::ostream& out) {
    out << fmt::format("\n{}: {} of {} right in {} of {} minutes; {} needed. {}\n", exam.title,
                       report.right, report.of, learner::minutes_text(exam.used_ms),
                       exam.allowed_ms / learner::kMinute_ms, report.pass,
                       report.passed ? "Passed." : "Not passed.");
    for (const std::string& fault : report.faults)
        out << wrapped("Left out: " + fault, "  ");
    out << '\n';
    show_beam(exam, report, out);
    out << "\nBy skill\n";
    for (const learner::SkillScore& score : report.by_skill) {
        const auto skill = course.find(score.skill);
        constexpr std::size_t kBar = 12;
        out << fmt::format("  [{}] {} of {}  {}\n",
                           bar(static_cast<double>(score.right) / score.of, kBar), score.right,
                           score.of, skill ? course.skills[*skill].skill->title : score.skill);
    }
    if (report.by_rule.empty())
        return;
    out << "\nMistakes that have a name\n";
    for (const learner::RuleCount& rule : report.by_rule) {
        const problems::WrongRule* known = course.bank->find_wrong_rule(rule.rule);
        out << wrapped(fmt::format("{}: question {}", known ? known->title : rule.rule,
                                   numbers_text(rule.items)),
                       "  ");
    }
}

void go_through_mistakes(const learner::Exam& exam, const learner::ExamReport& report,
                         const Streams& streams) {
    const auto wrong = std::count_if(report.marks.begin(), report.marks.end(),
                                     [](const learner::ExamMark& mark) { return !mark.right; });
    std::ptrdiff_t shown = 0;
    for (const learner::ExamMark& mark : report.marks) {
        if (mark.right)
            continue;
        std::string line;
        if (can_answer(streams) &&
            (!read_line(streams,
                        fmt::format("\nEnter for mistake {} of {} with its worked steps, q to stop",
                                    shown + 1, wrong),
                        line) ||
             line == "q")) {
            streams.out << "`steelyard exam --review` shows them again.\n";
            return;
        }
        show_mistake(exam, mark, streams.out);
        ++shown;
    }
}

} // namespace steelyard::cli
