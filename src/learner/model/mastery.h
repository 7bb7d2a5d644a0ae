#pragma once
// How well a skill is known: Bayesian knowledge tracing, and forgetting between sessions.
//
// A skill is either known or not; L is the chance that it is. An answer is evidence (Bayes), and
// each question is a chance to learn:
//     right:  p = L (1 - S) / (L (1 - S) + (1 - L) G)
//     wrong:  p = L S / (L S + (1 - L) (1 - G))
//     L' = p + (1 - p) T            P(next right) = L' (1 - S) + (1 - L') G
// with S = slip, G = guess, T = learn.
// Source: Corbett & Anderson 1995, "Knowledge tracing", User Modeling and User-Adapted Interaction
// 4, 253-278. G is 1/k for k choices. Forgetting, and what hints and steps shown do to the
// evidence, are rules of our own and marked so below.

#include "learner/model/answer.h"
#include "learner/model/parameters.h"
#include "learner/time/clock.h"

namespace steelyard::learner {

/// L after an answer, before learning.
/// @param known, guess, slip  chances, 0 to 1; guess + slip below 1
double after_evidence(double known, bool right, double guess, double slip);

/// L after a chance to learn.
double after_learning(double known, double learn);

/// Chance that the next answer is right.
double chance_right(double known, double guess, double slip);

/// L after a time without practice: what was learned above the start fades by half in each
/// half-life. A heuristic of our own (knowledge tracing itself never forgets); its form is
/// exponential forgetting with a half-life, p = 2^(-gap/h), as in Settles & Meeder 2016, ACL,
/// 1848-1858.
double after_gap(double known, double start, double gap_d, double half_life_d);

/// Guess rate when a share of the solution already stood there. Our own rule: with no help the
/// published model; with all of it a right answer says nothing, so G becomes 1 - S.
double guess_with_help(double guess, double slip, double help);

/// What is kept of one skill of one learner. All that happened to it is folded in.
struct SkillState {
    double known = 0.25;      ///< L just after the last answer
    double half_life_d = 4.0; ///< of what is known [days]
    TimeMs last_ms = 0;       ///< of the last answer; 0 = never
    int answers = 0;          ///< marked ones
    int right = 0;            ///< of these
    int examples = 0;         ///< worked examples read
    int misses_in_row = 0;    ///< wrong answers since the last right one
    int stage = 0;            ///< of fading: see next.h
    bool begun() const { return answers > 0 || examples > 0; }
    bool operator==(const SkillState& other) const = default;
};

/// A skill nobody has touched.
SkillState untouched(const Parameters& parameters);

/// L at a later moment.
double known_at(const SkillState& state, TimeMs at_ms, const Parameters& parameters);

/// The skill after an answer (or a worked example read) at answer.at_ms. Skipped questions change
/// nothing; giving up counts as wrong; later attempts at the same question are no evidence.
/// A right answer without much help after half a day or more doubles the half-life, a wrong one
/// halves it, but not below that of a skill just learned (our own rule, see the parameters file).
SkillState after_answer(const SkillState& state, const Answer& answer,
                        const Parameters& parameters);

} // namespace steelyard::learner
