#pragma once
// A drawing as SVG text, for files, for printable pages and for exchange packages.
// Source of the format: SVG 1.1 (second edition), W3C.

#include "publish/files/error.h"
#include "scene/drawing.h"
#include "scene/palette.h"

#include <tl/expected.hpp>

#include <optional>
#include <string>

namespace steelyard::publish {

struct SvgStyle {
    scene::Look look = scene::Look::light;
    /// Starts the ids inside, which must differ between drawings on one page.
    std::string id_prefix = "drawing";
    /// A file of its own starts with an XML declaration; a drawing inside a page has none.
    bool own_file = true;
    /// Width and height at which it is shown [px]; empty = the sheet's own.
    std::optional<scene::Point> shown_px = std::nullopt;
};

/// The drawing as SVG: title and description for a reader who cannot see it, labels as real text
/// in Inter or a like font. One user unit is one sheet pixel.
tl::expected<std::string, PublishError> svg_of(const scene::Drawing& drawing,
                                               const SvgStyle& style = {});

} // namespace steelyard::publish
