#pragma once
// A person who might exist, for simulations: knows skills or not, slips, guesses, learns, forgets.
// What the program assumes about people (assets/learner/parameters.toml) is not what these people
// are: each has rates of their own.

#include "learner/course/course.h"
#include "learner/path/next.h"
#include "problems/draw/random.h"

#include <vector>

namespace steelyard::learner {

class SimulatedLearner {
public:
    /// Draws a person; the same number draws the same one.
    SimulatedLearner(const Course& course, std::uint64_t number);

    /// Time passes: some of what is known is forgotten.
    void live_until(TimeMs at_ms);

    /// Chance to answer a question of a skill right, now.
    double chance_right(std::size_t skill, double guess) const;

    /// Answers, and may learn from the feedback.
    bool answer(std::size_t skill, double guess);

    /// Reads a worked example, and may learn from it.
    void read_example(std::size_t skill);

    bool knows(std::size_t skill) const { return skills_[skill].known; }

    /// Chance to be right in an exam question, over all skills by their weight.
    double recall() const;

    /// Sits an exam with so many questions of each skill. @return right answers
    int sit(const std::vector<int>& questions);

    problems::Random& random() { return random_; }
    double draw(); ///< evenly from 0 to 1

private:
    struct Skill {
        bool known = false;
        double half_life_d = 4.0;
        TimeMs last_ms = 0; ///< when it was met last
    };

    void learn(std::size_t skill);

    const Course& course_;
    problems::Random random_;
    std::vector<Skill> skills_;
    TimeMs now_ms_ = 0;
    double slip_ = 0.1;
    double guess_factor_ = 1.0;
    double learn_ = 0.2;
    double half_life_d_ = 4.0;
};

} // namespace steelyard::learner
