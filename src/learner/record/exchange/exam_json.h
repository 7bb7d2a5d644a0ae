#pragma once
// Exams as objects of JSON Lines. For export and import.

#include "learner/record/exam_rows.h"
#include "learner/record/exchange/answer_json.h"

namespace steelyard::learner {

Json json_of(const KeptExam& kept);

/// Reads an exam from an object. Earlier exports called "come_back" "flagged".
/// @return the exam, or the fault: a member that is missing or impossible, no items
tl::expected<KeptExam, Fault> exam_from(const Json& object);

} // namespace steelyard::learner
