#pragma once
// Questions and marks as JSON, for other programs to read.

#include "cli/reports/json_text.h"
#include "problems/marking/marking.h"
#include "problems/question/question.h"

namespace steelyard::cli {

/// Keys: code, family, skill, kind, difficulty, prompt, given, asked, unit, answer, tolerance,
/// choices, correct, steps, wrong_rules. `correct` is an index into choices where one is right, a
/// list of indices where several are or an order is asked, and null for a number.
Json question_json(const problems::Question& question);

/// Keys: format, code, correct, wrong_rule, feedback, answer, and verdict, wrong_rules, follow_up,
/// parts_at.
Json marking_json(const problems::Question& question, const problems::Marking& marking);

} // namespace steelyard::cli
