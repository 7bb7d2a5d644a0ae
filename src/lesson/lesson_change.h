#pragma once
// What a change of a lesson can set in a setup: which parts there are and which values they have.

#include "lesson/lesson.h"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <string_view>

namespace steelyard::lesson {

/// Dimension of a value of a change, by its key; angles are directions too.
setup::Dimension dimension_of(std::string_view key);

/// Sets every value of a change, or says which part or key the setup does not have (the key is
/// below the step).
std::optional<setup::InputError> apply_change(const LessonChange& change, setup::Setup& setup);

/// What a key of the change's part has now [SI]; of a joint on both sides the right one's.
tl::expected<double, setup::InputError> present_value(const LessonChange& change,
                                                      const std::string& key, setup::Setup setup);

} // namespace steelyard::lesson
