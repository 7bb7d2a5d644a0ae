#pragma once
// A drawing as a PNG picture.

#include "publish/files/error.h"
#include "publish/pictures/picture_size.h"
#include "scene/drawing.h"
#include "scene/palette.h"

#include <tl/expected.hpp>

#include <string>

namespace steelyard::paint {

/// The drawing as the bytes of a PNG file, scaled to fit the size and centred on its sheet.
tl::expected<std::string, publish::PublishError>
png_of(const scene::Drawing& drawing, scene::Look look, publish::PictureSize size);

} // namespace steelyard::paint
