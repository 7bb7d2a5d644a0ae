#include "paint/paper/paper_pdf.h"

#include "paint/paper/page_painter.h"
#include "paint/pdf/pdf.h"
#include "paint/type/typeface.h"
#include "publish/files/whole_file.h"

namespace steelyard::paint {
using namespace publish;

tl::expected<void, PublishError> make_paper_pdf(const ByteStore& store, const Worksheet& sheet,
                                                const std::string& title, const PaperBlocks& blocks,
                                                const Progress& progress) {
    const auto family = text_family();
    if (!family) {
        return tl::make_unexpected(family.error());
    }
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
        cairo_show_page(surface);
        cairo_tag_end(surface, "Document");
    };
    auto made =
        make_pdf(store, format, {title, "Levers, moment arms and torque", sheet.code}, paint);
    if (made && stopped) {
        return stopped_work();
    }
    return made;
}

tl::expected<std::string, PublishError> paper_pdf(const Worksheet& sheet, const std::string& title,
                                                  const PaperBlocks& blocks,
                                                  const Progress& progress) {
    std::string bytes;
    return make_paper_pdf(store_in(bytes), sheet, title, blocks, progress).map([&] {
        return std::move(bytes);
    });
}

tl::expected<void, PublishError> write_paper_pdf(const std::filesystem::path& path,
                                                 const Worksheet& sheet, const std::string& title,
                                                 const PaperBlocks& blocks,
                                                 const Progress& progress) {
    return write_whole_file(path, [&](std::FILE* file) {
        return make_paper_pdf(store_in(file), sheet, title, blocks, progress);
    });
}

} // namespace steelyard::paint
