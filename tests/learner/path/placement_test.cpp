#include "catch.h"
#include "learner/path/placement.h"

#include <utility>

using namespace steelyard::learner;

namespace {

constexpr double kSlip = 0.1;

/// Three steps that need each other, and a skill beside them.
PlacementNetwork small_network() {
    return PlacementNetwork({{}, {0}, {1}, {}});
}

/// Variance over all skills that a question's answer explains, by the definition: what the chances
/// after a right and after a wrong answer differ from the chances now, squared and weighed.
double explained(const PlacementNetwork& network, const std::vector<PlacementAnswer>& answers,
                 std::size_t asked, double guess) {
    const std::vector<double> now = network.known_after(answers, kSlip);
    const double right = now[asked] * (1.0 - kSlip) + (1.0 - now[asked]) * guess;
    double sum = 0.0;
    for (const auto& [is_right, chance] : {std::pair(true, right), std::pair(false, 1.0 - right)}) {
        std::vector<PlacementAnswer> more = answers;
        more.push_back({asked, is_right, guess});
        const std::vector<double> then = network.known_after(more, kSlip);
        for (std::size_t skill = 0; skill < now.size(); ++skill)
            sum += chance * (then[skill] - now[skill]) * (then[skill] - now[skill]);
    }
    return sum;
}

} // namespace

TEST_CASE("the next question of a placement is the one whose answer explains most") {
    const PlacementNetwork network = small_network();
    const std::vector<double> guess{0.1, 0.25, 0.5, 0.1};
    std::vector<PlacementAnswer> answers;
    for (const bool right : {true, false, true, false}) {
        const Placing placing = network.place(answers, guess, kSlip);
        std::size_t best = 0;
        for (std::size_t skill = 1; skill < guess.size(); ++skill)
            if (explained(network, answers, skill, guess[skill]) >
                explained(network, answers, best, guess[best]))
                best = skill;
        CHECK(placing.best_skill == best);
        CHECK_THAT(placing.best_settles,
                   WithinRel(explained(network, answers, best, guess[best]), 1e-9));
        answers.push_back({best, right, guess[best]});
    }
}

TEST_CASE("an answer speaks for the skills below it and against those above") {
    const PlacementNetwork network = small_network();
    const std::vector<double> now = network.known_after({}, kSlip);
    const std::vector<double> right = network.known_after({{1, true, 0.1}}, kSlip);
    const std::vector<double> wrong = network.known_after({{1, false, 0.1}}, kSlip);
    for (std::size_t skill = 0; skill < now.size(); ++skill) {
        CHECK(right[skill] > now[skill]);
        CHECK(wrong[skill] < now[skill]);
    }
    // Most for the skill itself, least for the one beside it, which only shows a strong learner.
    CHECK(right[1] - now[1] > right[3] - now[3]);
    CHECK(right[0] - now[0] > right[3] - now[3]);
}

TEST_CASE("a skill without questions is never asked in a placement") {
    const PlacementNetwork network = small_network();
    CHECK(network.place({}, {-1.0, -1.0, 0.5, -1.0}, kSlip).best_skill == 2);
    CHECK(network.place({}, {-1.0, -1.0, -1.0, -1.0}, kSlip).best_settles == 0.0);
}
