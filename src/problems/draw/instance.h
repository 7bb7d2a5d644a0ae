#pragma once
// One drawn instance of a family: numbers, solution, answer and what each wrong rule gives, checked
// and without any text yet.

#include "problems/bank/family.h"
#include "problems/draw/random.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace steelyard::problems {

/// Why a draw was thrown away, or that it was not.
enum class Refusal {
    none,
    constraint,      ///< one of the family's own
    not_solvable,    ///< the solver refuses the setup
    no_class,        ///< axis, effort and load have no clear order, and the class is asked
    wrong_status,    ///< the effort cannot balance, or must pull the other way
    disagrees,       ///< a stated number is not the solver's: a fault of the family
    no_value,        ///< something is infinite or undefined there
    not_clean,       ///< a stated number would not be exactly the one solved with
    answer_is_given, ///< the answer already stands in the prompt
    answer_collides, ///< a wrong rule comes too close to the answer
    rules_collide,   ///< two wrong rules come too close to each other
    choices_unclear, ///< none or several choices right, or an order too close to call
};

/// All refusals, for reports.
inline constexpr int kRefusals = static_cast<int>(Refusal::choices_unclear) + 1;

/// "an answer within tolerance of a wrong rule's"
const char* describe(Refusal refusal);

/// The setup of a family, built and solved; empty for a family without one.
struct SetupSolution {
    std::optional<mechanics::Lever> lever;
    std::optional<mechanics::LeverResult> solved;
    std::optional<BodySolution> body;
};

struct Instance {
    const Family* family = nullptr;
    std::uint64_t seed = 0;

    std::vector<double> quantities; ///< [SI], one per quantity of the family
    std::size_t scene = 0;
    std::size_t change = 0; ///< which of the family's changes
    std::size_t item = 0;   ///< of a written family
    SetupSolution setup;

    double answer = 0.0;            ///< [SI]
    double tolerance = 0.0;         ///< [SI]
    std::vector<double> wrong;      ///< [SI], one per wrong rule; NaN where the rule does not apply
    std::vector<double> values;     ///< ordering: the asked quantity of each choice [SI]
    double changed = 0.0;           ///< change: the asked quantity afterwards [SI]
    std::vector<std::size_t> shown; ///< choices or spots in the order in which they are shown
    std::vector<std::size_t> correct;   ///< positions in `shown`
    std::vector<mechanics::Vec2> spots; ///< place: one per spot of the plan
    int difficulty = 1;
};

/// Draws until an instance passes every check; the seed decides all of it.
/// @param instance  overwritten; its storage is reused
/// @return none, or the last refusal after kMaxDraws draws
Refusal draw_instance(const Family& family, std::uint64_t seed, Instance& instance);

/// One draw from the engine, for reports on how often draws are refused.
Refusal try_draw(const Family& family, Random& random, Instance& instance);

inline constexpr int kMaxDraws = 400;

/// 0, 1, 2, ... as many as wanted.
std::vector<std::size_t> in_order(std::size_t count);

/// Puts an order at random.
void shuffle(Random& random, std::vector<std::size_t>& order);

/// How far a typed number may lie from a wrong rule's and still be taken for it [-]. Draws keep
/// wrong numbers twice this apart.
inline constexpr double kRuleTolerance = 0.01;

} // namespace steelyard::problems
