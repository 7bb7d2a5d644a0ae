#pragma once
// A PDF document written with Cairo: one surface, pages one after another.

#include "publish/error.h"
#include "publish/page_format.h"

#include <cairo.h>
#include <tl/expected.hpp>

#include <functional>
#include <string>

namespace steelyard::publish {

/// What a reader's program shows about the document.
struct PdfAbout {
    std::string title;
    std::string subject;
    std::string keywords;
};

/// Makes a document: `paint` receives the surface at the first page's top left corner, frame in
/// points, y down, and ends each page with cairo_show_page. The same painting gives the same
/// bytes: no date is kept. See completed_pdf for what the document says of itself.
/// @return the bytes of the file
tl::expected<std::string, PublishError> pdf_of(const PageFormat& page, const PdfAbout& about,
                                               const std::function<void(cairo_t*)>& paint);

} // namespace steelyard::publish
