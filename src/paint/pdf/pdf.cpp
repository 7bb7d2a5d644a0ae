#include "paint/pdf/pdf.h"

#include "paint/pdf/complete_pdf.h"
#include "paint/picture/cairo_objects.h"
#include "publish/files/written_text.h"

#include <cairo-pdf.h>
#include <fmt/format.h>

#include <memory>
#include <string_view>

namespace steelyard::paint {
using namespace publish;
namespace {

struct CloseFile {
    void operator()(std::FILE* file) const { std::fclose(file); }
};
using File = std::unique_ptr<std::FILE, CloseFile>;
using Done = tl::expected<void, PublishError>;

void describe(cairo_surface_t* surface, const PdfAbout& about) {
    const auto say = [surface](cairo_pdf_metadata_t what, const std::string& text) {
        if (!text.empty())
            cairo_pdf_surface_set_metadata(surface, what, one_line(text).c_str());
    };
    say(CAIRO_PDF_METADATA_TITLE, about.title);
    say(CAIRO_PDF_METADATA_SUBJECT, about.subject);
    say(CAIRO_PDF_METADATA_KEYWORDS, about.keywords);
    say(CAIRO_PDF_METADATA_CREATOR, "Steelyard");
}

/// For Cairo's stream surfaces: `file` is a FILE to append to.
cairo_status_t append_to_file(void* file, const unsigned char* data, unsigned int length) {
    return std::fwrite(data, 1, length, static_cast<std::FILE*>(file)) == length
               ? CAIRO_STATUS_SUCCESS
               : CAIRO_STATUS_WRITE_ERROR;
}

tl::unexpected<PublishError> not_made(PublishFault fault, const std::string& title,
                                      std::string_view why) {
    return tl::make_unexpected(
        PublishError{fault, fmt::format("The document \"{}\" could not be made: {}.", title, why)});
}

/// The pages and their structure, as Cairo writes them.
Done paint_pages(std::FILE* file, const PageFormat& page, const PdfAbout& about,
                 const std::function<void(cairo_t*)>& paint, FigureWords& figures) {
    const CairoSurface surface(
        cairo_pdf_surface_create_for_stream(append_to_file, file, page.width_pt, page.height_pt));
    describe(surface.get(), about);
    cairo_status_t status = CAIRO_STATUS_SUCCESS;
    {
        const CairoContext context(cairo_create(surface.get()));
        gather_figures(context.get(), figures);
        paint(context.get());
        status = cairo_status(context.get());
    }
    cairo_surface_finish(surface.get());
    if (status == CAIRO_STATUS_SUCCESS)
        status = cairo_surface_status(surface.get());
    if (status == CAIRO_STATUS_SUCCESS && std::fflush(file) != 0)
        status = CAIRO_STATUS_WRITE_ERROR;
    if (status == CAIRO_STATUS_SUCCESS)
        return {};
    return not_made(status == CAIRO_STATUS_WRITE_ERROR ? PublishFault::cannot_write
                                                       : PublishFault::no_memory,
                    about.title, cairo_status_to_string(status));
}

/// Paints the pages into a file of their own, and completes them into what is given.
template <typename To>
Done write_pdf(const PageFormat& page, const PdfAbout& about,
               const std::function<void(cairo_t*)>& paint, To&& to) {
    const File pages(std::tmpfile());
    if (!pages)
        return not_made(PublishFault::cannot_write, about.title, "no temporary file");
    FigureWords figures;
    return paint_pages(pages.get(), page, about, paint, figures).and_then([&]() -> Done {
        const NotCompleted fault = complete_pdf(pages.get(), {about.title, figures}, to);
        if (fault.why.empty())
            return {};
        return not_made(fault.no_memory ? PublishFault::no_memory : PublishFault::cannot_write,
                        about.title, fault.why);
    });
}

} // namespace

Done make_pdf(std::FILE* file, const PageFormat& page, const PdfAbout& about,
              const std::function<void(cairo_t*)>& paint) {
    return write_pdf(page, about, paint, file);
}

tl::expected<std::string, PublishError> pdf_of(const PageFormat& page, const PdfAbout& about,
                                               const std::function<void(cairo_t*)>& paint) {
    std::string bytes;
    return write_pdf(page, about, paint, bytes).map([&] { return std::move(bytes); });
}

} // namespace steelyard::paint
