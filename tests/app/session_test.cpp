#include "app/practice/desk.h"
#include "app/practice/session.h"
#include "learner/shipped_course.h"

#include <fstream>
#include <set>

namespace steelyard::app {

namespace {

using learner::Clock;
using learner::kEvening_ms;
using learner::Outcome;
using learner::Purpose;
using learner::shipped_course;
using learner::Standing;

/// Answers the question on the screen right, by whatever way it is answered.
void answer_right(QuestionModel& model) {
    if (is_placed(model.question))
        place(model, problems::right_place(model.question));
    else if (is_typed(model.question))
        model.typed = model.question.kind == problems::Kind::place
                          ? model.question.spots[model.question.correct_spot].letter
                          : model.question.answer_text;
    else
        for (const std::size_t choice : model.question.correct)
            choose(model, choice);
    mark_answer(*shipped_course().bank, model);
}

} // namespace

TEST_CASE("A quick quiz asks five questions, counts what is right and how long it took") {
    Standing standing = fresh_standing(shipped_course());
    Clock now{kEvening_ms, 0};
    Session session = begin_quick({shipped_course(), standing, now}, 7);
    std::set<std::string> families;
    std::vector<learner::Answer> kept;
    for (auto model = next_question(session, {shipped_course(), standing, now}); model;
         model = next_question(session, {shipped_course(), standing, now})) {
        families.insert(model->question.family);
        now.utc_ms += 20 * learner::kSecond_ms;
        if (families.size() == 3)
            give_up(*model);
        else
            answer_right(*model);
        for (auto& answer : new_answers(session, {shipped_course(), standing, now}, *model, true)) {
            standing = after_answer(shipped_course(), standing, answer, 0);
            kept.push_back(std::move(answer));
        }
    }
    CHECK(families.size() == 5);
    REQUIRE(kept.size() == 5);
    for (const learner::Answer& answer : kept) {
        CHECK(answer.purpose == Purpose::quick);
        CHECK(answer.took_ms == 20 * learner::kSecond_ms);
    }
    CHECK(kept[2].outcome == Outcome::gave_up);
    CHECK(session.ended);
    CHECK(session.right == 4);
    CHECK(result_text(session) == "4 of 5 right at the first try without a hint, in 1:40 minutes.");
}

TEST_CASE("A newcomer's session begins with a placement, which ends and gives no hints") {
    Standing standing = fresh_standing(shipped_course());
    Clock now{kEvening_ms, 0};
    Session session = begin_day({shipped_course(), standing, now}, 3);
    int placed = 0;
    auto model = next_question(session, {shipped_course(), standing, now});
    for (; model && session.placing; ++placed) {
        CHECK_FALSE(has_hint(*model));
        answer_right(*model);
        now.utc_ms += 1000;
        for (const auto& answer :
             new_answers(session, {shipped_course(), standing, now}, *model, true)) {
            CHECK(answer.purpose == Purpose::placement);
            standing = after_answer(shipped_course(), standing, answer, 0);
        }
        model = next_question(session, {shipped_course(), standing, now});
    }
    CHECK(placed > 0);
    CHECK(placed <= shipped_course().parameters.placement_questions);
    CHECK(model);
    CHECK(session.done == 0);
}

TEST_CASE("A session of one skill asks only that skill, with a worked example first") {
    Standing standing = fresh_standing(shipped_course());
    const Clock now{kEvening_ms, 0};
    const std::size_t skill = *shipped_course().find("lever-class");
    Session session = begin_skill({shipped_course(), standing, now}, skill, 5);
    auto model = next_question(session, {shipped_course(), standing, now});
    REQUIRE(model);
    CHECK(model->question.skill == "lever-class");
    CHECK(is_example(session));
    CHECK(model->finished);
    const auto kept = new_answers(session, {shipped_course(), standing, now}, *model, true);
    REQUIRE(kept.size() == 1);
    CHECK(kept[0].outcome == Outcome::example);
    CHECK(session.done == 0);
}

TEST_CASE("A skipped question is kept as skipped, which is no evidence") {
    Standing standing = fresh_standing(shipped_course());
    standing.placement_over = true;
    const Clock now{kEvening_ms, 0};
    Session session =
        begin_skill({shipped_course(), standing, now}, *shipped_course().find("lever-class"), 5);
    session.next.shown = learner::Shown::plain;
    auto model = next_question(session, {shipped_course(), standing, now});
    session.next.shown = learner::Shown::plain;
    const auto kept = new_answers(session, {shipped_course(), standing, now}, *model, true);
    REQUIRE(kept.size() == 1);
    CHECK(kept[0].outcome == Outcome::skipped);
    CHECK_FALSE(kept[0].is_evidence());
    CHECK(session.done == 1);
}

TEST_CASE("What the desk keeps is there again for the next program, and for the terminal") {
    const learner::TestFolder folder;
    const Clock now{kEvening_ms, 0};
    const auto assets = std::filesystem::path(STEELYARD_SOURCE_DIR) / "assets";
    const problems::Bank& bank = *shipped_course().bank;
    {
        Desk desk(bank, assets, folder.path(), now);
        CHECK(desk.wants_name());
        CHECK(desk.add_learner("Ada", now).empty());
        CHECK_FALSE(desk.add_learner("ada", now).empty());
        CHECK(desk.set_exam_day("2026-12-03", now).empty());
        CHECK(desk.set_exam_day("2026-11-03", now).find("past") != std::string::npos);
        CHECK_FALSE(desk.set_exam_day("soon", now).empty());
        CHECK(desk.keeps());
        desk.keep_answer(learner::answer_about("lever-class", true, kEvening_ms), now);
        CHECK(desk.standing().answers == 1);
    }
    auto opened = learner::open_record(folder.path(), now);
    REQUIRE(opened);
    const auto ada = opened->record.learner_named("Ada");
    REQUIRE((ada && *ada));
    CHECK((*ada)->answers == 1);
    CHECK(learner::write_day(*(*ada)->exam_day) == "2026-12-03");
    const Desk again(bank, assets, folder.path(), now);
    REQUIRE(again.learner());
    CHECK(again.learner()->name == "Ada");
}

TEST_CASE("Without a record practice goes on, keeps nothing and says so") {
    const learner::TestFolder folder;
    const auto blocked = folder.path() / "file";
    std::ofstream(blocked) << "no folder";
    const Clock now{kEvening_ms, 0};
    Desk desk(*shipped_course().bank, std::filesystem::path(STEELYARD_SOURCE_DIR) / "assets",
              blocked, now);
    CHECK_FALSE(desk.keeps());
    CHECK_FALSE(desk.wants_name());
    REQUIRE(desk.notices().size() == 2);
    CHECK(desk.notices()[1].find("nothing of it is kept") != std::string::npos);
    desk.keep_answer(learner::answer_about("lever-class", true, kEvening_ms), now);
    CHECK(desk.standing().answers == 1);
}

} // namespace steelyard::app
