#include "learner/model/readiness.h"
#include "learner/record/answer_columns.h"
#include "learner/record/check.h"
#include "learner/record/exam_record.h"
#include "learner/record/range_check.h"
#include "learner/record/record.h"
#include "learner/shipped_course.h"

#include <cmath>

using namespace steelyard::learner;

namespace {

const Clock kNow{kEvening_ms, 0};

Opened open_here(const TestFolder& folder) {
    auto opened = open_record(folder.path(), kNow);
    REQUIRE(opened);
    return std::move(*opened);
}

} // namespace

TEST_CASE("an answer is there when the record is opened again") {
    const TestFolder folder;
    const Course& course = shipped_course();
    {
        Record record = open_here(folder).record;
        const auto ada = record.add_learner("Ada", kNow);
        REQUIRE(ada);
        REQUIRE(
            record.add_answer(ada->id, course, answer_about("balance", true, kEvening_ms), kNow));
    }
    Record record = open_here(folder).record;
    const auto ada = record.learner_named("ada");
    REQUIRE(ada);
    REQUIRE(*ada);
    CHECK((*ada)->answers == 1);
    const auto standing = record.standing((*ada)->id, course, kNow);
    REQUIRE(standing);
    const SkillState& state = standing->skills[*course.find("balance")];
    CHECK(state.answers == 1);
    CHECK(state.known > course.parameters.start);
    CHECK(standing->answered_today == 1);
    CHECK(standing->recent_families == std::vector<std::string>{"balance-family"});
}

TEST_CASE("what is kept beside the answers is what folding them gives") {
    const TestFolder folder;
    const Course& course = shipped_course();
    Record record = open_here(folder).record;
    const auto ada = record.add_learner("Ada", kNow);
    Standing expected = fresh_standing(course);
    for (int i = 0; i < 60; ++i) {
        const Clock clock{kEvening_ms + i * 7 * 3600 * kSecond_ms, 0};
        Answer answer = answer_about(course.skills[static_cast<std::size_t>(i) % 26].skill->id,
                                     i % 3 != 0, clock.utc_ms);
        answer.purpose = i < 8 ? Purpose::placement : Purpose::practice;
        answer.wrong_rule = i % 3 == 0 ? "arms-swapped" : "";
        const auto standing = record.add_answer(ada->id, course, answer, clock);
        REQUIRE(standing);
        expected = after_answer(course, expected, answer, 0);
        for (std::size_t k = 0; k < expected.skills.size(); ++k)
            CHECK(standing->skills[k] == expected.skills[k]);
    }
    const auto check = check_record(record, course, kNow, {});
    REQUIRE(check);
    CHECK(check->faults.empty());
    CHECK(check->mended.empty());
    CHECK(check->answers.lines == 60);
    const auto rules = record.frequent_rules(ada->id, 5);
    REQUIRE(rules);
    REQUIRE(rules->size() == 1);
    CHECK(rules->front().times == 20);
}

TEST_CASE("the same answer kept twice counts once") {
    const TestFolder folder;
    const Course& course = shipped_course();
    Record record = open_here(folder).record;
    const auto ada = record.add_learner("Ada", kNow);
    const Answer answer = answer_about("balance", true, kEvening_ms);
    REQUIRE(record.add_answer(ada->id, course, answer, kNow));
    const auto again = record.add_answer(ada->id, course, answer, kNow);
    REQUIRE(again);
    CHECK(again->answers == 1);
}

TEST_CASE("learners are kept apart, and a name is taken once") {
    const TestFolder folder;
    const Course& course = shipped_course();
    Record record = open_here(folder).record;
    const auto ada = record.add_learner("Ada", kNow);
    const auto bo = record.add_learner("Bo", kNow);
    REQUIRE(bo);
    CHECK_FALSE(record.add_learner("ADA", kNow));
    CHECK_FALSE(record.add_learner("", kNow));
    CHECK_FALSE(record.add_learner(std::string(81, 'x'), kNow));
    CHECK_FALSE(record.add_learner("A\nda", kNow));
    REQUIRE(record.add_answer(ada->id, course, answer_about("balance", true, kEvening_ms), kNow));
    CHECK(record.standing(bo->id, course, kNow)->answers == 0);
    REQUIRE(record.set_exam_day(bo->id, day_of(kNow)));
    CHECK(record.learners()->size() == 2);
    CHECK(record.learner_named("Bo")->value().exam_day == day_of(kNow));
    CHECK_FALSE(record.learner_named("Ada")->value().exam_day);
}

TEST_CASE("other parameters fold every answer anew") {
    const TestFolder folder;
    Course course = shipped_course();
    Record record = open_here(folder).record;
    const auto ada = record.add_learner("Ada", kNow);
    REQUIRE(record.add_answer(ada->id, course, answer_about("balance", true, kEvening_ms), kNow));
    course.parameters.learn = 0.3;
    const auto standing = record.standing(ada->id, course, kNow);
    REQUIRE(standing);
    const Standing expected =
        after_answer(course, fresh_standing(course), answer_about("balance", true, kEvening_ms), 0);
    CHECK(standing->skills[*course.find("balance")] == expected.skills[*course.find("balance")]);
}

TEST_CASE("an exam that was begun is found again with its answers, its clock and what waits") {
    const TestFolder folder;
    const Course& course = shipped_course();
    std::int64_t learner = 0;
    {
        Record record = open_here(folder).record;
        learner = record.add_learner("Ada", kNow)->id;
        Exam exam = *new_exam(course, 3, kNow);
        REQUIRE(keep_exam(record, learner, exam));
        CHECK(exam.id != 0);
        go_to(exam, 2, {kEvening_ms + 20000, 0});
        give_answer(exam, "b", {kEvening_ms + 50000, 0});
        note_to_come_back(exam, 2, true, {kEvening_ms + 50000, 0});
        REQUIRE(keep_exam(record, learner, exam));
    }
    Record record = open_here(folder).record;
    auto found = unfinished_exam(record, learner);
    REQUIRE(found);
    REQUIRE(*found);
    Exam exam = **found;
    CHECK(exam.used_ms == 50000);
    CHECK(exam.at == 2);
    CHECK(exam.items[2].answer == "b");
    CHECK(exam.items[2].come_back);
    const Clock later{kEvening_ms + kDay_ms, 0};
    resume(exam, later);
    finish(exam, later);
    CHECK(exam.used_ms == 50000);
    const ExamReport report = report_on(course, exam);
    const auto closed = close_exam(record, learner, course, exam, report, later);
    REQUIRE(closed);
    CHECK(closed->answers == 1);
    CHECK_FALSE(*unfinished_exam(record, learner));
    const auto results = finished_exams(record, learner, 10);
    REQUIRE(results->size() == 1);
    CHECK(results->front().of == 40);
    CHECK(results->front().pass == 28);
    // Closed by another window meanwhile: nothing counts twice.
    CHECK(close_exam(record, learner, course, exam, report, later)->answers == 1);
}

TEST_CASE("an exam whose rows were damaged goes on at an item that it has, or not at all") {
    const TestFolder folder;
    const Course& course = shipped_course();
    Record record = std::move(open_record(folder.path(), kNow)->record);
    const std::int64_t learner = record.add_learner("Ada", kNow)->id;
    Exam exam = *new_exam(course, 3, kNow);
    REQUIRE(keep_exam(record, learner, exam));
    const auto found = [&] { return unfinished_exam(record, learner).value(); };
    SECTION("an item beyond the last") {
        REQUIRE(record.database().run("UPDATE exam SET item = 4000"));
        CHECK(found()->at == exam.items.size() - 1);
    }
    SECTION("an item before the first") {
        REQUIRE(record.database().run("UPDATE exam SET item = -1"));
        CHECK(found()->at < exam.items.size());
    }
    SECTION("some items lost: the rest keep their answers, and none is doubled") {
        REQUIRE(record.database().run("DELETE FROM exam_item WHERE number < 10"));
        Exam rest = *found();
        REQUIRE(rest.items.size() == exam.items.size() - 10);
        give_answer(rest, "b", kNow);
        REQUIRE(keep_exam(record, learner, rest));
        const auto again = found();
        REQUIRE(again->items.size() == rest.items.size());
        for (std::size_t i = 0; i < rest.items.size(); ++i) {
            CHECK(again->items[i].code == rest.items[i].code);
            CHECK(again->items[i].answer == rest.items[i].answer);
        }
    }
    SECTION("no item left: an earlier one is found instead, or none") {
        REQUIRE(record.database().run("DELETE FROM exam_item"));
        CHECK_FALSE(found());
        Exam next = *new_exam(course, 4, {kEvening_ms - kDay_ms, 0});
        REQUIRE(keep_exam(record, learner, next));
        CHECK(found()->id == next.id);
    }
}

TEST_CASE("what is read from damaged rows is never infinite") {
    const TestFolder folder;
    const Course& course = shipped_course();
    Record record = std::move(open_record(folder.path(), kNow)->record);
    const std::int64_t learner = record.add_learner("Ada", kNow)->id;
    REQUIRE(record.add_answer(learner, course, answer_about("balance", true, kEvening_ms), kNow));
    Exam exam = *new_exam(course, 3, kNow);
    finish(exam, kNow);
    REQUIRE(close_exam(record, learner, course, exam, report_on(course, exam), kNow));
    REQUIRE(record.database().run(
        "UPDATE learner SET foreseen = 9e999, foreseen_right = -9e999, foreseen_weight = 9e999;"
        "UPDATE skill_state SET known = 9e999, half_life_d = 0;"
        "UPDATE exam SET pass_share = 9e999, right_answers = 50, questions = 40;"
        "UPDATE exam_item SET foreseen = 9e999;"
        "UPDATE answer SET help = 9e999, guess = 9e999, foreseen = -9e999"));
    const auto standing = record.standing(learner, course, kNow);
    REQUIRE(standing);
    for (const double known : known_skills(course, *standing, kEvening_ms + kDay_ms))
        CHECK((known >= 0.0 && known <= 1.0));
    const Readiness ready = readiness(course, *standing, kEvening_ms + kDay_ms);
    CHECK(std::isfinite(ready.expected));
    CHECK((ready.chance_to_pass >= 0.0 && ready.chance_to_pass <= 1.0));
    CHECK(say(standing->foresight).find("inf") == std::string::npos);
    const ExamResult result = finished_exams(record, learner, 1)->at(0);
    CHECK(result.right <= result.of);
    CHECK(result.pass <= result.of);
    CHECK(exam_by_id(record, learner, result.id).value()->items.at(0).foreseen <= 1.0);
    const Answer answer = record.last_answers(learner, 1)->at(0);
    CHECK(answer.guess <= 0.95);
    CHECK(answer.foreseen >= 0.0);
    // Folded from the same rows again.
    REQUIRE(record.database().run("UPDATE learner SET model = ''"));
    const auto folded = record.standing(learner, course, kNow);
    REQUIRE(folded);
    CHECK(std::isfinite(readiness(course, *folded, kEvening_ms).expected));
}

TEST_CASE("a check names every column in which a value stands that cannot be") {
    const TestFolder folder;
    const Course& course = shipped_course();
    Record record = std::move(open_record(folder.path(), kNow)->record);
    const std::int64_t learner = record.add_learner("Ada", kNow)->id;
    for (int i = 0; i < 3; ++i)
        REQUIRE(record.add_answer(learner, course, answer_about("balance", true, kEvening_ms + i),
                                  kNow));
    Exam exam = *new_exam(course, 3, kNow);
    REQUIRE(keep_exam(record, learner, exam));
    const auto faults_after = [&](const std::string& sql) {
        REQUIRE(record.database().run("SAVEPOINT before; " + sql));
        auto faults = *values_out_of_range(record.database());
        REQUIRE(record.database().run("ROLLBACK TO before; RELEASE before"));
        return faults;
    };
    CHECK(faults_after("").empty());
    for (const std::string change :
         {"at_ms = 5", "at_ms = 'soon'", "code = ''", "purpose = 'fun'", "outcome = 'rihgt'",
          "attempt = 0", "attempt = 1e12", "hints = -1", "help = 1.5", "guess = 9e999",
          "guess = 'much'", "foreseen = -0.1", "took_ms = -1", "typed = x'00'",
          "typed = hex(zeroblob(2001))"}) {
        INFO(change);
        const auto faults = faults_after("UPDATE answer SET " + change + " WHERE id = 1");
        REQUIRE(faults.size() == 1);
        const std::string column = change.substr(0, change.find(' '));
        CHECK_THAT(faults[0], ContainsSubstring("In 1 answer the value of " + column));
    }
    for (const std::string change :
         {"pass_share = 2", "started_ms = 1", "allowed_ms = 0", "used_ms = -1", "item = 4000",
          "questions = -1", "right_answers = 1", "finished_ms = -5"}) {
        INFO(change);
        CHECK_FALSE(faults_after("UPDATE exam SET " + change).empty());
    }
    CHECK(faults_after("UPDATE exam_item SET foreseen = 9e999").size() == 1);
    // The check as a whole says so too, and what is read is in range all the same.
    REQUIRE(record.database().run("UPDATE answer SET at_ms = -9223372036854775807 WHERE id = 2"));
    CHECK(check_record(record, course, kNow, {})->faults.size() == 1);
    const auto answers = record.last_answers(learner, 3);
    for (const Answer& answer : answers.value())
        CHECK(answer.at_ms >= kEarliest_ms);
}

TEST_CASE("what is shown of a record from elsewhere cannot move the cursor or turn the text") {
    const TestFolder folder;
    const Course& course = shipped_course();
    Record record = std::move(open_record(folder.path(), kNow)->record);
    const std::int64_t learner = record.add_learner("Ada", kNow)->id;
    Exam exam = *new_exam(course, 3, kNow);
    REQUIRE(keep_exam(record, learner, exam));
    const std::string hostile = "char(27) || '[2J' || char(8238) || char(10)";
    REQUIRE(record.database().run(
        "UPDATE learner SET name = " + hostile + "; UPDATE exam SET title = " + hostile +
        "; UPDATE exam_item SET answer = " + hostile + ", code = " + hostile +
        "; INSERT INTO rule_count VALUES (1, " + hostile + ", 1, 1)"));
    const Exam shown = unfinished_exam(record, learner).value().value();
    const auto learners = record.learners();
    const auto rules = record.frequent_rules(learner, 1);
    for (const std::string& text :
         {learners.value().at(0).name, shown.title, shown.items.at(0).answer,
          shown.items.at(0).code, rules.value().at(0).rule})
        CHECK(text == " [2J ");
}
