#pragma once
// The columns of an answer, once: name, member, type, what a file without it means. Schema, insert,
// select, export, import and salvage read this table, so that a new column is one row here and one
// member of Answer. For the parts of the record only.

#include "learner/model/answer.h"
#include "learner/record/file/database.h"

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace steelyard::learner {

/// A moment: milliseconds in the record, ISO 8601 in rows for a table.
struct MomentColumn {
    TimeMs Answer::*member;
};
struct WordsColumn {
    std::string Answer::*member;
    bool may_be_empty;
};
struct CountColumn {
    int Answer::*member;
    int least;
};
/// A time that something took [ms], not negative.
struct SpanColumn {
    std::int64_t Answer::*member;
};
/// A share or a chance, from 0 to `most`.
struct ShareColumn {
    double Answer::*member;
    double most;
};
/// One of a few words: name_of() gives it and *_named() reads it.
struct PurposeColumn {
    Purpose Answer::*member;
};
struct OutcomeColumn {
    Outcome Answer::*member;
};

using AnswerColumnKind = std::variant<MomentColumn, WordsColumn, CountColumn, SpanColumn,
                                      ShareColumn, PurposeColumn, OutcomeColumn>;

/// What an answer of a file has that lacks the column.
enum class Absent {
    never,      ///< no file is without it: such a one is refused
    is_default, ///< what a new Answer has
};

struct AnswerColumn {
    std::string_view name;    ///< in the record and in JSON Lines
    std::string_view heading; ///< in rows for a table
    AnswerColumnKind kind;
    Absent absent;
    int since; ///< version of the record that brought it; 2 or more: added by schema_steps()
};

/// Times of answers: from 2000 to 2200, which catches seconds taken for milliseconds.
inline constexpr TimeMs kEarliest_ms = 946684800000;
inline constexpr TimeMs kLatest_ms = 7258118400000;

/// The longest text of an answer [bytes].
inline constexpr std::size_t kLongestText = 4000;

/// Above it an answer says nothing about what is known.
inline constexpr double kHighestGuess = 0.95;

/// In the order in which they are inserted, selected and exported. New ones go to the end.
const std::vector<AnswerColumn>& answer_table();

/// "at_ms, code, skill, ..."
const std::string& answer_names();

/// "?, ?, ?, ...": as many as there are columns.
const std::string& answer_places();

/// What to select for every column from the table `answer` of a file that may be older: its own
/// columns, and the default of those it does not have.
/// @return refused when it lacks one that no file is without, or what hinders reading
Recorded<std::string> answer_selection(Database& file);

/// SQL that adds the columns of a version; empty when it brought none.
std::string added_answer_columns(int version);

/// Reads an answer from the current row, whose columns begin with those of the table. A NULL leaves
/// the default; the row may have been damaged: times, counts and shares are brought within their
/// bounds, so that nothing that is shown of a learner is infinite.
Answer read_answer(const Statement& row);

/// Binds the answer's columns after what is bound already.
void bind_answer(Statement& statement, const Answer& answer);

} // namespace steelyard::learner
