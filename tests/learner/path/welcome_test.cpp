#include "learner/path/welcome.h"
#include "learner/shipped_course.h"

using namespace steelyard::learner;

namespace {

/// Two skills learned at the evening, one with a long half-life and one with a short.
Standing two_learned() {
    Standing standing = fresh_standing(shipped_course());
    standing.last_ms = kEvening_ms;
    for (const std::size_t i : {std::size_t{0}, std::size_t{1}}) {
        SkillState& state = standing.skills[i];
        state.known = 0.97;
        state.answers = 5;
        state.last_ms = kEvening_ms;
        state.half_life_d = i == 0 ? 60.0 : 4.0;
    }
    return standing;
}

} // namespace

// 0.25 + 0.72 × 2^(-6/60) = 0.922, above 0.85; 0.25 + 0.72 × 2^(-6/4) = 0.505, below.
TEST_CASE("after a pause it is said what was kept and what faded") {
    const Course& course = shipped_course();
    const WelcomeBack back = welcome_back(course, two_learned(), {kEvening_ms + 6 * kDay_ms, 0});
    CHECK(back.days == 6);
    CHECK(back.kept == std::vector<std::size_t>{0});
    REQUIRE(back.faded.size() == 1);
    CHECK(back.faded.front().skill == 1);
    CHECK_THAT(back.faded.front().now, WithinAbs(0.505, 0.001));
    const std::string said = say(course, back);
    CHECK_THAT(said, ContainsSubstring("Welcome back after 6 days. 1 of 2 skills"));
    CHECK_THAT(said, ContainsSubstring(course.skills[1].skill->title + " (97 % to 50 %)") ||
                         ContainsSubstring(course.skills[1].skill->title + " (97 % to 51 %)"));
}

TEST_CASE("nobody is welcomed back on the same day, nor who had learned nothing") {
    const Course& course = shipped_course();
    CHECK(say(course, welcome_back(course, two_learned(), {kEvening_ms + kMinute_ms, 0})).empty());
    CHECK(say(course, welcome_back(course, fresh_standing(course), {kEvening_ms, 0})).empty());
    Standing tried = fresh_standing(course);
    tried.last_ms = kEvening_ms;
    tried.skills[0].answers = 1;
    tried.skills[0].last_ms = kEvening_ms;
    CHECK(say(course, welcome_back(course, tried, {kEvening_ms + 3 * kDay_ms, 0})).empty());
}

TEST_CASE("a short pause from which nothing faded says so") {
    const Course& course = shipped_course();
    CHECK_THAT(say(course, welcome_back(course, two_learned(), {kEvening_ms + kDay_ms / 2, 0})),
               ContainsSubstring("Welcome back after 1 day. All 2 skills"));
}
