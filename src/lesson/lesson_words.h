#pragma once
// The words of lesson files, for their reader and their writer.

#include "lesson/lesson.h"

#include <string_view>
#include <vector>

namespace steelyard::lesson {

/// Names of all marks of the stage, in the order of StageMark.
std::vector<std::string_view> mark_names();

/// Names of the kinds of prediction, in the order of PredictionKind from `number` on.
std::vector<std::string_view> prediction_names();

} // namespace steelyard::lesson
