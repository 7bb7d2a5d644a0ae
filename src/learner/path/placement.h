#pragma once
// The placement: a short adaptive test that finds out where a learner stands on all skills, through
// what needs what. A right answer speaks for every skill below it, a wrong one against every skill
// above.
//
// The belief is a large fixed sample of learners who might exist: each knows a skill with a chance
// of their own when they know all its prerequisites, and with little chance otherwise. An answer
// weighs each of them by how likely they were to give it; the belief about a skill is the weighted
// share who know it. The next question is the one whose answer explains most variance over all
// skills.
// Source: likelihood weighting of a Bayesian network, Shachter & Peot 1990, UAI; the network of
// prerequisites after knowledge spaces, Doignon & Falmagne 1985, International Journal of
// Man-Machine Studies 23, 175-196.

#include <cstddef>
#include <cstdint>
#include <vector>

namespace steelyard::learner {

/// One answer of a placement.
struct PlacementAnswer {
    std::size_t skill = 0; ///< index
    bool right = false;
    double guess = 0.1;
};

/// What the answers of a placement say.
struct Placing {
    std::vector<double> known;  ///< chance that each skill is known
    std::size_t best_skill = 0; ///< to ask next: an index
    double best_settles = 0.0;  ///< variance that its answer explains [skills]
};

class PlacementNetwork {
public:
    PlacementNetwork() = default;

    /// Samples the learners; takes a few milliseconds, once for a bank.
    /// @param needs  for each skill the indices of its prerequisites, all smaller than its own
    explicit PlacementNetwork(const std::vector<std::vector<std::size_t>>& needs);

    /// Weighs the sample by the answers. Cheap: some 100 µs.
    std::vector<double> known_after(const std::vector<PlacementAnswer>& answers, double slip) const;

    /// The same with the best next question. About 10 ms: once a question, not every frame.
    /// @param guess  for each skill that of its questions; a negative one is never asked
    Placing place(const std::vector<PlacementAnswer>& answers, const std::vector<double>& guess,
                  double slip) const;

private:
    std::vector<double> weights_after(const std::vector<PlacementAnswer>& answers,
                                      double slip) const;

    std::size_t skills_ = 0;
    std::vector<std::uint8_t> knows_; ///< skills x learners, one row per learner
};

} // namespace steelyard::learner
