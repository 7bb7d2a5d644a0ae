#pragma once
// A PDF document written with Cairo: one surface, pages one after another.

#include "paint/pdf/byte_store.h"
#include "publish/files/error.h"
#include "publish/sheets/page_format.h"

#include <cairo.h>
#include <tl/expected.hpp>

#include <functional>
#include <string>

namespace steelyard::paint {

/// What a reader's program shows about the document.
struct PdfAbout {
    std::string title;
    std::string subject;
    std::string keywords;
};

/// Makes a document: `paint` receives the surface at the first page's top left corner, frame in
/// points, y down, and ends each page with cairo_show_page. The same painting gives the same
/// bytes: no date is kept. See complete_pdf for what the document says of itself.
/// Each page's bytes go to the store when it is ended.
/// @return nothing, or why the document could not be made or written
tl::expected<void, publish::PublishError> make_pdf(const ByteStore& store,
                                                   const publish::PageFormat& page,
                                                   const PdfAbout& about,
                                                   const std::function<void(cairo_t*)>& paint);

/// The bytes of such a document.
tl::expected<std::string, publish::PublishError> pdf_of(const publish::PageFormat& page,
                                                        const PdfAbout& about,
                                                        const std::function<void(cairo_t*)>& paint);

} // namespace steelyard::paint
