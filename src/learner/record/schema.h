#pragma once
// The tables of the record, as the steps that made them. A file knows how many steps it has seen
// (user_version); opening it takes the rest.
//
// `answer` is the truth: nothing in it ever changes. `skill_state`, `rule_count` and the sums in
// `learner` are folded from it in the same transaction, so that opening reads a few dozen rows
// however many answers there are; `steelyard record check` folds them again and compares.

#include <string>
#include <vector>

namespace steelyard::learner {

/// Marks a file as ours: "SYrd" as a number.
inline constexpr int kApplicationId = 0x53597264;

/// From this version on a file that is closed says in its header that it has no journal.
inline constexpr int kSaysItsJournal = 3;

/// SQL of each step; the step from version i to i + 1 stands at index i. It holds the columns that
/// answer_table() says came with version i + 1.
const std::vector<std::string>& schema_steps();

} // namespace steelyard::learner
