#include "bench/simulated_learner.h"

#include <algorithm>
#include <cmath>

namespace steelyard::learner {

SimulatedLearner::SimulatedLearner(const Course& course, std::uint64_t number)
    : course_(course), random_(problems::mix(number, 77)), skills_(course.skills.size()) {
    const double strength = 0.2 + 0.75 * draw();
    slip_ = 0.04 + 0.12 * draw();
    guess_factor_ = 0.5 + draw();
    learn_ = 0.08 + 0.2 * draw();
    half_life_d_ = 4.0 * std::exp2(2.0 * draw() - 1.0);
    for (std::size_t i = 0; i < skills_.size(); ++i) {
        const auto& needs = course.skills[i].needs;
        const bool all = std::all_of(needs.begin(), needs.end(),
                                     [&](std::size_t need) { return skills_[need].known; });
        skills_[i].known = draw() < (all ? strength : 0.08);
        // What somebody knows when they come was learned some time ago and has settled.
        skills_[i].half_life_d = skills_[i].known ? 15.0 + 45.0 * draw() : half_life_d_;
    }
}

double SimulatedLearner::draw() {
    return static_cast<double>(random_() >> 11U) * 0x1p-53;
}

void SimulatedLearner::live_until(TimeMs at_ms) {
    const double gap_d = now_ms_ == 0 ? 0.0 : gap_days(now_ms_, at_ms);
    now_ms_ = at_ms;
    if (gap_d == 0.0)
        return;
    for (Skill& skill : skills_)
        if (skill.known && draw() > std::exp2(-gap_d / skill.half_life_d))
            skill.known = false;
}

double SimulatedLearner::chance_right(std::size_t skill, double guess) const {
    return skills_[skill].known ? 1.0 - slip_ : std::min(0.5, guess * guess_factor_);
}

bool SimulatedLearner::answer(std::size_t skill, double guess) {
    const bool right = draw() < chance_right(skill, guess);
    Skill& met = skills_[skill];
    const bool spaced = met.last_ms != 0 && gap_days(met.last_ms, now_ms_) > 0.5;
    if (met.known && spaced)
        met.half_life_d = std::min(2.0 * met.half_life_d, 90.0);
    learn(skill);
    met.last_ms = now_ms_;
    return right;
}

void SimulatedLearner::read_example(std::size_t skill) {
    learn(skill);
    skills_[skill].last_ms = now_ms_;
}

void SimulatedLearner::learn(std::size_t skill) {
    const auto& needs = course_.skills[skill].needs;
    const bool all = std::all_of(needs.begin(), needs.end(),
                                 [&](std::size_t need) { return skills_[need].known; });
    // Without its prerequisites a skill is hard to learn.
    if (!skills_[skill].known && draw() < (all ? learn_ : 0.3 * learn_)) {
        skills_[skill].known = true;
        skills_[skill].half_life_d = half_life_d_;
    }
}

double SimulatedLearner::recall() const {
    double sum = 0.0;
    for (std::size_t i = 0; i < skills_.size(); ++i)
        sum += course_.skills[i].weight * chance_right(i, course_.skills[i].guess);
    return sum;
}

int SimulatedLearner::sit(const std::vector<int>& questions) {
    int right = 0;
    for (std::size_t i = 0; i < questions.size(); ++i)
        for (int k = 0; k < questions[i]; ++k)
            right += draw() < chance_right(i, course_.skills[i].guess) ? 1 : 0;
    return right;
}

} // namespace steelyard::learner
