#include "learner/shipped_course.h"
#include "learner/study/session.h"
#include "learner/study/typed_answers.h"

#include <set>

using namespace steelyard;
using namespace steelyard::learner;

namespace {

/// A learner at a moment, who keeps what there is to keep.
struct Sitting {
    Standing standing = fresh_standing(shipped_course());
    Clock now{kEvening_ms, 0};
    std::vector<Answer> kept;

    Present present() const { return {shipped_course(), standing, now}; }

    void keep(Session& session, const Asking& asking, bool goes_on) {
        for (Answer& answer : new_answers(session, present(), asking, goes_on)) {
            standing = after_answer(shipped_course(), standing, answer, 0);
            kept.push_back(std::move(answer));
        }
    }
};

void answer_right(Asking& asking) {
    mark_answer(*shipped_course().bank, asking, right_answer(asking.question));
}

/// A session of one skill whose worked example was read.
Session practice_of(const char* skill, Sitting& sitting) {
    sitting.standing.placement_over = true;
    Session session = begin_skill(sitting.present(), *shipped_course().find(skill), 5);
    const auto example = next_question(session, sitting.present());
    REQUIRE(is_example(session));
    sitting.keep(session, *example, true);
    sitting.kept.clear();
    return session;
}

/// The next question of a session that is a typed one.
Asking typed_question(Session& session, Sitting& sitting) {
    for (int i = 0; i < 20; ++i) {
        auto asking = next_question(session, sitting.present());
        REQUIRE(asking);
        if (!is_example(session) && wanted_number(asking->question))
            return std::move(*asking);
        session.done = 0; // go on looking
        sitting.keep(session, *asking, true);
        sitting.kept.clear();
        session.done = 0;
    }
    FAIL("no typed question");
    return {};
}

} // namespace

TEST_CASE("a quick quiz asks five questions, counts what is right and how long it took") {
    Sitting sitting;
    Session session = begin_quick(sitting.present(), 7);
    std::set<std::string> families;
    while (auto asking = next_question(session, sitting.present())) {
        families.insert(asking->question.family);
        CHECK_FALSE(has_hint(*asking));
        CHECK_FALSE(may_skip(*asking));
        sitting.now.utc_ms += 20 * kSecond_ms;
        if (families.size() == 3)
            give_up(*asking);
        else
            answer_right(*asking);
        sitting.keep(session, *asking, true);
    }
    CHECK(families.size() == 5);
    REQUIRE(sitting.kept.size() == 5);
    for (const Answer& answer : sitting.kept) {
        CHECK(answer.purpose == Purpose::quick);
        CHECK(answer.took_ms == 20 * kSecond_ms);
    }
    CHECK(sitting.kept[2].outcome == Outcome::gave_up);
    CHECK(session.ended);
    CHECK(session.right == 4);
    CHECK(result_text(session) == "4 of 5 right at the first try without a hint, in 1:40 minutes.");
}

TEST_CASE("a newcomer's session begins with a placement, which ends and gives no hints") {
    Sitting sitting;
    Session session = begin_day(sitting.present(), 3);
    int placed = 0;
    auto asking = next_question(session, sitting.present());
    for (; asking && session.placing; ++placed) {
        CHECK_FALSE(has_hint(*asking));
        CHECK_FALSE(asking->rules.explains);
        CHECK_FALSE(session.target);
        answer_right(*asking);
        sitting.now.utc_ms += 1000;
        sitting.keep(session, *asking, true);
        CHECK(sitting.kept.back().purpose == Purpose::placement);
        asking = next_question(session, sitting.present());
    }
    CHECK(placed > 0);
    CHECK(placed <= shipped_course().parameters.placement_questions);
    CHECK(asking);
    CHECK(session.done == 0);
    CHECK(session.target); // settled only now, from the plan after the placement
}

TEST_CASE("a session of one skill asks only that skill, with a worked example first") {
    Sitting sitting;
    Session session = begin_skill(sitting.present(), *shipped_course().find("lever-class"), 5);
    const auto asking = next_question(session, sitting.present());
    REQUIRE(asking);
    CHECK(asking->question.skill == "lever-class");
    CHECK(is_example(session));
    CHECK(asking->finished);
    CHECK_THAT(introduction(session, shipped_course(), *asking),
               ContainsSubstring("A worked example first"));
    sitting.keep(session, *asking, false); // whoever leaves here has not read it
    CHECK(sitting.kept.empty());
    sitting.keep(session, *asking, true);
    REQUIRE(sitting.kept.size() == 1);
    CHECK(sitting.kept[0].outcome == Outcome::example);
    CHECK(sitting.kept[0].help == 1.0);
    CHECK(session.done == 0);
}

TEST_CASE("a skipped question is kept as skipped with the help it had, and is no evidence") {
    Sitting sitting;
    Session session = practice_of("moment-arm-oblique", sitting);
    Asking asking = typed_question(session, sitting);
    give_hint(asking);
    CHECK(may_skip(asking));
    sitting.keep(session, asking, true);
    REQUIRE(sitting.kept.size() == 1);
    CHECK(sitting.kept[0].outcome == Outcome::skipped);
    CHECK(sitting.kept[0].hints == 1);
    CHECK(sitting.kept[0].help > 0.0);
    CHECK_FALSE(sitting.kept[0].is_evidence());
    CHECK(session.done == 1);
    CHECK(session.answered == 0);
}

TEST_CASE("both tries of a number are kept, each when it was made, and the first one counts") {
    Sitting sitting;
    Session session = practice_of("moment-arm-oblique", sitting);
    Asking asking = typed_question(session, sitting);
    sitting.now.utc_ms += 10 * kSecond_ms;
    mark_answer(*shipped_course().bank, asking,
                std::to_string(3.7 * wanted_number(asking.question)->value));
    sitting.keep(session, asking, false);
    REQUIRE(sitting.kept.size() == 1);
    CHECK(sitting.kept[0].took_ms == 10 * kSecond_ms);
    sitting.keep(session, asking, false); // nothing new
    CHECK(sitting.kept.size() == 1);
    sitting.now.utc_ms += 5 * kSecond_ms;
    answer_right(asking);
    sitting.keep(session, asking, true);
    REQUIRE(sitting.kept.size() == 2);
    CHECK(sitting.kept[0].outcome == Outcome::wrong);
    CHECK(sitting.kept[0].is_evidence());
    CHECK(sitting.kept[1].outcome == Outcome::right);
    CHECK(sitting.kept[1].attempt == 2);
    CHECK(sitting.kept[1].took_ms == 15 * kSecond_ms);
    CHECK_FALSE(sitting.kept[1].is_evidence());
    CHECK(session.answered == 1);
    CHECK(session.right == 0);
}

TEST_CASE("a question that was answered wrong and then left is not kept as skipped too") {
    Sitting sitting;
    Session session = practice_of("moment-arm-oblique", sitting);
    Asking asking = typed_question(session, sitting);
    mark_answer(*shipped_course().bank, asking,
                std::to_string(3.7 * wanted_number(asking.question)->value));
    sitting.keep(session, asking, true);
    REQUIRE(sitting.kept.size() == 1);
    CHECK(sitting.kept[0].outcome == Outcome::wrong);
}

TEST_CASE("a session whose questions are all skipped ends all the same") {
    Sitting sitting;
    sitting.standing.placement_over = true;
    Session session = begin_day(sitting.present(), 3, 4);
    int asked = 0;
    while (auto asking = next_question(session, sitting.present())) {
        REQUIRE(++asked < 30);
        sitting.keep(session, *asking, true);
    }
    CHECK(session.done == 4);
    CHECK(result_text(session) == "Nothing was answered.");
}

TEST_CASE("every skill is taught, shown, shown in part and only then asked") {
    for (std::size_t skill = 0; skill < shipped_course().skills.size(); ++skill) {
        INFO(shipped_course().skills[skill].skill->id);
        Sitting sitting;
        sitting.standing.placement_over = true;
        Session session = begin_skill(sitting.present(), skill, 5);
        std::vector<Shown> shown;
        for (int i = 0; i < 3; ++i) {
            auto asking = next_question(session, sitting.present());
            REQUIRE(asking);
            CHECK(is_new(session, sitting.present()) == (i == 0));
            shown.push_back(session.next.shown);
            if (!is_example(session))
                answer_right(*asking);
            sitting.now.utc_ms += kSecond_ms;
            sitting.keep(session, *asking, true);
        }
        CHECK(shown.front() == Shown::worked_example);
        CHECK(shown[1] != Shown::worked_example);
        CHECK_FALSE(sitting.kept.front().is_evidence());
    }
}

TEST_CASE("what somebody did not know in the placement is still taught") {
    Sitting sitting;
    Session session = begin_day(sitting.present(), 3);
    auto asking = next_question(session, sitting.present());
    for (; asking && session.placing; asking = next_question(session, sitting.present())) {
        give_up(*asking);
        sitting.now.utc_ms += kSecond_ms;
        sitting.keep(session, *asking, true);
    }
    REQUIRE(asking);
    CHECK(is_new(session, sitting.present()));
}

TEST_CASE("a quick quiz and a placement ask and do not teach") {
    Sitting sitting;
    Session quiz = begin_quick(sitting.present(), 7);
    REQUIRE(next_question(quiz, sitting.present()));
    CHECK_FALSE(is_new(quiz, sitting.present()));
    Session day = begin_day(sitting.present(), 3);
    REQUIRE(next_question(day, sitting.present()));
    REQUIRE(day.placing);
    CHECK_FALSE(is_new(day, sitting.present()));
}
