#pragma once
// A drawing written to a file: the name's ending says the format.

#include "publish/files/error.h"
#include "publish/pictures/picture_size.h"
#include "publish/tools.h"
#include "scene/drawing.h"
#include "scene/palette.h"

#include <tl/expected.hpp>

#include <filesystem>
#include <optional>
#include <string>

namespace steelyard::publish {

/// Of these, gif is for what moves.
enum class PictureFormat { png, svg, pdf, gif };

/// The format that a file name's ending asks for; capitals do not matter.
std::optional<PictureFormat> picture_format(const std::filesystem::path& path);

/// A sheet on which text is readable when it is shown in the size: that size where it is usual, a
/// proportional one for a picture that is very small or very large.
scene::Point sheet_for(PictureSize size);

/// The drawing in a format, which is not gif.
tl::expected<std::string, PublishError> picture_bytes(const scene::Drawing& drawing,
                                                      scene::Look look, PictureSize size,
                                                      PictureFormat format, const Tools& tools);

/// Writes the drawing whole or not at all. A PNG has `size` pixels; an SVG or PDF shows the drawing
/// in that size, a pixel being 1/96 inch. PNG and PDF take a tool.
tl::expected<void, PublishError> write_picture(const scene::Drawing& drawing, scene::Look look,
                                               PictureSize size, const std::filesystem::path& path,
                                               const Tools& tools);

} // namespace steelyard::publish
