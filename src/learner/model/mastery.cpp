#include "learner/model/mastery.h"

#include <algorithm>
#include <cmath>

namespace steelyard::learner {

namespace {

/// A repetition after a shorter time than this is the same session, and spaces nothing [days].
constexpr double kSpaced_d = 0.5;
/// With more of the solution shown than this, a right answer is no retrieval.
constexpr double kMuchHelp = 0.5;
/// Wrong answers in a row after which fading goes back one stage. Source: judgement.
constexpr int kMissesBack = 2;
/// The stage at which nothing of the solution is shown any more.
constexpr int kPlainStage = 3;

int next_stage(const SkillState& state, bool right) {
    if (right)
        return std::min(state.stage + 1, kPlainStage);
    return state.misses_in_row % kMissesBack == 0 ? std::max(state.stage - 1, 0) : state.stage;
}

} // namespace

double after_evidence(double known, bool right, double guess, double slip) {
    const double if_known = known * (right ? 1.0 - slip : slip);
    const double if_not = (1.0 - known) * (right ? guess : 1.0 - guess);
    const double either = if_known + if_not;
    return either > 0.0 ? if_known / either : known;
}

double after_learning(double known, double learn) {
    return known + (1.0 - known) * learn;
}

double chance_right(double known, double guess, double slip) {
    return known * (1.0 - slip) + (1.0 - known) * guess;
}

double after_gap(double known, double start, double gap_d, double half_life_d) {
    if (known <= start)
        return known;
    return start + (known - start) * std::exp2(-gap_d / half_life_d);
}

double guess_with_help(double guess, double slip, double help) {
    return guess + (1.0 - slip - guess) * std::clamp(help, 0.0, 1.0);
}

SkillState untouched(const Parameters& parameters) {
    SkillState state;
    state.known = parameters.start;
    state.half_life_d = parameters.half_life_d;
    return state;
}

double known_at(const SkillState& state, TimeMs at_ms, const Parameters& parameters) {
    if (state.last_ms == 0)
        return state.known;
    return after_gap(state.known, parameters.start, gap_days(state.last_ms, at_ms),
                     state.half_life_d);
}

SkillState after_answer(const SkillState& state, const Answer& answer,
                        const Parameters& parameters) {
    if (!answer.is_evidence() && answer.outcome != Outcome::example)
        return state;
    SkillState next = state;
    next.last_ms = answer.at_ms;
    const double before = known_at(state, answer.at_ms, parameters);
    if (answer.outcome == Outcome::example) {
        ++next.examples;
        next.stage = std::max(state.stage, 1);
        next.known = after_learning(before, parameters.learn);
        return next;
    }
    const bool right = answer.is_right();
    ++next.answers;
    next.right += right ? 1 : 0;
    next.misses_in_row = right ? 0 : state.misses_in_row + 1;
    const double guess = guess_with_help(answer.guess, parameters.slip, answer.help);
    next.known =
        after_learning(after_evidence(before, right, guess, parameters.slip), parameters.learn);
    next.stage = next.known >= parameters.mastered ? kPlainStage : next_stage(next, right);
    const bool spaced = state.last_ms != 0 && gap_days(state.last_ms, answer.at_ms) >= kSpaced_d;
    if (right && spaced && answer.help < kMuchHelp)
        next.half_life_d = std::min(state.half_life_d * 2.0, parameters.longest_half_life_d);
    else if (!right)
        next.half_life_d =
            std::max(state.half_life_d / 2.0, std::min(state.half_life_d, parameters.half_life_d));
    return next;
}

} // namespace steelyard::learner
