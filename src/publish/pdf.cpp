#include "publish/pdf.h"

#include "publish/cairo_objects.h"
#include "publish/pdf_catalog.h"
#include "publish/written_text.h"

#include <cairo-pdf.h>
#include <fmt/format.h>

#include <utility>

namespace steelyard::publish {
namespace {

void describe(cairo_surface_t* surface, const PdfAbout& about) {
    const auto say = [surface](cairo_pdf_metadata_t what, const std::string& text) {
        if (!text.empty()) {
            cairo_pdf_surface_set_metadata(surface, what, one_line(text).c_str());
        }
    };
    say(CAIRO_PDF_METADATA_TITLE, about.title);
    say(CAIRO_PDF_METADATA_SUBJECT, about.subject);
    say(CAIRO_PDF_METADATA_KEYWORDS, about.keywords);
    say(CAIRO_PDF_METADATA_CREATOR, "Steelyard");
}

} // namespace

tl::expected<std::string, PublishError> pdf_of(const PageFormat& page, const PdfAbout& about,
                                               const std::function<void(cairo_t*)>& paint) {
    std::string bytes;
    const CairoSurface surface(
        cairo_pdf_surface_create_for_stream(append_bytes, &bytes, page.width_pt, page.height_pt));
    // No compressed objects, so that completed_pdf can read it whichever Cairo wrote it.
    cairo_pdf_surface_restrict_to_version(surface.get(), CAIRO_PDF_VERSION_1_4);
    describe(surface.get(), about);
    cairo_status_t status = CAIRO_STATUS_SUCCESS;
    {
        const CairoContext context(cairo_create(surface.get()));
        paint(context.get());
        status = cairo_status(context.get());
    }
    cairo_surface_finish(surface.get());
    if (status == CAIRO_STATUS_SUCCESS) {
        status = cairo_surface_status(surface.get());
    }
    if (status != CAIRO_STATUS_SUCCESS) {
        return tl::make_unexpected(PublishError{
            PublishFault::no_memory, fmt::format("The document \"{}\" could not be made: {}.",
                                                 about.title, cairo_status_to_string(status))});
    }
    return completed_pdf(std::move(bytes), "en");
}

} // namespace steelyard::publish
