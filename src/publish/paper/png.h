#pragma once
// A drawing as a PNG picture.

#include "publish/files/error.h"
#include "publish/paper/painter.h"
#include "scene/drawing.h"
#include "scene/palette.h"

#include <tl/expected.hpp>

#include <string>

namespace steelyard::publish {

/// The drawing as the bytes of a PNG file, scaled to fit the size and centred on its sheet.
tl::expected<std::string, PublishError> png_of(const scene::Drawing& drawing, scene::Look look,
                                               PictureSize size);

} // namespace steelyard::publish
