#pragma once
// One answer as it is kept: what was asked, what was said, how long it took, and with what help.

#include "learner/time/clock.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::problems {
struct Question;
struct Family;
} // namespace steelyard::problems

namespace steelyard::learner {

struct Parameters;

/// What an answer was given for.
enum class Purpose { placement, practice, quick, exam };

/// What came of it.
enum class Outcome {
    right,
    wrong,
    gave_up, ///< asked for the worked answer instead; counts as wrong
    skipped, ///< says nothing
    example, ///< a worked example that was read; nothing was asked
};

struct Answer {
    TimeMs at_ms = 0;
    std::string code; ///< makes the question again
    std::string skill;
    std::string family;
    Purpose purpose = Purpose::practice;
    Outcome outcome = Outcome::skipped;
    std::string typed;
    std::string wrong_rule; ///< id of the rule that gives a wrong answer; empty when none does
    int attempt = 1;        ///< 1 for the first answer to this question; later ones are no evidence
    int hints = 0;          ///< asked for before answering
    double help = 0.0;      ///< share of the solution that stood there, 0 to 1: hints, steps done
    double guess = 0.1;     ///< chance to be right without knowing
    double foreseen = 0.5;  ///< chance to be right that the model gave beforehand
    std::int64_t took_ms = 0;

    /// Right or wrong, at the first attempt.
    bool is_evidence() const;
    bool is_right() const { return outcome == Outcome::right; }
};

/// The words by which the record keeps them: "placement", "gave_up".
std::string_view name_of(Purpose purpose);
std::string_view name_of(Outcome outcome);
std::vector<std::string_view> names_of_purposes();
std::vector<std::string_view> names_of_outcomes();
std::optional<Purpose> purpose_named(std::string_view name);
std::optional<Outcome> outcome_named(std::string_view name);

/// Chance to be right without knowing: 1/k for one of k choices or places, 1/2^k where any of k
/// choices may fit, 1/k! for an order of k, the parameter for a typed number.
double guess_rate(const problems::Question& question, const Parameters& parameters);

/// The same for a family as a whole; the mean over its items where it is a written one.
double guess_rate(const problems::Family& family, const Parameters& parameters);

/// An answer with all that the question itself says: code, skill, family, guess.
Answer answer_to(const problems::Question& question, const Parameters& parameters);

} // namespace steelyard::learner
