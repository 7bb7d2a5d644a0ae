#pragma once
// Where a learner stands: the state of every skill and what was asked last. A value; each answer
// makes the next one. The record keeps it beside the answers, so that a million of them need not be
// read again.

#include "learner/course/course.h"
#include "learner/model/answer.h"
#include "learner/model/mastery.h"

#include <cstdint>
#include <deque>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::learner {

/// How well the model foresaw the answers, recent ones weighing most.
struct Foresight {
    double foreseen = 0.0; ///< sum of the chances it gave to a right answer
    double right = 0.0;    ///< answers that were right
    double weight = 0.0;   ///< answers in all; an answer fades by half in kForesightHalf later ones
};

/// Answers after which an answer weighs half.
inline constexpr double kForesightHalf = 40.0;

struct Standing {
    std::vector<SkillState> skills; ///< one for each skill of the course, in its order
    std::vector<PlacementAnswer> placement;
    bool placement_over = false;              ///< done, left, or practice began without it
    std::int64_t answers = 0;                 ///< marked ones
    TimeMs last_ms = 0;                       ///< of the last answer; 0 = never
    std::vector<std::string> recent_families; ///< of what was asked or shown last, newest first
    std::deque<std::string> recent_codes;     ///< of the questions themselves, newest first
    Foresight foresight;
    std::optional<Day> exam_day;
    int answered_today = 0; ///< as of `today`
    Day today{};
};

/// Families that are remembered, so that a skill's families take turns.
inline constexpr std::size_t kRecentFamilies = 12;
/// Questions that are remembered, so that none comes again for some hours: as many as somebody
/// answers in two.
inline constexpr std::size_t kRecentCodes = 240;

/// Nobody has answered anything.
Standing fresh_standing(const Course& course);

/// The standing after an answer. Of an answer to a skill that the course does not have only the
/// family and the count are kept.
/// @param offset_s  of the local clock, for what counts as today [s]
Standing after_answer(const Course& course, Standing standing, const Answer& answer, int offset_s);

/// Chance that each skill is known at a moment.
std::vector<double> known_skills(const Course& course, const Standing& standing, TimeMs at_ms);

/// Chance that an answer to a question of this guess rate and skill is right.
/// @param help  share of the solution that stands there
double foresee(const Course& course, const Standing& standing, std::size_t skill, double guess,
               double help, TimeMs at_ms);

} // namespace steelyard::learner
