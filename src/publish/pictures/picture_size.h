#pragma once
// How large a picture is.

#include "publish/files/error.h"

#include <optional>

namespace steelyard::publish {

/// Width and height of a picture [px].
struct PictureSize {
    int width_px = 1280;
    int height_px = 720;
};

/// Why no picture has this size, or nothing.
std::optional<PublishError> fault_in(PictureSize size);

} // namespace steelyard::publish
