#pragma once
// Whether a drawing can be put on paper or into a file at all.

#include "publish/files/error.h"
#include "scene/drawing.h"

#include <optional>

namespace steelyard::publish {

/// Longest side of a sheet [px]: past this, a picture takes more than a gigabyte.
inline constexpr double kMaxSide_px = 16384.0;

/// Why the drawing cannot be painted, or nothing: a sheet that is empty or absurdly large, or a
/// place or a size in it that is not a finite number.
std::optional<PublishError> fault_in(const scene::Drawing& drawing);

} // namespace steelyard::publish
