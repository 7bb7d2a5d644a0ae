#pragma once
// Marking: is a typed, chosen or placed answer right, and if not, which wrong rule gives it.

#include "problems/question/question.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::problems {

struct Bank;

/// What the mark says, in one word.
enum class Verdict {
    correct,
    correct_few_figures, ///< right to the figures typed, which were fewer than wanted
    wrong,               ///< a number or choice that is not the answer
    wrong_unit,          ///< the right number beside another unit of the right kind
    wrong_dimension,     ///< a unit of another kind: a mass where a force is asked
    unreadable,          ///< not a number, not a choice, not a place
};

/// How an answer was marked, ready to be shown.
struct Marking {
    Verdict verdict = Verdict::wrong;
    bool correct = false;
    /// Id of the wrong rule that gives this answer; empty when none does. When several rules give
    /// the same number, the first of them; all of them stand in `wrong_rules`.
    std::optional<std::string> wrong_rule;
    std::vector<std::string> wrong_rules;
    std::string feedback; ///< a few sentences to the learner
    /// On a wrong number that no rule gives, what is nearest to be said; nothing of the answer.
    std::string remark;
    /// A question that tells apart the rules that give the same number; empty when not needed.
    std::string follow_up;
    bool took_pounds = false; ///< of mass for pounds of force: "25 lb" where a force is asked
    std::optional<std::size_t> parts_at;      ///< index of the step where wrong and right part
    std::optional<double> typed;              ///< what was read, in the question's unit
    std::optional<DrawnQuantity> drawn_wrong; ///< the quantity that was taken
    std::optional<DrawnQuantity> drawn_right; ///< the one to take
};

/// How answers are read.
struct MarkRules {
    bool arithmetic = true;      ///< a calculation may stand for its number: "70*0.4 + 50*1.2 N·m"
    bool explains_pounds = true; ///< says why pounds of mass are taken for pounds of force
};

/// Marks an answer as typed. What is accepted depends on the kind:
/// numeric: "12.3", "12,3 N", "1/2", "1.2e3 N·cm", "2 3/4 in" (a missing unit means the asked one),
/// "= 187 N", "~187", "1'255", "25 lb" where a force is asked, and a calculation as in
/// typed_arithmetic.h; where a percentage is asked, a bare share from 0 to 1 too; single choice,
/// change: the letter, the number or the text of a choice ("b", "2", "second class"); several:
/// letters or numbers in any order ("a c", "1,3"); ordering: letters or numbers in order ("b a d
/// c"); place: the letter of a spot, or a point as "0.4, 0.1" in metres, or a line as "0, 0 to 0.4,
/// 0.1".
Marking mark(const Bank& bank, const Question& question, const std::string& answer,
             const MarkRules& rules = {});

/// Marks a point that was typed or clicked, in the setup's frame [m]. What a window lets people
/// draw is marked by mark_placed of placing.h.
Marking mark_place(const Bank& bank, const Question& question, const mechanics::Vec2& point_m);

/// Marks a spot by its index.
Marking mark_spot(const Bank& bank, const Question& question, std::size_t chosen);

/// A place that is neither right nor a typical mistake.
/// @param why  what is wrong with it, in a sentence
Marking mark_missed_place(const Question& question, const std::string& why);

/// Marks one step of the worked solution, answered alone.
Marking mark_step(const Question& question, std::size_t step, const std::string& answer,
                  const MarkRules& rules = {});

} // namespace steelyard::problems
