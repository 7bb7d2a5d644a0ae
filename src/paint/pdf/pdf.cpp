#include "paint/pdf/pdf.h"

#include "paint/pdf/pdf_catalog.h"
#include "paint/picture/cairo_objects.h"
#include "publish/files/written_text.h"

#include <cairo-pdf.h>
#include <fmt/format.h>

#include <string_view>
#include <utility>

namespace steelyard::paint {
using namespace publish;
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

/// For Cairo's stream surfaces: `store` is a ByteStore.
cairo_status_t append_to_store(void* store, const unsigned char* data, unsigned int length) {
    const std::string_view bytes(reinterpret_cast<const char*>(data), length);
    return static_cast<const ByteStore*>(store)->append(bytes) ? CAIRO_STATUS_SUCCESS
                                                               : CAIRO_STATUS_WRITE_ERROR;
}

tl::unexpected<PublishError> not_made(const std::string& title, cairo_status_t status) {
    return tl::make_unexpected(PublishError{
        status == CAIRO_STATUS_WRITE_ERROR ? PublishFault::cannot_write : PublishFault::no_memory,
        fmt::format("The document \"{}\" could not be made: {}.", title,
                    cairo_status_to_string(status))});
}

} // namespace

tl::expected<void, PublishError> make_pdf(const ByteStore& store, const PageFormat& page,
                                          const PdfAbout& about,
                                          const std::function<void(cairo_t*)>& paint) {
    ByteStore target = store;
    const CairoSurface surface(cairo_pdf_surface_create_for_stream(append_to_store, &target,
                                                                   page.width_pt, page.height_pt));
    // No compressed objects, so that complete_pdf can read it whichever Cairo wrote it.
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
    if (status == CAIRO_STATUS_SUCCESS && !complete_pdf(store, "en")) {
        status = CAIRO_STATUS_WRITE_ERROR;
    }
    if (status != CAIRO_STATUS_SUCCESS) {
        return not_made(about.title, status);
    }
    return {};
}

tl::expected<std::string, PublishError> pdf_of(const PageFormat& page, const PdfAbout& about,
                                               const std::function<void(cairo_t*)>& paint) {
    std::string bytes;
    return make_pdf(store_in(bytes), page, about, paint).map([&] { return std::move(bytes); });
}

} // namespace steelyard::paint
