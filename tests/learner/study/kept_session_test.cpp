#include "learner/shipped_course.h"
#include "learner/study/kept_session.h"
#include "learner/study/typed_answers.h"

using namespace steelyard::learner;

namespace {

/// A learner past the placement.
struct Someone {
    Standing standing = [] {
        Standing fresh = fresh_standing(shipped_course());
        fresh.placement_over = true;
        return fresh;
    }();

    Present present() const { return {shipped_course(), standing, {kEvening_ms, 0}}; }

    void go_on(Session& session, const Asking& asking) {
        for (const Answer& answer : new_answers(session, present(), asking, true))
            standing = after_answer(shipped_course(), std::move(standing), answer, 0);
    }
};

/// What comes back of a session with this present question.
KeptSession reopened(const Session& session, const Asking& asking) {
    auto kept = read_session(write_session(session, shipped_course(), asking), shipped_course());
    REQUIRE(kept);
    return std::move(*kept);
}

} // namespace

TEST_CASE("a session that was not ended goes on at the question it was at") {
    Someone who;
    Session session = begin_quick(who.present(), 3);
    auto first = next_question(session, who.present());
    REQUIRE(first);
    mark_answer(*shipped_course().bank, *first, right_answer(first->question));
    who.go_on(session, *first);
    const auto second = next_question(session, who.present());
    REQUIRE(second);

    KeptSession kept = reopened(session, *second);
    const auto again = resume_session(kept, who.present());
    REQUIRE(again);
    CHECK(again->question.code == second->question.code);
    CHECK(kept.session.done == 1);
    CHECK(kept.session.right == 1);
    CHECK(count_text(kept.session, who.present()) == count_text(session, who.present()));
    // And ends when it would have.
    int more = 0;
    auto asking = again;
    while (asking) {
        give_up(*asking);
        who.go_on(kept.session, *asking);
        asking = next_question(kept.session, who.present());
        ++more;
    }
    CHECK(more == 4);
}

TEST_CASE("a question with a kept attempt is not asked again") {
    Someone who;
    Session session = begin_quick(who.present(), 3);
    auto first = next_question(session, who.present());
    REQUIRE(first);
    give_up(*first);
    new_answers(session, who.present(), *first, false);
    KeptSession kept = reopened(session, *first);
    const auto next = resume_session(kept, who.present());
    REQUIRE(next);
    CHECK(next->question.code != first->question.code);
    CHECK(kept.session.done == 1);
}

TEST_CASE("mistakes are asked once more, each as it was") {
    Someone who;
    Session session = begin_quick(who.present(), 3);
    std::vector<std::string> codes;
    while (auto asking = next_question(session, who.present())) {
        codes.push_back(asking->question.code);
        give_up(*asking);
        who.go_on(session, *asking);
    }
    Session redo = begin_redo(who.present(), codes, 9);
    std::vector<std::string> asked;
    while (auto asking = next_question(redo, who.present())) {
        asked.push_back(asking->question.code);
        mark_answer(*shipped_course().bank, *asking, right_answer(asking->question));
        who.go_on(redo, *asking);
    }
    CHECK(asked == codes);
    CHECK(redo.right == static_cast<int>(codes.size()));
}

TEST_CASE("what is no session, or names what is not there, is left alone") {
    Someone who;
    Session session = begin_quick(who.present(), 3);
    const auto first = next_question(session, who.present());
    const std::string text = write_session(session, shipped_course(), *first);
    for (const std::string& broken :
         {std::string(), std::string("{"), std::string("[]"), std::string("{\"version\":1}"),
          text.substr(0, text.size() / 2)})
        CHECK_FALSE(read_session(broken, shipped_course()));
    std::string other = text;
    const std::string family = first->question.family;
    other.replace(other.find(family), family.size(), "no-such-family");
    CHECK_FALSE(read_session(other, shipped_course()));
}
