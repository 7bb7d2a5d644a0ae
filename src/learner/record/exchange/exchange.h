#pragma once
// Your data are yours: everything about a learner as JSON Lines, the answers as rows for a table,
// and back. Nothing goes over a network.
//
// JSON Lines: one object a line. The first says {"steelyard_record": version, "learner": name,
// "exam_day": "2026-12-03" or ""}; then {"answer": {...}} in the order of time and {"exam": {...}}.
// Rows: the columns of answer_columns(). Exams are only in JSON Lines.

#include "learner/record/record.h"

#include <cstdint>
#include <functional>
#include <iosfwd>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::learner {

/// Told how many lines are done, every 10 000; may be empty.
using Progress = std::function<void(std::int64_t)>;

/// Hands out every line, without its line break.
Recorded<void> export_json_lines(Record& record, const Learner& learner,
                                 const std::function<void(std::string_view)>& line,
                                 const Progress& progress);

/// A cell of a table: words or a number.
struct Cell {
    std::string text;
    bool is_number = false;
};

/// Names of the columns: "at" (ISO 8601, UTC), "code", "skill", ...
const std::vector<std::string_view>& answer_columns();

/// Hands out every answer as a row of answer_columns().
Recorded<void> export_rows(Record& record, const Learner& learner,
                           const std::function<void(const std::vector<Cell>&)>& row,
                           const Progress& progress);

struct Imported {
    Sums read;              ///< answers in the file
    std::int64_t added = 0; ///< lines of these that were not there yet
    std::int64_t exams = 0; ///< added
    std::string learner;    ///< into whose record
};

/// Reads JSON Lines or CSV (told apart by the first character) into the record of a learner, who is
/// added when missing. All or nothing: a line that cannot be read leaves the record as it was.
/// Answers that are there already are left alone, so that importing twice, or two machines' files
/// into each other, loses and doubles nothing.
/// @param file  the name that errors are to give
/// @param as    the learner's name; empty = as the file says
/// @return what came in; or the line, what was found there, and what was expected
Recorded<Imported> import_answers(Record& record, const Course& course, std::istream& in,
                                  const std::string& file, const std::string& as,
                                  const Clock& clock, const Progress& progress);

} // namespace steelyard::learner
