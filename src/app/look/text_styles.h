#pragma once
// The few ways in which columns set their text.

#include "app/look/style.h"

namespace steelyard::app {

inline constexpr TextStyle kCaption{scene::TextSize::caption, false, scene::Role::quiet_ink};
inline constexpr TextStyle kBody{scene::TextSize::body, false, scene::Role::ink};
inline constexpr TextStyle kQuietBody{scene::TextSize::body, false, scene::Role::quiet_ink};
inline constexpr TextStyle kStrong{scene::TextSize::body, true, scene::Role::ink};
/// What is wrong, in a sentence.
inline constexpr TextStyle kFault{scene::TextSize::caption, false, scene::Role::wrong};

} // namespace steelyard::app
