#include "learner/exam/exam.h"

#include "problems/draw/random.h"
#include "setup/toml/input_error.h"

#include <algorithm>
#include <map>

namespace steelyard::learner {

namespace {

using problems::Family;

/// Shuffles by our own draws, so that a seed gives the same order everywhere (Fisher & Yates).
template <typename T> void shuffle(std::vector<T>& items, problems::Random& random) {
    for (std::size_t i = items.size(); i > 1; --i)
        std::swap(items[i - 1], items[problems::draw_place(random, i)]);
}

/// The families of an exam's questions: each skill by its share, its families in turn.
std::vector<const Family*> draw_families(const Course& course, problems::Random& random) {
    std::vector<double> weights;
    for (const CourseSkill& skill : course.skills)
        weights.push_back(skill.weight);
    const std::vector<int> shares = share_out(weights, course.exam.questions);
    std::vector<const Family*> drawn;
    for (std::size_t i = 0; i < shares.size(); ++i) {
        if (shares[i] == 0)
            continue;
        std::vector<const Family*> turns = course.skills[i].families;
        shuffle(turns, random);
        for (int k = 0; k < shares[i]; ++k)
            drawn.push_back(turns[static_cast<std::size_t>(k) % turns.size()]);
    }
    shuffle(drawn, random);
    return drawn;
}

/// Moves families so that neighbours are solved differently, where that can be.
void keep_strategies_apart(std::vector<const Family*>& families) {
    for (std::size_t i = 1; i < families.size(); ++i) {
        const auto other = std::find_if(
            families.begin() + static_cast<std::ptrdiff_t>(i), families.end(),
            [&](const Family* family) { return family->strategy != families[i - 1]->strategy; });
        if (other != families.end())
            std::rotate(families.begin() + static_cast<std::ptrdiff_t>(i), other, other + 1);
    }
}

} // namespace

int Exam::answered() const {
    return static_cast<int>(std::count_if(
        items.begin(), items.end(), [](const ExamItem& item) { return !item.answer.empty(); }));
}

int Exam::to_come_back() const {
    return static_cast<int>(std::count_if(items.begin(), items.end(),
                                          [](const ExamItem& item) { return item.come_back; }));
}

tl::expected<Exam, problems::NoQuestion> new_exam(const Course& course, std::uint64_t seed,
                                                  const Clock& clock) {
    if (const auto& faults = course.bank->faults; !faults.empty())
        return tl::make_unexpected(problems::NoQuestion{
            "No exam is made from a part of the questions: it would not be the one that it is "
            "called. " +
            setup::to_text(faults.front())});
    problems::Random random(problems::mix(seed, 0));
    std::vector<const Family*> families = draw_families(course, random);
    if (families.empty())
        return tl::make_unexpected(
            problems::NoQuestion{"The question bank asks none of the skills of this exam."});
    keep_strategies_apart(families);
    Exam exam;
    exam.title = course.exam.title;
    exam.seed = seed;
    exam.pass_share = course.exam.pass_share;
    exam.allowed_ms = course.exam.minutes * kMinute_ms;
    exam.started_ms = clock.utc_ms;
    exam.seen_ms = clock.utc_ms;
    std::vector<std::string> codes;
    for (const Family* family : families) {
        const auto question = problems::unseen_question(*course.bank, *family, random(), codes);
        if (!question)
            return tl::make_unexpected(question.error());
        codes.push_back(question->code);
        ExamItem item;
        item.code = question->code;
        item.skill = question->skill;
        item.family = question->family;
        exam.items.push_back(std::move(item));
    }
    return exam;
}

void foresee_exam(const Course& course, const Standing& standing, Exam& exam) {
    for (ExamItem& item : exam.items)
        if (const auto skill = course.find(item.skill))
            item.foreseen = foresee(course, standing, *skill, course.skills[*skill].guess, 0.0,
                                    exam.started_ms);
}

void tick(Exam& exam, const Clock& clock) {
    if (exam.finished)
        return;
    std::int64_t passed = clock.utc_ms - exam.seen_ms;
    exam.seen_ms = clock.utc_ms;
    if (passed < 0 || passed > kLongestTick_ms)
        passed = 0;
    passed = std::min(passed, exam.left_ms());
    exam.used_ms += passed;
    if (exam.at < exam.items.size())
        exam.items[exam.at].took_ms += passed;
    if (exam.left_ms() == 0) {
        exam.finished = true;
        exam.finished_ms = clock.utc_ms;
    }
}

void resume(Exam& exam, const Clock& clock) {
    exam.seen_ms = clock.utc_ms;
}

void give_answer(Exam& exam, const std::string& answer, const Clock& clock) {
    tick(exam, clock);
    if (!exam.finished && exam.at < exam.items.size())
        exam.items[exam.at].answer = answer;
}

void note_to_come_back(Exam& exam, std::size_t item, bool wanted, const Clock& clock) {
    tick(exam, clock);
    if (!exam.finished && item < exam.items.size())
        exam.items[item].come_back = wanted;
}

std::optional<std::size_t> nearest_to_come_back(const Exam& exam, int by) {
    const std::size_t count = exam.items.size();
    for (std::size_t i = 1; i <= count; ++i)
        if (const std::size_t item = (exam.at + (by > 0 ? i : count - i)) % count;
            exam.items[item].come_back)
            return item;
    return std::nullopt;
}

void go_to(Exam& exam, std::size_t item, const Clock& clock) {
    tick(exam, clock);
    if (!exam.finished && !exam.items.empty())
        exam.at = std::min(item, exam.items.size() - 1);
}

void finish(Exam& exam, const Clock& clock) {
    tick(exam, clock);
    if (exam.finished)
        return;
    exam.finished = true;
    exam.finished_ms = clock.utc_ms;
}

ExamReport report_on(const Course& course, const Exam& exam) {
    ExamReport report;
    std::map<std::string, SkillScore> by_skill;
    std::map<std::string, RuleCount> by_rule;
    for (std::size_t i = 0; i < exam.items.size(); ++i) {
        const ExamItem& item = exam.items[i];
        auto question = problems::question_from_code(*course.bank, item.code);
        if (!question) {
            report.faults.push_back(question.error().message);
            continue;
        }
        ExamMark mark;
        mark.item = i;
        mark.answered = !item.answer.empty();
        mark.question = std::move(*question);
        if (mark.answered)
            mark.marking =
                problems::mark(*course.bank, mark.question, item.answer, {course.exam.calculator});
        mark.right = mark.answered && mark.marking.correct;
        mark.wrong_rule = mark.answered ? mark.marking.wrong_rule.value_or("") : "";
        if (!mark.wrong_rule.empty()) {
            by_rule[mark.wrong_rule].rule = mark.wrong_rule;
            by_rule[mark.wrong_rule].items.push_back(i);
        }
        SkillScore& score = by_skill[item.skill];
        score.skill = item.skill;
        ++score.of;
        score.right += mark.right ? 1 : 0;
        report.right += mark.right ? 1 : 0;
        ++report.of;
        report.marks.push_back(std::move(mark));
    }
    report.pass = pass_mark(exam.pass_share, report.of);
    report.passed = report.of > 0 && report.right >= report.pass;
    for (const CourseSkill& skill : course.skills)
        if (const auto found = by_skill.find(skill.skill->id); found != by_skill.end())
            report.by_skill.push_back(found->second);
    for (const auto& [id, rule] : by_rule)
        report.by_rule.push_back(rule);
    std::stable_sort(
        report.by_rule.begin(), report.by_rule.end(),
        [](const RuleCount& a, const RuleCount& b) { return a.items.size() > b.items.size(); });
    return report;
}

std::vector<Answer> answers_of(const Course& course, const Exam& exam, const ExamReport& report) {
    std::vector<Answer> answers;
    for (const ExamMark& mark : report.marks) {
        const ExamItem& item = exam.items[mark.item];
        Answer answer = answer_to(mark.question, course.parameters);
        answer.at_ms = exam.finished_ms;
        answer.purpose = Purpose::exam;
        answer.outcome = !mark.answered ? Outcome::skipped
                         : mark.right   ? Outcome::right
                                        : Outcome::wrong;
        answer.typed = item.answer;
        answer.wrong_rule = mark.wrong_rule;
        answer.took_ms = item.took_ms;
        answer.foreseen = item.foreseen;
        answers.push_back(std::move(answer));
    }
    return answers;
}

} // namespace steelyard::learner
