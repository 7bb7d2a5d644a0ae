#pragma once
// Whether the values that the record keeps are ones that it would have taken: a file may have been
// changed by another program, or damaged in a way that every page bears.

#include "learner/record/file/database.h"

#include <string>
#include <vector>

namespace steelyard::learner {

/// A sentence for every column of answers, exams and their items in which a value stands that no
/// import would take; empty when all are in range. Reads every row: about a million in 3 s.
Recorded<std::vector<std::string>> values_out_of_range(Database& database);

} // namespace steelyard::learner
