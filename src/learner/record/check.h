#pragma once
// Whether the record is in order: its pages, its references, its values, and whether everything
// folded is what the answers give.

#include "learner/record/record.h"

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

namespace steelyard::learner {

struct RecordCheck {
    std::int64_t learners = 0;
    Sums answers;
    int backups = 0;
    std::vector<std::string> faults; ///< empty = in order
    std::vector<std::string> mended; ///< what was folded anew
};

/// Checks the whole file and folds every answer again: about a million in 5 s.
/// @param progress  told how many answers have been folded; may be empty
Recorded<RecordCheck> check_record(Record& record, const Course& course, const Clock& clock,
                                   const std::function<void(std::int64_t)>& progress);

} // namespace steelyard::learner
