#pragma once
// A step's stage as it is moved by whoever reads it: one value between two ends.

#include "lesson/lesson_quantity.h"

#include <tl/expected.hpp>

#include <optional>
#include <string_view>

namespace steelyard::lesson {

/// The part of a move that is a place on a body's path.
inline constexpr std::string_view kProgress = "progress";

/// The moved value a share of the way from one end to the other [SI].
/// @param share  0 to 1
double value_at(const LessonMove& move, double share);

/// Which share of the way the stage's own value is, 0 to 1; the nearer end for one outside.
tl::expected<double, setup::InputError> share_now(const LessonStage& stage, const LessonMove& move);

/// The stage with the value a share of the way, or why it cannot be.
tl::expected<LessonStage, setup::InputError> moved_stage(const LessonStage& stage,
                                                         const LessonMove& move, double share);

/// Tries a step's move at both ends and between: every place must be solvable, and what is shown
/// must be a quantity there.
/// @param source  of the step's own stage
std::optional<setup::InputError> try_move(const LessonStep& step, const QuantitySource& source);

} // namespace steelyard::lesson
