#include "learner/path/placement.h"

#include "problems/draw/random.h"

#include <algorithm>
#include <cassert>
#include <numeric>

namespace steelyard::learner {

namespace {

/// Enough that twelve answers leave hundreds of learners with weight.
constexpr std::size_t kLearners = 8192;
constexpr std::uint64_t kSeed = 20260301;

/// A learner knows a skill whose prerequisites they know with a chance of their own, between these
/// bounds, evenly spread. Source: judgement.
constexpr double kWeakest = 0.15;
constexpr double kStrongest = 0.97;
/// Chance to know a skill without one of its prerequisites. Source: judgement; the map of skills is
/// strict, people are not.
constexpr double kWithoutNeeds = 0.05;

/// Evenly spread from 0 to below 1, with 32 bits.
double draw_share(problems::Random& random) {
    return static_cast<double>(random() >> 32U) * 0x1p-32;
}

} // namespace

PlacementNetwork::PlacementNetwork(const std::vector<std::vector<std::size_t>>& needs)
    : skills_(needs.size()), knows_(needs.size() * kLearners) {
    problems::Random random(kSeed);
    for (std::size_t learner = 0; learner < kLearners; ++learner) {
        const double strength = kWeakest + (kStrongest - kWeakest) *
                                               (static_cast<double>(learner) + 0.5) /
                                               static_cast<double>(kLearners);
        std::uint8_t* const knows = &knows_[learner * skills_];
        for (std::size_t skill = 0; skill < skills_; ++skill) {
            const bool all =
                std::all_of(needs[skill].begin(), needs[skill].end(), [&](std::size_t need) {
                    assert(need < skill);
                    return knows[need] != 0;
                });
            knows[skill] = draw_share(random) < (all ? strength : kWithoutNeeds) ? 1 : 0;
        }
    }
}

std::vector<double> PlacementNetwork::weights_after(const std::vector<PlacementAnswer>& answers,
                                                    double slip) const {
    std::vector<double> weights(kLearners, 1.0);
    for (const PlacementAnswer& answer : answers) {
        const double if_known = answer.right ? 1.0 - slip : slip;
        const double if_not = answer.right ? answer.guess : 1.0 - answer.guess;
        for (std::size_t learner = 0; learner < kLearners; ++learner)
            weights[learner] *= knows_[learner * skills_ + answer.skill] != 0 ? if_known : if_not;
    }
    const double sum = std::accumulate(weights.begin(), weights.end(), 0.0);
    for (double& weight : weights)
        weight /= sum;
    return weights;
}

std::vector<double> PlacementNetwork::known_after(const std::vector<PlacementAnswer>& answers,
                                                  double slip) const {
    const std::vector<double> weights = weights_after(answers, slip);
    std::vector<double> known(skills_, 0.0);
    for (std::size_t learner = 0; learner < kLearners; ++learner)
        for (std::size_t skill = 0; skill < skills_; ++skill)
            known[skill] += weights[learner] * knows_[learner * skills_ + skill];
    return known;
}

Placing PlacementNetwork::place(const std::vector<PlacementAnswer>& answers,
                                const std::vector<double>& guess, double slip) const {
    Placing placing;
    placing.known = known_after(answers, slip);
    const std::vector<double> weights = weights_after(answers, slip);
    std::vector<double> both(skills_);
    for (std::size_t asked = 0; asked < skills_; ++asked) {
        if (guess[asked] < 0.0)
            continue;
        std::fill(both.begin(), both.end(), 0.0);
        for (std::size_t learner = 0; learner < kLearners; ++learner) {
            const std::uint8_t* const knows = &knows_[learner * skills_];
            if (knows[asked] != 0)
                for (std::size_t skill = 0; skill < skills_; ++skill)
                    both[skill] += weights[learner] * knows[skill];
        }
        // An answer is right with guess + (1 - slip - guess) x, x being 1 where the skill is known:
        // its covariance with another skill is that factor times the skills' own.
        const double factor = 1.0 - slip - guess[asked];
        const double right = guess[asked] + factor * placing.known[asked];
        double settles = 0.0;
        for (std::size_t skill = 0; skill < skills_; ++skill) {
            const double covariance =
                factor * (both[skill] - placing.known[asked] * placing.known[skill]);
            settles += covariance * covariance / (right * (1.0 - right));
        }
        if (settles > placing.best_settles) {
            placing.best_settles = settles;
            placing.best_skill = asked;
        }
    }
    return placing;
}

} // namespace steelyard::learner
