#pragma once
// Readiness: the score that a mock exam taken now would give, with the interval that holds it nine
// times in ten, and the chance to pass.
//
// Each skill is known or not (mastery.h says how likely); given that, each of its questions is
// right with 1 - slip or with guess. How much a learner slips differs between people, so a few slip
// rates are weighed. The distribution of the score follows exactly, by convolution, and the
// interval is read from it. Nothing is assumed to be normal.

#include "learner/model/standing.h"

#include <string>
#include <vector>

namespace steelyard::learner {

/// What one skill adds to the expected score.
struct SkillShare {
    std::size_t skill = 0; ///< index
    int questions = 0;     ///< of the exam
    double known = 0.0;    ///< chance that it is known
    double expected = 0.0; ///< right answers
};

struct Readiness {
    int questions = 0; ///< of the exam
    int pass = 0;      ///< right answers needed
    double expected = 0.0;
    int low = 0; ///< the interval, both ends included
    int high = 0;
    double holds = 0.0; ///< chance that the interval holds the score
    double chance_to_pass = 0.0;
    std::vector<double> scores; ///< chance of each score from 0 to `questions`
    std::vector<SkillShare> shares;
    std::int64_t answers = 0; ///< that it rests on
    int skills_tried = 0;     ///< with at least one answer
    double touched = 0.0;     ///< share of the exam's questions whose skill has an answer
    /// So little is known that a predicted score would say more about chance than about them.
    bool is_too_early() const;
    /// How wide the interval is, as a share of the exam.
    double width() const;
};

/// Answers, and share of the exam that they touch, before a score is predicted. Judgement: what a
/// beginner is told of their chances can frighten (Valle et al. 2021, Educational Technology
/// Research and Development), and of few answers most is chance.
inline constexpr std::int64_t kAnswersToPredict = 40;
inline constexpr double kTouchedToPredict = 0.6;
/// An interval as wide as this, as a share of the exam, says nothing worth knowing either.
inline constexpr double kWidestPrediction = 0.25;

/// About 0.3 ms: once after each answer.
Readiness readiness(const Course& course, const Standing& standing, TimeMs at_ms);

/// The shortest run of scores that holds at least this share; its ends are included.
struct ScoreInterval {
    int low = 0;
    int high = 0;
    double holds = 0.0;
};
ScoreInterval score_interval(const std::vector<double>& scores, double share);

/// Interval for the true share behind so many right answers out of so many.
/// Source: Wilson 1927, Journal of the American Statistical Association 22, 209-212.
/// @param of  above 0
struct ShareInterval {
    double low = 0.0;
    double high = 1.0;
};
ShareInterval wilson_interval(int right, int of, double confidence);

/// Two or three sentences: whether they would pass, and what that rests on; before that can be
/// said, how much is still to be answered.
std::string say(const Readiness& readiness, const Course& course);

/// How the chances of the scores come about, in two or three sentences.
std::string how_reached(const Course& course);

/// The shares, those first where most questions are still expected wrong.
std::vector<SkillShare> most_to_win(const Readiness& readiness);

/// Whether it was right so far; empty while there are too few answers to tell.
std::string say(const Foresight& foresight);

/// What a finished mock exam says when nothing else is known; empty when it had no questions.
std::string say_alone(int right, int of, double confidence);

} // namespace steelyard::learner
