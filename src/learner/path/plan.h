#pragma once
// Planning back from the exam: how many questions a day get every skill mastered and kept.

#include "learner/model/standing.h"

#include <string>
#include <vector>

namespace steelyard::learner {

struct StudyPlan {
    bool has_exam = false;  ///< whether an exam date is set and not past
    int days = 0;           ///< to study on, today included; the exam's own day is none
    double questions = 0.0; ///< expected in all: to master what is not, and to keep it
    int per_day = 0;        ///< rounded up, at most plan_most_per_day
    bool fits = true;       ///< false: more than a day holds; the heaviest skills go first
    int done_today = 0;
    int left_today = 0;
    std::vector<double> to_master; ///< expected questions for each skill, in the course's order
};

/// Expected questions on one skill until it is mastered, from a chance that it is known: each
/// question is right with chance_right, and moves the chance as in mastery.h. Solved on a grid;
/// exact to a few per cent.
double questions_to_master(const Parameters& parameters, double known, double guess);

/// Reviews of a skill mastered now until the exam, by the rule of next.h when each is right.
int reviews_until_exam(const Parameters& parameters, double half_life_d, double days_left_d);

/// Study days, counted from 0 today, on which a mock exam takes the place of a session: two days
/// before the exam, so that a day is left for its mistakes, and a week before where there are two
/// weeks. None where there are few days. Source: judgement.
std::vector<int> mock_exam_days(int days);

/// About 5 ms: once after each answer, not every frame.
StudyPlan plan_study(const Course& course, const Standing& standing, const Clock& clock);

/// Questions of a session of the day: what is left of the plan, but neither too short nor too long.
int session_length(const StudyPlan& plan);

/// "8 days: 15 questions a day; 6 done today, 9 to go."
std::string say(const StudyPlan& plan);

} // namespace steelyard::learner
