#pragma once
// A drawing as a PDF of one page.

#include "publish/files/error.h"
#include "publish/pictures/picture_size.h"
#include "scene/drawing.h"
#include "scene/palette.h"

#include <tl/expected.hpp>

#include <string>

namespace steelyard::paint {

/// The drawing on a page that shows it in the size, a pixel being 1/96 inch.
tl::expected<std::string, publish::PublishError>
picture_pdf(const scene::Drawing& drawing, scene::Look look, publish::PictureSize size);

} // namespace steelyard::paint
