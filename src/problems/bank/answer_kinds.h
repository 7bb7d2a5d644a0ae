#pragma once
// What the file of a family needs for each kind of answer, once.

#include "problems/bank/family.h"

#include <string_view>
#include <vector>

namespace steelyard::problems {

struct AnswerKind {
    Kind kind;
    std::string_view name; ///< in files and in JSON: "numeric"
    bool asks_quantity;    ///< [ask] names the quantity that is asked
    bool has_steps;        ///< the last [[step]] finds what is asked
    bool has_choices;      ///< [[choice]] tables, two or more
    bool has_conditions;   ///< each choice says when it is right
    bool has_changes;      ///< [[change]] tables
    bool has_place;        ///< [place]
    bool can_be_written;   ///< as an item of question_bank/items
};

/// In the order of Kind, which is that of Wanted's alternatives.
const std::vector<AnswerKind>& answer_kinds();

const AnswerKind& row_of(Kind kind);

/// "numeric", "single", ...: in the order of Kind.
const std::vector<std::string_view>& answer_kind_names();

/// The kind of family that a question is of.
Kind kind_of(const Question& question);

} // namespace steelyard::problems
