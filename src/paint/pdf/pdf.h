#pragma once
// A PDF document: Cairo writes the pages one after another, qpdf completes what it says of itself.

#include "publish/files/error.h"
#include "publish/sheets/page_format.h"

#include <cairo.h>
#include <tl/expected.hpp>

#include <cstdio>
#include <functional>
#include <string>

namespace steelyard::paint {

/// What a reader's program shows about the document.
struct PdfAbout {
    std::string title;
    std::string subject;
    std::string keywords;
};

/// Makes a document in an open file: `paint` receives the surface at the first page's top left
/// corner, frame in points, y down, and ends each page with cairo_show_page. Each page's bytes
/// leave the memory when it is ended. The document states English as its language, asks for its
/// title in the title bar, and is marked as tagged where it has a structure; the same painting
/// gives the same bytes, since no date is kept.
/// @return nothing, or why the document could not be made or written
/// Source: PDF 1.7 (ISO 32000-1:2008), 7.7.2 catalog, 12.2 viewer preferences, 14.7.1 mark
/// information.
tl::expected<void, publish::PublishError> make_pdf(std::FILE* file, const publish::PageFormat& page,
                                                   const PdfAbout& about,
                                                   const std::function<void(cairo_t*)>& paint);

/// The bytes of such a document.
tl::expected<std::string, publish::PublishError> pdf_of(const publish::PageFormat& page,
                                                        const PdfAbout& about,
                                                        const std::function<void(cairo_t*)>& paint);

} // namespace steelyard::paint
