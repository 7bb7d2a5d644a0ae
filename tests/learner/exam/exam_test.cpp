#include "learner/exam/exam.h"
#include "learner/shipped_course.h"

#include <map>
#include <set>

using namespace steelyard::learner;

namespace {

Clock after_s(std::int64_t seconds) {
    return {kEvening_ms + seconds * kSecond_ms, 0};
}

Exam drawn(std::uint64_t seed = 1) {
    return *new_exam(shipped_course(), seed, after_s(0));
}

} // namespace

// The method of largest remainder on a worked case: of 100 seats by 47, 16, 15.8, 12, 6.1 and 3.1
// (in thousands of votes), 10 seats: quotas 4.7, 1.6, 1.58, 1.2, 0.61, 0.31 give 4, 1, 1, 1, 0, 0,
// and the three left go to .7, .61 and .6: 5, 2, 1, 1, 1, 0. Source: the textbook example of
// Hamilton's method (from memory).
TEST_CASE("questions are shared out by the method of largest remainder") {
    CHECK(share_out({47, 16, 15.8, 12, 6.1, 3.1}, 10) == std::vector<int>{5, 2, 1, 1, 1, 0});
    CHECK(share_out({1, 1, 1}, 3) == std::vector<int>{1, 1, 1});
    CHECK(share_out({0, 2}, 5) == std::vector<int>{0, 5});
}

TEST_CASE("the pass mark is rounded up, and 70 % of 40 is 28") {
    CHECK(pass_mark(0.7, 40) == 28);
    CHECK(pass_mark(0.7, 41) == 29);
}

TEST_CASE("every skill that the shipped exam weighs is in the bank, and all can be asked") {
    const Course& course = shipped_course();
    for (const SkillWeight& weight : course.exam.weights) {
        INFO(weight.skill);
        REQUIRE(course.find(weight.skill));
        CHECK(course.skills[*course.find(weight.skill)].can_be_asked());
    }
}

TEST_CASE("the same seed draws the same exam, another seed another") {
    const Exam one = drawn(5);
    const Exam same = drawn(5);
    const Exam other = drawn(6);
    REQUIRE(one.items.size() == 40);
    std::set<std::string> codes;
    for (std::size_t i = 0; i < one.items.size(); ++i) {
        CHECK(one.items[i].code == same.items[i].code);
        codes.insert(one.items[i].code);
    }
    CHECK(codes.size() == one.items.size());
    CHECK(other.items[0].code != one.items[0].code);
}

TEST_CASE("an exam asks each skill by its weight and keeps strategies apart") {
    const Course& course = shipped_course();
    for (const std::uint64_t seed : {1U, 2U, 3U}) {
        const Exam exam = drawn(seed);
        std::map<std::string, int> asked;
        for (const ExamItem& item : exam.items)
            ++asked[item.skill];
        std::vector<double> weights;
        for (const CourseSkill& skill : course.skills)
            weights.push_back(skill.weight);
        const std::vector<int> shares = share_out(weights, 40);
        for (std::size_t i = 0; i < shares.size(); ++i)
            CHECK(asked[course.skills[i].skill->id] == shares[i]);
        int neighbours = 0;
        for (std::size_t i = 1; i < exam.items.size(); ++i)
            neighbours += course.bank->find_family(exam.items[i].family)->strategy ==
                                  course.bank->find_family(exam.items[i - 1].family)->strategy
                              ? 1
                              : 0;
        CHECK(neighbours <= 1);
    }
}

TEST_CASE("the clock counts while the exam is open, and ends it") {
    Exam exam = drawn();
    for (int minute = 1; minute <= 59; ++minute)
        tick(exam, after_s(minute * 60));
    CHECK(exam.left_ms() == kMinute_ms);
    CHECK_FALSE(exam.finished);
    give_answer(exam, "a", after_s(59 * 60 + 30));
    CHECK(exam.items[0].answer == "a");
    tick(exam, after_s(60 * 60));
    CHECK(exam.finished);
    give_answer(exam, "b", after_s(60 * 60 + 1));
    CHECK(exam.items[0].answer == "a");
    CHECK(exam.used_ms == exam.allowed_ms);
}

TEST_CASE("time in which the program did not run does not count, nor does a clock that was set") {
    Exam exam = drawn();
    tick(exam, after_s(50));
    // Killed here; started again an hour later.
    resume(exam, after_s(3650));
    tick(exam, after_s(3660));
    CHECK(exam.used_ms == 60 * kSecond_ms);
    // The clock goes back a day, then on; the machine sleeps for two hours.
    tick(exam, after_s(3660 - 86400));
    tick(exam, after_s(3670 - 86400));
    CHECK(exam.used_ms == 70 * kSecond_ms);
    tick(exam, after_s(3670 - 86400 + 7200));
    CHECK(exam.used_ms == 70 * kSecond_ms);
}

TEST_CASE("items can be left and come back to, and their time is their own") {
    Exam exam = drawn();
    note_to_come_back(exam, 0, true, after_s(10));
    go_to(exam, 4, after_s(20));
    give_answer(exam, "c", after_s(50));
    go_to(exam, 0, after_s(55));
    CHECK(exam.items[0].come_back);
    CHECK(exam.items[0].took_ms == 20 * kSecond_ms);
    CHECK(exam.items[4].took_ms == 35 * kSecond_ms);
    CHECK(exam.items[4].answer == "c");
    go_to(exam, 1000, after_s(56));
    CHECK(exam.at == 39);
    give_answer(exam, "", after_s(57));
    CHECK(exam.answered() == 1);
}

TEST_CASE("one goes round the items to come back to, forth and back") {
    Exam exam = drawn();
    CHECK_FALSE(nearest_to_come_back(exam, 1));
    for (const std::size_t item : {3U, 17U, 30U})
        note_to_come_back(exam, item, true, after_s(1));
    note_to_come_back(exam, 40, true, after_s(1)); // there is none
    CHECK(exam.to_come_back() == 3);
    go_to(exam, 17, after_s(2));
    CHECK(nearest_to_come_back(exam, 1) == 30U);
    CHECK(nearest_to_come_back(exam, -1) == 3U);
    go_to(exam, 35, after_s(3));
    CHECK(nearest_to_come_back(exam, 1) == 3U);
    CHECK(nearest_to_come_back(exam, -1) == 30U);
    for (const std::size_t item : {3U, 30U})
        note_to_come_back(exam, item, false, after_s(4));
    go_to(exam, 17, after_s(5));
    CHECK(nearest_to_come_back(exam, 1) == 17U); // nothing but itself
}

TEST_CASE("right answers to all items are all marked right, and none unanswered") {
    const Course& course = shipped_course();
    Exam exam = drawn(3);
    for (std::size_t i = 0; i < exam.items.size(); ++i) {
        const auto question =
            steelyard::problems::question_from_code(*course.bank, exam.items[i].code);
        REQUIRE(question);
        go_to(exam, i, after_s(static_cast<std::int64_t>(i)));
        give_answer(exam,
                    wanted_place(*question)
                        ? spots_of(*question)[wanted_place(*question)->correct].letter
                    : right_ones(*question).empty()
                        ? question->answer_text
                        : [&] {
                              std::string letters;
                              for (const std::size_t index : right_ones(*question))
                                  letters += std::string(1, static_cast<char>('A' + index)) + " ";
                              return letters;
                          }(),
                    after_s(static_cast<std::int64_t>(i)));
    }
    finish(exam, after_s(60));
    const ExamReport report = report_on(course, exam);
    CHECK(report.of == 40);
    CHECK(report.right == 40);
    CHECK(report.passed);
    CHECK(report.by_rule.empty());
    CHECK(report.faults.empty());
}

TEST_CASE("a report counts by skill and wrong rule, and an empty exam fails") {
    const Course& course = shipped_course();
    Exam exam = drawn(4);
    int followed = 0;
    for (std::size_t i = 0; i < exam.items.size(); ++i) {
        const auto question =
            steelyard::problems::question_from_code(*course.bank, exam.items[i].code);
        if (question->wrong_rules.empty())
            continue;
        go_to(exam, i, after_s(1));
        give_answer(exam, std::to_string(question->wrong_rules.front().value), after_s(1));
        ++followed;
    }
    finish(exam, after_s(2));
    const ExamReport report = report_on(course, exam);
    CHECK(report.right == 0);
    CHECK_FALSE(report.passed);
    CHECK(report.pass == 28);
    int named = 0;
    for (const RuleCount& rule : report.by_rule)
        named += static_cast<int>(rule.items.size());
    CHECK(named == followed);
    int of = 0;
    for (const SkillScore& score : report.by_skill)
        of += score.of;
    CHECK(of == 40);
    const std::vector<Answer> answers = answers_of(course, exam, report);
    int evidence = 0;
    for (const Answer& answer : answers)
        evidence += answer.is_evidence() ? 1 : 0;
    CHECK(evidence == followed);
}

TEST_CASE("an exam's blueprint says whether calculations may be typed") {
    const std::string rest = "title = \"T\"\nquestions = 1\nminutes = 1\npass = \"70 %\"\n";
    const std::string skill = "[[skill]]\nid = \"balance\"\nweight = 1\n";
    CHECK(parse_exam_blueprint(rest + skill, "exam")->calculator);
    CHECK_FALSE(parse_exam_blueprint(rest + "calculator = false\n" + skill, "exam")->calculator);
    CHECK_FALSE(parse_exam_blueprint(rest + "calculator = 7\n" + skill, "exam").has_value());

    Course course = shipped_course();
    course.exam.calculator = false;
    Exam exam = drawn(1);
    for (ExamItem& item : exam.items)
        item.answer = "12+30";
    for (const ExamMark& mark : report_on(course, exam).marks)
        if (steelyard::problems::wanted_number(mark.question) != nullptr)
            CHECK(mark.marking.verdict == steelyard::problems::Verdict::unreadable);
}
