#include "paint/paint_tools.h"

#include "paint/exchange/zip.h"
#include "paint/paper/page_picture.h"
#include "paint/paper/term_list_pdf.h"
#include "paint/paper/worksheet_pdf.h"
#include "paint/picture/gif.h"
#include "paint/picture/picture_pdf.h"
#include "paint/picture/png.h"

namespace steelyard::paint {

publish::Tools paint_tools() {
    publish::Tools tools;
    tools.page_picture.lend(page_picture);
    tools.paper_pdf.lend(write_sheet_pdf);
    tools.term_list_pdf.lend(term_list_pdf);
    tools.png.lend(png_of);
    tools.gif.lend(gif_of);
    tools.picture_pdf.lend(picture_pdf);
    tools.zip = zip_of;
    return tools;
}

} // namespace steelyard::paint
