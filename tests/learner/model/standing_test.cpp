#include "catch.h"
#include "learner/model/standing.h"
#include "learner/shipped_course.h"

#include <cmath>

using namespace steelyard::learner;

// An answer fades by half in 40 later ones, by 2^(-1/40) = 0.98282 in one. After one right answer
// and 40 wrong ones the right one weighs 0.5; all 41 weigh (1 - 0.98282^41) / (1 - 0.98282)
// = 29.605, and with 0.6 foreseen each, 0.6 of that was foreseen.
TEST_CASE("an answer weighs half in the foresight after forty later ones") {
    const Course& course = shipped_course();
    Standing standing = fresh_standing(course);
    standing.placement_over = true;
    for (int i = 0; i <= 40; ++i) {
        Answer answer = answer_about("balance", i == 0, kEvening_ms + i * 1000);
        answer.foreseen = 0.6;
        standing = after_answer(course, standing, answer, 0);
    }
    const double weight = (1.0 - std::pow(2.0, -41.0 / 40.0)) / (1.0 - std::pow(2.0, -1.0 / 40.0));
    CHECK_THAT(weight, WithinAbs(29.605, 5e-4));
    CHECK_THAT(standing.foresight.right, WithinAbs(0.5, 1e-12));
    CHECK_THAT(standing.foresight.weight, WithinAbs(weight, 1e-10));
    CHECK_THAT(standing.foresight.foreseen, WithinAbs(0.6 * weight, 1e-10));
}

// The placement believes in long knowledge as far as it believes in knowledge: half-lives between
// those of a skill just learned, 4 days, and of one long known, 30 days, in equal ratios.
TEST_CASE("what the placement finds known lasts longer, the surer it is") {
    const Course& course = shipped_course();
    Standing standing = fresh_standing(course);
    Answer answer = answer_about("balance", true, kEvening_ms);
    answer.purpose = Purpose::placement;
    standing = after_answer(course, standing, answer, 0);
    REQUIRE_FALSE(standing.placement_over);
    for (const SkillState& state : standing.skills)
        CHECK_THAT(state.half_life_d, WithinRel(4.0 * std::pow(30.0 / 4.0, state.known), 1e-12));
}
