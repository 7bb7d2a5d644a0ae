#include "catch.h"
#include "learner/model/mastery.h"

using namespace steelyard::learner;

namespace {

/// The values below are given to six decimals.
constexpr double kSixDecimals = 5e-7;

Parameters worked_parameters() {
    Parameters parameters;
    parameters.start = 0.3;
    parameters.learn = 0.2;
    parameters.slip = 0.1;
    return parameters;
}

Answer answer(bool right, TimeMs at_ms = 1000, double guess = 0.1) {
    Answer given;
    given.at_ms = at_ms;
    given.guess = guess;
    given.outcome = right ? Outcome::right : Outcome::wrong;
    return given;
}

constexpr TimeMs kDays = kDay_ms;

} // namespace

// Worked by hand from the equations of Corbett & Anderson 1995 with L0 = 0.3, T = 0.2, S = G = 0.1:
// right: 0.3 x 0.9 / (0.3 x 0.9 + 0.7 x 0.1) = 0.27 / 0.34 = 0.794118; + 0.205882 x 0.2 = 0.835294.
TEST_CASE("knowledge tracing gives the values worked from its equations") {
    double known = 0.3;
    const double evidence[] = {0.794118, 0.978560, 0.864261, 0.986645};
    const double learned[] = {0.835294, 0.982848, 0.891409, 0.989316};
    const bool right[] = {true, true, false, true};
    for (int i = 0; i < 4; ++i) {
        const double after = after_evidence(known, right[i], 0.1, 0.1);
        CHECK_THAT(after, WithinAbs(evidence[i], kSixDecimals));
        known = after_learning(after, 0.2);
        CHECK_THAT(known, WithinAbs(learned[i], kSixDecimals));
    }
}

TEST_CASE("one of four choices is weaker evidence than a typed number") {
    // The same equations with G = 1/4.
    double known = 0.3;
    for (const double expected : {0.685393, 0.909532, 0.978490}) {
        known = after_learning(after_evidence(known, true, 0.25, 0.1), 0.2);
        CHECK_THAT(known, WithinAbs(expected, kSixDecimals));
    }
}

TEST_CASE("folding answers into a skill follows the same equations") {
    SkillState state = untouched(worked_parameters());
    for (const bool right : {true, true, false, true})
        state = after_answer(state, answer(right), worked_parameters());
    CHECK_THAT(state.known, WithinAbs(0.989316, kSixDecimals));
    CHECK(state.answers == 4);
    CHECK(state.right == 3);
}

// Settles & Meeder 2016: p = 2^(-delta/h); with h = 2.828 days, p(1 d) = 0.7827 and p(3 d) = 0.4794
// (worked from the formula with the paper's form of h = 2^1.5).
TEST_CASE("what was learned fades by half in a half-life, down to the start") {
    const double half_life_d = std::exp2(1.5);
    CHECK_THAT(after_gap(1.0, 0.0, 1.0, half_life_d), WithinAbs(0.7827, 5e-5));
    CHECK_THAT(after_gap(1.0, 0.0, 3.0, half_life_d), WithinAbs(0.4794, 5e-5));
    CHECK_THAT(after_gap(0.95, 0.25, half_life_d, half_life_d), WithinAbs(0.60, 1e-12));
    // Below the start there is nothing to forget.
    CHECK(after_gap(0.1, 0.25, 100.0, half_life_d) == 0.1);
}

TEST_CASE("a right answer with the whole solution shown says nothing") {
    const double guess = guess_with_help(0.1, 0.1, 1.0);
    CHECK_THAT(after_evidence(0.4, true, guess, 0.1), WithinAbs(0.4, 1e-12));
    CHECK(guess_with_help(0.1, 0.1, 0.0) == 0.1);
    // Half of it: worth something, but less.
    const double half = guess_with_help(0.1, 0.1, 0.5);
    CHECK(after_evidence(0.4, true, half, 0.1) > 0.4);
    CHECK(after_evidence(0.4, true, half, 0.1) < after_evidence(0.4, true, 0.1, 0.1));
}

TEST_CASE("a skipped question and a second attempt change nothing") {
    const Parameters parameters;
    const SkillState before = after_answer(untouched(parameters), answer(true), parameters);
    Answer skipped = answer(true);
    skipped.outcome = Outcome::skipped;
    CHECK(after_answer(before, skipped, parameters) == before);
    Answer second = answer(true);
    second.attempt = 2;
    CHECK(after_answer(before, second, parameters) == before);
}

TEST_CASE("giving up counts as wrong") {
    const Parameters parameters;
    Answer gave_up = answer(false);
    gave_up.outcome = Outcome::gave_up;
    CHECK(after_answer(untouched(parameters), gave_up, parameters) ==
          after_answer(untouched(parameters), answer(false), parameters));
}

TEST_CASE("a spaced right answer doubles the half-life, a wrong one halves it") {
    const Parameters parameters;
    SkillState state = after_answer(untouched(parameters), answer(true, 1000), parameters);
    CHECK(state.half_life_d == parameters.half_life_d);
    state = after_answer(state, answer(true, 2000), parameters);
    CHECK(state.half_life_d == parameters.half_life_d);
    state = after_answer(state, answer(true, 2000 + 2 * kDays), parameters);
    CHECK(state.half_life_d == 2 * parameters.half_life_d);
    state = after_answer(state, answer(true, 2000 + 5 * kDays), parameters);
    CHECK(state.half_life_d == 4 * parameters.half_life_d);
    state = after_answer(state, answer(false, 2000 + 8 * kDays), parameters);
    CHECK(state.half_life_d == 2 * parameters.half_life_d);
}

TEST_CASE("a clock that was set back makes no gap") {
    const Parameters parameters;
    const SkillState state =
        after_answer(untouched(parameters), answer(true, 100 * kDays), parameters);
    CHECK(known_at(state, 10 * kDays, parameters) == state.known);
    const SkillState next = after_answer(state, answer(true, 10 * kDays), parameters);
    CHECK(next.known > state.known);
    CHECK(next.last_ms == 10 * kDays);
}

// Halves of 16, 8, 6 and 3 days are 8, 4, 3 and 1.5; a skill just learned has 4. So 8 and 4 stand,
// 3 is lifted to 4, and what was below 4 already is left as it is.
TEST_CASE("misses do not shorten the half-life below that of a skill just learned") {
    const Parameters parameters;
    REQUIRE(parameters.half_life_d == 4.0);
    const auto after_a_miss = [&](double half_life_d) {
        SkillState state = untouched(parameters);
        state.half_life_d = half_life_d;
        return after_answer(state, answer(false), parameters).half_life_d;
    };
    CHECK(after_a_miss(16.0) == 8.0);
    CHECK(after_a_miss(8.0) == 4.0);
    CHECK(after_a_miss(6.0) == 4.0);
    CHECK(after_a_miss(4.0) == 4.0);
    CHECK(after_a_miss(3.0) == 3.0);
}

TEST_CASE("the half-life grows no longer than the longest") {
    const Parameters parameters;
    REQUIRE(parameters.longest_half_life_d == 60.0);
    SkillState state = after_answer(untouched(parameters), answer(true, 1000), parameters);
    state.half_life_d = 40.0;
    CHECK(after_answer(state, answer(true, 1000 + kDays), parameters).half_life_d == 60.0);
}

TEST_CASE("a right answer is spaced after half a day, and counts with less than half shown") {
    const Parameters parameters;
    const SkillState state = after_answer(untouched(parameters), answer(true, 1000), parameters);
    const auto half_life_d = [&](TimeMs later_ms, double help) {
        Answer given = answer(true, 1000 + later_ms);
        given.help = help;
        return after_answer(state, given, parameters).half_life_d;
    };
    CHECK(half_life_d(kDays / 2 - 1000, 0.0) == 4.0);
    CHECK(half_life_d(kDays / 2, 0.0) == 8.0);
    CHECK(half_life_d(kDays, 0.49) == 8.0);
    CHECK(half_life_d(kDays, 0.5) == 4.0);
}

// One step forward for each right answer, up to the third; one back for every second miss in a row.
TEST_CASE("two misses in a row go back a stage of fading, one miss does not") {
    const Parameters parameters;
    SkillState state = untouched(parameters);
    const auto stage_after = [&](bool right) {
        // Far from mastered, so that the stage follows from the answers alone.
        state.known = 0.3;
        state = after_answer(state, answer(right), parameters);
        REQUIRE(state.known < parameters.mastered);
        return state.stage;
    };
    CHECK(stage_after(true) == 1);
    CHECK(stage_after(true) == 2);
    CHECK(stage_after(false) == 2);
    CHECK(stage_after(false) == 1);
    CHECK(stage_after(false) == 1);
    CHECK(stage_after(false) == 0);
    CHECK(stage_after(false) == 0);
    CHECK(stage_after(false) == 0); // there is none before the first
    // A right answer in between begins the count anew.
    CHECK(stage_after(true) == 1);
    CHECK(stage_after(false) == 1);
    CHECK(stage_after(true) == 2);
    CHECK(stage_after(false) == 2);
    CHECK(stage_after(true) == 3);
    CHECK(stage_after(true) == 3);
}

TEST_CASE("a worked example teaches and is no evidence") {
    const Parameters parameters;
    Answer read = answer(true);
    read.outcome = Outcome::example;
    const SkillState state = after_answer(untouched(parameters), read, parameters);
    // 0.25 + 0.75 × 0.18 = 0.385.
    CHECK_THAT(state.known, WithinAbs(0.385, 1e-12));
    CHECK(state.examples == 1);
    CHECK(state.answers == 0);
    CHECK(state.stage == 1);
}
