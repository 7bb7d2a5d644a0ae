#pragma once
// The numbers that the model of the learner works with, read from assets/learner/parameters.toml,
// where each stands with its source.

#include "setup/toml/input_error.h"

#include <tl/expected.hpp>

#include <filesystem>
#include <string>
#include <string_view>

namespace steelyard::learner {

/// Defaults are the shipped file's values.
struct Parameters {
    // Mastery (mastery.h).
    double start = 0.25;       ///< chance that a skill is known before anything was answered
    double learn = 0.18;       ///< chance to learn it from one question
    double slip = 0.10;        ///< chance of a wrong answer to a known skill
    double guess_typed = 0.10; ///< chance of a right typed number for an unknown skill
    double mastered = 0.95;    ///< known with this chance counts as mastered

    // Forgetting.
    double half_life_d = 4.0;         ///< of a skill just learned [days]
    double longest_half_life_d = 60;  ///< [days]
    double placed_half_life_d = 30.0; ///< of what the placement found known [days]

    // Review.
    double gap_share = 0.2;         ///< gap to the next review, as a share of the days left
    double shortest_gap_d = 1.0;    ///< [days]
    double longest_gap_d = 7.0;     ///< [days]
    double days_without_exam = 28;  ///< days left where no exam date is set
    double keeps_until_exam = 0.85; ///< known on the exam day with this chance: no review needed

    // Teaching.
    double opens_above = 0.6;   ///< a skill opens when its prerequisites are known so well
    double plain_above = 0.6;   ///< known so well, a skill needs no worked example
    int block = 3;              ///< questions in a row on a brand-new skill
    int learning_at_once = 3;   ///< skills begun and not mastered, before another is begun
    int plan_most_per_day = 40; ///< questions a day that a plan asks for at most

    // Placement.
    int placement_questions = 12;   ///< at most
    double placement_enough = 0.04; ///< stops when the best question would settle less [skills]

    // Readiness.
    double confidence = 0.90; ///< share of exams that the interval is to hold
};

tl::expected<Parameters, setup::InputError> parse_parameters(std::string_view text,
                                                             const std::string& file);
tl::expected<Parameters, setup::InputError> read_parameters(const std::filesystem::path& path);

} // namespace steelyard::learner
