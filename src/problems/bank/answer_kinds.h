#pragma once
// The kinds of answer, once: what the file of a family needs for each, how it is answered, and what
// is said about that. Who only shows, prints or exports reads this table; who needs what is wanted
// itself visits Question::wanted.

#include "problems/bank/family.h"

#include <string_view>
#include <vector>

namespace steelyard::problems {

/// What is picked from a question's choices or lettered places.
enum class Picks {
    nothing, ///< a number is typed
    one,
    any, ///< every one that fits
    all_in_order,
};

struct AnswerKind {
    Kind kind;
    std::string_view name; ///< in files and in JSON: "numeric"
    Picks picks;

    // What the file of a family has.
    bool asks_quantity;  ///< [ask] names the quantity that is asked
    bool has_steps;      ///< the last [[step]] finds what is asked
    bool has_choices;    ///< [[choice]] tables, two or more
    bool has_conditions; ///< each choice says when it is right
    bool has_changes;    ///< [[change]] tables
    bool has_place;      ///< [place]
    bool can_be_written; ///< as an item of question_bank/items

    // What is said about it.
    std::string_view word;        ///< in tables: "one choice"
    std::string_view in_window;   ///< what to do, a sentence
    std::string_view at_terminal; ///< what to type, without a full stop
    std::string_view on_paper;    ///< what to do with the pen, a sentence; may be empty
};

/// In the order of Kind, which is that of Wanted's alternatives.
const std::vector<AnswerKind>& answer_kinds();

const AnswerKind& row_of(Kind kind);
const AnswerKind& row_of(const Question& question);

/// "numeric", "single", ...: in the order of Kind.
const std::vector<std::string_view>& answer_kind_names();

} // namespace steelyard::problems
