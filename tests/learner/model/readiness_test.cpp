#include "learner/model/readiness.h"
#include "learner/model/staircase.h"
#include "learner/path/quick.h"
#include "learner/shipped_course.h"

#include <cmath>
#include <numeric>
#include <set>

using namespace steelyard::learner;

namespace {

const Clock kNow{kEvening_ms, 0};

/// Every skill known with this chance, as of now.
Standing all_known(double chance) {
    Standing standing = fresh_standing(shipped_course());
    standing.placement_over = true;
    standing.answers = 100;
    for (SkillState& state : standing.skills) {
        state.known = chance;
        state.last_ms = kEvening_ms;
        state.answers = 4;
    }
    return standing;
}

/// Mean score by the definition in readiness.h: no convolution, every question by itself. All
/// skills are known with one chance, all answers of late were foreseen with one.
double mean_score(const Course& course, const std::vector<SkillShare>& shares, double known,
                  const Foresight& seen) {
    const auto moved = [](double chance, double log_odds) {
        return 1.0 / (1.0 + std::exp(-(std::log(chance / (1.0 - chance)) + log_odds)));
    };
    // Three slip rates, nine shifts of the log odds with a standard deviation of 0.8; an answer of
    // late counts as 0.3 of one.
    const double slips[] = {0.5 * 0.10, 1.0 * 0.10, 1.7 * 0.10};
    const double slip_shares[] = {0.3, 0.4, 0.3};
    const double guess_typed = 0.10;
    const double foreseen_known =
        (seen.foreseen / seen.weight - guess_typed) / (1.0 - 0.10 - guess_typed);
    double weights = 0.0;
    double sum = 0.0;
    for (int i = 0; i < 3; ++i) {
        for (int step = -4; step <= 4; ++step) {
            const double shift = 0.5 * step;
            const double likely_known = moved(foreseen_known, shift);
            const double right =
                likely_known * (1.0 - slips[i]) + (1.0 - likely_known) * guess_typed;
            const double weight = slip_shares[i] * std::exp(-shift * shift / (2.0 * 0.8 * 0.8)) *
                                  std::pow(right, 0.3 * seen.right) *
                                  std::pow(1.0 - right, 0.3 * (seen.weight - seen.right));
            double score = 0.0;
            for (const SkillShare& share : shares)
                score += share.questions *
                         (moved(known, shift) * (1.0 - slips[i]) +
                          (1.0 - moved(known, shift)) * course.skills[share.skill].guess);
            weights += weight;
            sum += weight * score;
        }
    }
    return sum / weights;
}

} // namespace

TEST_CASE("the mean of the scores is that of every question taken by itself") {
    const Course& course = shipped_course();
    REQUIRE(course.parameters.slip == 0.10);
    REQUIRE(course.parameters.guess_typed == 0.10);
    for (const double known : {0.3, 0.8}) {
        // Of 30 answers 24 were foreseen to be right; 14, 24 and 29 were.
        for (const double right : {14.0, 24.0, 29.0}) {
            Standing standing = all_known(known);
            standing.foresight = {24.0, right, 30.0};
            const Readiness ready = readiness(course, standing, kEvening_ms);
            // 27 cases of 41 chances each, summed in another order.
            CHECK_THAT(
                ready.expected,
                WithinAbs(mean_score(course, ready.shares, known, standing.foresight), 1e-10));
        }
    }
}

TEST_CASE("the chances of all scores add up to one, and the interval holds what it says") {
    for (const double chance : {0.05, 0.3, 0.6, 0.9, 0.99}) {
        const Readiness ready = readiness(shipped_course(), all_known(chance), kEvening_ms);
        REQUIRE(ready.scores.size() == 41);
        CHECK_THAT(std::accumulate(ready.scores.begin(), ready.scores.end(), 0.0),
                   WithinAbs(1.0, 1e-9));
        double held = 0.0;
        for (int score = ready.low; score <= ready.high; ++score)
            held += ready.scores[static_cast<std::size_t>(score)];
        CHECK_THAT(held, WithinAbs(ready.holds, 1e-9));
        CHECK(held >= 0.9);
        // One score less on either side would hold less than promised.
        CHECK(held - ready.scores[static_cast<std::size_t>(ready.low)] < 0.9);
    }
}

TEST_CASE("who knows more is readier, and who knows nothing does not pass by guessing") {
    double before = -1.0;
    for (const double chance : {0.02, 0.2, 0.4, 0.6, 0.8, 0.98}) {
        const Readiness ready = readiness(shipped_course(), all_known(chance), kEvening_ms);
        CHECK(ready.expected > before);
        before = ready.expected;
    }
    CHECK(readiness(shipped_course(), all_known(0.02), kEvening_ms).chance_to_pass < 0.001);
    CHECK(readiness(shipped_course(), all_known(0.98), kEvening_ms).chance_to_pass > 0.95);
}

TEST_CASE("readiness fades when nothing is practised") {
    const Standing standing = all_known(0.97);
    CHECK(readiness(shipped_course(), standing, kEvening_ms + 10 * kDay_ms).expected <
          readiness(shipped_course(), standing, kEvening_ms).expected - 5.0);
}

TEST_CASE("answers that came out worse than foreseen lower the readiness") {
    Standing worse = all_known(0.8);
    worse.foresight = {24.0, 14.0, 30.0};
    Standing better = all_known(0.8);
    better.foresight = {24.0, 27.0, 30.0};
    CHECK(readiness(shipped_course(), worse, kEvening_ms).expected <
          readiness(shipped_course(), better, kEvening_ms).expected - 1.0);
}

TEST_CASE("the words say whether they would pass, and on what that rests") {
    const Course& course = shipped_course();
    CHECK_THAT(say(readiness(course, fresh_standing(course), kEvening_ms), course),
               ContainsSubstring("Nothing is known"));
    CHECK_THAT(say(readiness(course, all_known(0.99), kEvening_ms), course),
               ContainsSubstring("very likely pass"));
    Standing weak = all_known(0.02);
    weak.foresight = {10.0, 10.0, 50.0};
    const std::string failing = say(readiness(course, weak, kEvening_ms), course);
    CHECK_THAT(failing, ContainsSubstring("probably not pass"));
    CHECK_THAT(failing, ContainsSubstring("28 are needed"));
    CHECK_THAT(failing, ContainsSubstring("100 answers"));
}

TEST_CASE("no score is predicted from few answers, nor from answers to a small part of the exam") {
    const Course& course = shipped_course();
    Standing standing = all_known(0.97);
    standing.answers = kAnswersToPredict - 1;
    Readiness ready = readiness(course, standing, kEvening_ms);
    CHECK(ready.is_too_early());
    const std::string said = say(ready, course);
    CHECK_THAT(said, ContainsSubstring("Too early"));
    CHECK_THAT(said, ContainsSubstring("given 39"));
    CHECK_THAT(said, !ContainsSubstring("pass"));
    standing.answers = kAnswersToPredict;
    CHECK_FALSE(readiness(course, standing, kEvening_ms).is_too_early());
    for (std::size_t i = 1; i < standing.skills.size(); ++i)
        standing.skills[i].answers = 0;
    ready = readiness(course, standing, kEvening_ms);
    CHECK(ready.touched < 0.2);
    CHECK(ready.is_too_early());
}

TEST_CASE("no score is predicted while its interval is as wide as a quarter of the exam") {
    const Course& course = shipped_course();
    const Readiness open = readiness(course, all_known(0.5), kEvening_ms);
    REQUIRE(open.answers >= kAnswersToPredict);
    REQUIRE(open.touched >= kTouchedToPredict);
    CHECK(open.width() >= kWidestPrediction);
    CHECK(open.is_too_early());
    CHECK_THAT(say(open, course), ContainsSubstring("points in a hundred open"));
    const Readiness narrow = readiness(course, all_known(0.97), kEvening_ms);
    CHECK(narrow.width() < kWidestPrediction);
    CHECK_FALSE(narrow.is_too_early());
}

TEST_CASE("the shortest interval is found, also at the end of the scale") {
    const ScoreInterval middle = score_interval({0.05, 0.1, 0.3, 0.4, 0.1, 0.05}, 0.7);
    CHECK(middle.low == 2);
    CHECK(middle.high == 3);
    const ScoreInterval end = score_interval({0.01, 0.04, 0.05, 0.1, 0.8}, 0.9);
    CHECK(end.low == 3);
    CHECK(end.high == 4);
    CHECK(score_interval({1.0}, 0.9).holds == 1.0);
}

TEST_CASE("one answer is told as what it is") {
    const Course& course = shipped_course();
    Standing standing = fresh_standing(course);
    standing = after_answer(course, standing, answer_about("balance", true, kEvening_ms), 0);
    CHECK_THAT(say(readiness(course, standing, kEvening_ms), course),
               ContainsSubstring("1 of 34 skills begun"));
}

TEST_CASE("the staircase goes up from what needs nothing, with words and what is due") {
    const Course& course = shipped_course();
    Standing standing = fresh_standing(course);
    const auto stairs = staircase(course, standing, kNow);
    REQUIRE(stairs.size() == 34);
    CHECK(stairs.front().level == 1);
    CHECK(stairs.front().open);
    for (std::size_t i = 1; i < stairs.size(); ++i)
        CHECK(stairs[i].level >= stairs[i - 1].level);
    CHECK(stairs.back().mastery == Mastery::untried);
    CHECK_FALSE(stairs.back().open);
    standing = all_known(0.97);
    for (const Stair& stair : staircase(course, standing, kNow)) {
        CHECK(stair.mastery == Mastery::mastered);
        CHECK_FALSE(stair.due);
    }
    for (const Stair& stair : staircase(course, standing, {kEvening_ms + 6 * kDay_ms, 0}))
        CHECK(stair.due);
}

TEST_CASE("a quick quiz is five questions of different skills that need no long computing") {
    const Course& course = shipped_course();
    for (const std::uint64_t seed : {1U, 2U, 3U, 4U}) {
        const auto quiz = quick_quiz(course, fresh_standing(course), kNow, seed);
        REQUIRE(quiz.size() == kQuickQuestions);
        std::set<std::size_t> skills;
        for (const Next& next : quiz) {
            skills.insert(next.skill);
            CHECK((next.family->kind != steelyard::problems::Kind::numeric ||
                   next.family->base_difficulty == 1));
        }
        CHECK(skills.size() == kQuickQuestions);
    }
}
