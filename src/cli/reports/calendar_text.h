#pragma once
// The calendar to the exam as lines of text.

#include "learner/path/calendar.h"

#include <string>

namespace steelyard::cli {

/// A line or two for each day until the exam, days alike drawn together, then what does not fit.
/// @param order  how days are written
std::string calendar_text(const learner::Course& course, const learner::StudyCalendar& calendar,
                          learner::DayOrder order);

} // namespace steelyard::cli
