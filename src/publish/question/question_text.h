#pragma once
// What of a question goes on paper and into exchange files, in words.

#include "problems/bank/bank.h"
#include "problems/question/question.h"

#include <string>
#include <vector>

namespace steelyard::publish {

/// The choices that can be ticked: those of the question, or the letters of its spots.
std::vector<std::string> tickable(const problems::Question& question);

/// What the pen does: "Tick one." Empty where a number is written.
std::string pen_instruction(const problems::Question& question);

/// What the question is about, as its family is called: "Effort on a plank"; empty where the bank
/// does not know it.
std::string short_title(const problems::Bank& bank, const problems::Question& question);

/// The answer as a marker compares it: "47.1 N·m", "C", "A, D", "B, A, C".
std::string short_answer(const problems::Question& question);

/// The answer in words with its letter, for a key: "47.1 N·m", "B: second class".
std::string key_answer(const problems::Question& question);

/// What the learner's number is, before the sign of equality: "Effort".
std::string answer_name(const problems::Question& question);

/// A worked step's formula to its end: "τ_load = 118 N × 0.4 m = 47.1 N·m".
std::string worked_formula(const problems::Step& step);

/// Letters of the right choices, in the order of `correct`.
std::vector<std::string> right_letters(const problems::Question& question);

/// A value in the question's unit, with the figures it asks for and in the style of its numbers:
/// "47.1 N·m", "1753 N".
std::string value_text(const problems::Question& question, double value);

/// A typical wrong answer and the thinking behind it.
struct Mistake {
    std::string answer;   ///< as the learner would write it: "314 N", "B"
    std::string title;    ///< of the wrong rule, or why the choice is wrong
    std::string rule;     ///< id; empty when no rule is known
    std::string feedback; ///< to the learner
};

/// Every wrong answer that a rule or a choice of the question knows, each once.
std::vector<Mistake> mistakes(const problems::Bank& bank, const problems::Question& question);

} // namespace steelyard::publish
