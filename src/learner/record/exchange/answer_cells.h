#pragma once
// Answers that come from a file of somebody's: as the cells of a table, and what can be wrong with
// them. For export and import.

#include "learner/record/answer_columns.h"
#include "learner/record/exchange/exchange.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::learner {

/// What is wrong with a line, as a phrase: "no outcome of ours: \"rihgt\"".
using Fault = std::string;

/// An answer as cells, in the order of answer_table().
std::vector<Cell> cells_of(const Answer& answer);

/// The columns of a table by its first row, in the order that they have there; or the fault: an
/// unknown one, one that stands there twice, a missing one that no file is without.
tl::expected<std::vector<const AnswerColumn*>, Fault>
columns_headed(const std::vector<std::string>& headings);

/// Reads one cell into an answer.
std::optional<Fault> take_cell(const AnswerColumn& column, const std::string& cell, Answer& answer);

/// What is said of a word that names no purpose, or no outcome.
Fault no_purpose(const std::string& word);
Fault no_outcome(const std::string& word);

/// What is wrong with an answer's values.
std::optional<Fault> fault_of(const Answer& answer);

} // namespace steelyard::learner
