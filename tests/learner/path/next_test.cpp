#include "learner/path/next.h"
#include "learner/path/plan.h"
#include "learner/shipped_course.h"
#include "problems/draw/instance.h"
#include "problems/draw/random.h"
#include "problems/question/paper.h"
#include "problems/question/question_code.h"

#include <set>

using namespace steelyard::learner;

namespace {

const Clock kNow{kEvening_ms, 0};

/// Somebody who has left the placement out.
Standing beginner() {
    Standing standing = fresh_standing(shipped_course());
    standing.placement_over = true;
    return standing;
}

Answer answer_to_next(const Next& next, bool right, TimeMs at_ms) {
    Answer answer;
    answer.at_ms = at_ms;
    answer.code = std::to_string(at_ms);
    answer.family = next.family->id;
    answer.skill = next.family->skill;
    answer.purpose = next.reason == Reason::placement ? Purpose::placement : Purpose::practice;
    answer.guess = shipped_course().skills[next.skill].guess;
    answer.outcome = next.shown == Shown::worked_example ? Outcome::example
                     : right                             ? Outcome::right
                                                         : Outcome::wrong;
    return answer;
}

} // namespace

TEST_CASE("a newcomer is placed by at most twelve questions") {
    const Course& course = shipped_course();
    for (const bool right : {true, false}) {
        Standing standing = fresh_standing(course);
        int asked = 0;
        for (TimeMs at = kEvening_ms;; at += kMinute_ms) {
            const Next next = choose_next(course, standing, {at, 0}, 7);
            if (next.reason != Reason::placement)
                break;
            CHECK(next.shown == Shown::plain);
            REQUIRE(++asked <= 12);
            standing = after_answer(course, standing, answer_to_next(next, right, at), 0);
        }
        CHECK(asked >= 3);
        // Someone who answers all knows the top of the staircase, someone who answers none the
        // foot of it no more.
        const std::size_t foot = *course.find("name-the-parts");
        const std::size_t top = *course.find("choose-a-change");
        CHECK((standing.skills[top].known > 0.5) == right);
        CHECK((standing.skills[foot].known > 0.5) == right);
    }
}

TEST_CASE("never the same family twice running, and no two of one strategy while another is left") {
    const Course& course = shipped_course();
    Standing standing = fresh_standing(course);
    const steelyard::problems::Family* last = nullptr;
    int same_strategy = 0;
    for (int i = 0; i < 300; ++i) {
        const TimeMs at = kEvening_ms + i * kMinute_ms;
        const Next next = choose_next(course, standing, {at, 0}, static_cast<std::uint64_t>(i));
        REQUIRE(next.family != nullptr);
        REQUIRE(next.family != last);
        // In the placement the most telling skill goes first, whatever its strategy.
        if (last != nullptr && next.reason != Reason::placement)
            same_strategy += last->strategy == next.family->strategy ? 1 : 0;
        last = next.family;
        standing = after_answer(course, standing, answer_to_next(next, i % 4 != 0, at), 0);
    }
    CHECK(same_strategy == 0);
}

TEST_CASE("an hour of learning asks nothing twice") {
    using namespace steelyard::problems;
    const Course& course = shipped_course();
    constexpr int kQuestions = 120;
    for (const std::uint64_t seed : {1U, 2U, 3U, 4U, 5U}) {
        Random random(seed);
        Standing standing = fresh_standing(course);
        std::vector<Instance> asked;
        std::string again; // families
        for (int i = 0; i < kQuestions; ++i) {
            const TimeMs at = kEvening_ms + i * kMinute_ms / 2;
            const Next next = choose_next(course, standing, {at, 0}, random());
            const auto question = question_for(course, standing, next, random());
            REQUIRE(question);
            Instance instance;
            draw_instance(*next.family, read_code(question->code)->seed, instance);
            for (const Instance& before : asked)
                again += exactly_same(before, instance) ? next.family->id + " " : "";
            asked.push_back(std::move(instance));
            Answer answer = answer_to_next(next, draw_below(random, 3) != 0, at);
            answer.code = question->code;
            standing = after_answer(course, standing, answer, 0);
        }
        INFO(again);
        CHECK(again.empty());
    }
}

TEST_CASE("the first new skill is one that needs nothing, and begins with a worked example") {
    const Course& course = shipped_course();
    const Next first = choose_next(course, beginner(), kNow, 1);
    CHECK(first.reason == Reason::fresh);
    CHECK(first.shown == Shown::worked_example);
    CHECK(course.skills[first.skill].needs.empty());
}

TEST_CASE("a skill stays closed until its prerequisites are known well") {
    const Course& course = shipped_course();
    Standing standing = beginner();
    for (int i = 0; i < 200; ++i) {
        const TimeMs at = kEvening_ms + i * kMinute_ms;
        const Next next = choose_next(course, standing, {at, 0}, static_cast<std::uint64_t>(i));
        if (next.reason == Reason::fresh)
            for (const std::size_t need : course.skills[next.skill].needs)
                CHECK(known_at(standing.skills[need], at, course.parameters) >=
                      course.parameters.opens_above);
        standing = after_answer(course, standing, answer_to_next(next, true, at), 0);
    }
    CHECK(standing.answers > 100);
}

TEST_CASE("steps are left out from the last one backwards as a skill grows") {
    const Course& course = shipped_course();
    const auto question = steelyard::problems::question_of_family(
        *course.bank, *course.bank->find_family("biceps-force"), 1);
    REQUIRE(question);
    const std::size_t steps = question->steps.size();
    REQUIRE(steps >= 3);
    Next next;
    next.shown = Shown::worked_example;
    CHECK(done_steps(next, *question) == steps);
    next.shown = Shown::faded;
    next.blank_steps = 1;
    CHECK(done_steps(next, *question) == steps - 1);
    next.blank_steps = 2;
    CHECK(done_steps(next, *question) == steps - 2);
    next.shown = Shown::plain;
    CHECK(done_steps(next, *question) == 0);
}

// Gaps of 0.2 x days left (Cepeda et al. 2008), bounded to 1 to 7 days: 7 -> 1.4, 14 -> 2.8, 28 ->
// 5.6, worked by hand.
TEST_CASE("the gap to the next review is a fifth of the days left") {
    const Parameters parameters;
    CHECK_THAT(review_gap_days(parameters, 7), WithinAbs(1.4, 1e-12));
    CHECK_THAT(review_gap_days(parameters, 14), WithinAbs(2.8, 1e-12));
    CHECK_THAT(review_gap_days(parameters, 28), WithinAbs(5.6, 1e-12));
    CHECK(review_gap_days(parameters, 2) == 1.0);
    CHECK(review_gap_days(parameters, 300) == 7.0);
}

TEST_CASE("a missed skill is due at once, a mastered one after its gap") {
    const Course& course = shipped_course();
    SkillState state = untouched(course.parameters);
    state.known = 0.97;
    state.last_ms = kEvening_ms;
    state.answers = 3;
    // Two millisecond-rounded moments: a millisecond apart at most.
    CHECK_THAT(gap_days(kEvening_ms, due_at(course, state, 14, kEvening_ms)),
               WithinAbs(2.8, 2.0 / static_cast<double>(kDay_ms)));
    state.known = 0.9;
    CHECK(due_at(course, state, 14, kEvening_ms) == kEvening_ms);
}

// Known with 0.97 just after the answer, 0.25 at the start, a half-life of 30 days, the exam five
// days off. On the exam day, five days after the answer: 0.25 + 0.72 × 2^(-5/30) = 0.8914, above
// the 0.85 that needs no review. When five days have passed since the answer and the exam is again
// five off, it will be ten days after: 0.25 + 0.72 × 2^(-10/30) = 0.8215. The gap of 0.2 × 5 = 1
// day is over by then, so it is due.
TEST_CASE("a skill keeps until the exam by the time since its answer and the days left") {
    const Course& course = shipped_course();
    SkillState state = untouched(course.parameters);
    REQUIRE(state.known == 0.25);
    state.known = 0.97;
    state.half_life_d = 30.0;
    state.last_ms = kEvening_ms;
    state.answers = 3;
    CHECK(due_at(course, state, 5, kEvening_ms) == kEvening_ms + 5 * kDay_ms);
    const TimeMs later_ms = kEvening_ms + 5 * kDay_ms;
    CHECK(due_at(course, state, 5, later_ms) == later_ms);
}

// Half-life 4 days, 14 days left: 0.25 + 0.72 × 2^(-14/4) = 0.31 on the exam day, so a review is
// needed; the gap of 0.2 × 14 = 2.8 days runs from the answer. A day after it, 1.8 are left.
TEST_CASE("the gap to a review runs from the last answer, not from the present") {
    const Course& course = shipped_course();
    SkillState state = untouched(course.parameters);
    state.known = 0.97;
    state.last_ms = kEvening_ms;
    state.answers = 3;
    const TimeMs day_later_ms = kEvening_ms + kDay_ms;
    CHECK_THAT(gap_days(day_later_ms, due_at(course, state, 14, day_later_ms)),
               WithinAbs(1.8, 2.0 / static_cast<double>(kDay_ms)));
    const TimeMs three_later_ms = kEvening_ms + 3 * kDay_ms;
    CHECK(due_at(course, state, 14, three_later_ms) == three_later_ms);
}

TEST_CASE("an answer from the future makes its skill due") {
    const Course& course = shipped_course();
    SkillState state = untouched(course.parameters);
    state.known = 0.99;
    state.answers = 3;
    state.last_ms = kEvening_ms + 1000 * kDay_ms;
    CHECK(due_at(course, state, 14, kEvening_ms) == kEvening_ms);
}

TEST_CASE("a plan asks for more a day when fewer days are left, and says so") {
    const Course& course = shipped_course();
    Standing standing = beginner();
    standing.exam_day = day_of(kNow) + std::chrono::days(30);
    const StudyPlan month = plan_study(course, standing, kNow);
    standing.exam_day = day_of(kNow) + std::chrono::days(8);
    const StudyPlan week = plan_study(course, standing, kNow);
    CHECK(week.days == 8);
    CHECK(week.per_day > month.per_day);
    CHECK_THAT(say(week), ContainsSubstring("8 days to the exam: "));
    standing.exam_day = day_of(kNow) + std::chrono::days(1);
    const StudyPlan eve = plan_study(course, standing, kNow);
    CHECK_FALSE(eve.fits);
    CHECK(eve.per_day == course.parameters.plan_most_per_day);
    CHECK_THAT(say(eve), ContainsSubstring("1 day to the exam"));
}

TEST_CASE("questions to mastery agree with a long simulation") {
    const Parameters parameters;
    steelyard::problems::Random random(5);
    double sum = 0.0;
    constexpr int kRuns = 20000;
    for (int i = 0; i < kRuns; ++i) {
        double known = parameters.start;
        while (known < parameters.mastered) {
            const double chance = chance_right(known, 0.1, parameters.slip);
            const bool right = static_cast<double>(
                                   steelyard::problems::draw_below(random, 1000000)) < chance * 1e6;
            known = after_learning(after_evidence(known, right, 0.1, parameters.slip),
                                   parameters.learn);
            sum += 1.0;
        }
    }
    // 20 000 runs leave about 1 % of noise; the grid is good to a few per cent.
    CHECK_THAT(questions_to_master(parameters, parameters.start, 0.1),
               WithinRel(sum / kRuns, 0.05));
}
