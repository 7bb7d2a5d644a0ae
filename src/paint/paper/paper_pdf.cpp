#include "paint/paper/paper_pdf.h"

#include "paint/paper/page_painter.h"
#include "paint/pdf/pdf.h"
#include "paint/type/typeface.h"
#include "publish/files/whole_file.h"

namespace steelyard::paint {
using namespace publish;

namespace {

/// Makes a document of the blocks, set twice: once to count the pages, once to paint them.
/// @param make  called with the page, what the document says of itself, and what paints it
template <typename Made, typename Make>
tl::expected<Made, PublishError> made_paper(const Worksheet& sheet, const std::string& title,
                                            const PaperBlocks& blocks, const Progress& progress,
                                            const Make& make) {
    const auto family = paper_family();
    if (!family)
        return tl::make_unexpected(family.error());
    const PageFormat format = page_format(sheet.paper, sheet.large_print);
    bool stopped = false;
    const auto paint = [&](cairo_t* surface) {
        const Typesetter type(surface, *family);
        const PageSetting page{format, type};
        const int pages = count_pages(page, blocks, stretch_of(progress, 0, 1, 2));
        // A tagged document has one element at its root (PDF 1.7, 14.8.4.2).
        cairo_tag_begin(surface, "Document", nullptr);
        PagePainter painter(surface, page, sheet.code, pages);
        stopped = pages == 0 || !painter.paint(blocks, stretch_of(progress, 1, 2, 2));
        cairo_tag_end(surface, "Document"); // before the page ends: cairo 1.18 would begin another
        cairo_show_page(surface);
    };
    auto made = make(format, PdfAbout{title, "Levers, moment arms and torque", sheet.code}, paint);
    if (made && stopped)
        return stopped_work();
    return made;
}

} // namespace

tl::expected<std::string, PublishError> paper_pdf(const Worksheet& sheet, const std::string& title,
                                                  const PaperBlocks& blocks,
                                                  const Progress& progress) {
    return made_paper<std::string>(sheet, title, blocks, progress,
                                   [](const PageFormat& format, const PdfAbout& about,
                                      const auto& paint) { return pdf_of(format, about, paint); });
}

tl::expected<void, PublishError> write_paper_pdf(const std::filesystem::path& path,
                                                 const Worksheet& sheet, const std::string& title,
                                                 const PaperBlocks& blocks,
                                                 const Progress& progress) {
    return write_whole_file(path, [&](std::FILE* file) {
        return made_paper<void>(
            sheet, title, blocks, progress,
            [file](const PageFormat& format, const PdfAbout& about, const auto& paint) {
                return make_pdf(file, format, about, paint);
            });
    });
}

} // namespace steelyard::paint
