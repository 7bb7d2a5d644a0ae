#pragma once
// Making questions: one from its code, or a paper from a seed. The same seed gives the same paper
// on every platform.

#include "problems/question/question.h"
#include "setup/units/units.h"

#include <tl/expected.hpp>

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::problems {

struct Bank;
struct Family;
enum class Scene;

/// Why a question cannot be had, as a sentence for the person who asked for it.
struct NoQuestion {
    std::string message;
};

/// The question that a code stands for. Upper and lower case, with or without the dash; letters
/// that look like digits are read as those.
tl::expected<Question, NoQuestion> question_from_code(const Bank& bank, const std::string& code);

/// One question of a family. The seed is taken modulo kSeeds; the few seeds that give nothing
/// usable move on to the next that does, and the code says which it was.
tl::expected<Question, NoQuestion> question_of_family(const Bank& bank, const Family& family,
                                                      std::uint64_t seed);

/// A question of the family that is none of those that were seen, whatever its scene or the order
/// of its choices. Where 200 draws find no other, the one seen longest ago.
/// @param seed  as for question_of_family, whose question it is when that was not seen
/// @param seen  codes, newest first; those of other families or another bank are passed over
tl::expected<Question, NoQuestion> unseen_question(const Bank& bank, const Family& family,
                                                   std::uint64_t seed,
                                                   const std::vector<std::string>& seen);

/// What a paper is made of.
struct PaperPlan {
    std::size_t count = 10;
    std::uint64_t seed = 1;
    std::optional<std::string> skill;  ///< id; empty = all
    std::optional<std::string> family; ///< id; empty = all
    std::optional<int> difficulty;     ///< 1 to 5; empty = all
    /// Every family in its edition for these; empty = each in the units it is written in.
    std::optional<setup::UnitSystem> units;
    std::optional<Scene> about; ///< what the questions show; empty = all
    bool with_own = false;  ///< the person's own families too; one that is named needs none of it
    std::size_t shard = 0;  ///< this part ...
    std::size_t shards = 1; ///< ... of so many; their union is the whole paper
};

/// A paper: no near-duplicates, never two questions of one strategy in a row where the plan leaves
/// another, each family equally likely within its skill and each skill within the plan.
/// Long plans are made of papers of kPaperLength questions; a shard makes only the papers that
/// it has a part in.
/// @return the shard's questions in order, or why the plan cannot be met (unknown skill, nothing of
///         that difficulty, the family has too few different instances)
tl::expected<std::vector<Question>, NoQuestion> make_paper(const Bank& bank, const PaperPlan& plan);

/// The same without a code twice, for a collection that names each question by its code: where long
/// plans repeat one from an earlier paper, the questions of further papers follow.
/// @param plan  not in shards
tl::expected<std::vector<Question>, NoQuestion> make_collection(const Bank& bank,
                                                                const PaperPlan& plan);

/// Questions within which near-duplicates are refused.
inline constexpr std::size_t kPaperLength = 1000;

} // namespace steelyard::problems
