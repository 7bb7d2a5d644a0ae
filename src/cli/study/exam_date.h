#pragma once
// The exam's day, as an option of the verbs about studying.

#include "cli/study/study.h"

#include <string>

namespace steelyard::cli {

/// Declares --exam-date.
void add_exam_date_option(CLI::App& command, std::string& text);

/// Sets the day, or takes it away for "none"; an empty text changes nothing.
/// @return false when it cannot be read or kept; that has been told
bool take_exam_date(const std::string& text, Study& study, const Streams& streams);

} // namespace steelyard::cli
