// The program of a page in a browser: the window, and nothing of the command line.

#include "app/run.h"
#include "publish/pictures/svg.h"
#include "setup/files/data_folder.h"

#include <string_view>

namespace {

/// Pixels are the browser's to make: the file holds SVG of their size until it is handed out, and
/// then page.js paints it.
steelyard::publish::Lent<std::string, const steelyard::scene::Drawing&, steelyard::scene::Look,
                         steelyard::publish::PictureSize>::Result
svg_for_png(const steelyard::scene::Drawing& drawing, steelyard::scene::Look look,
            steelyard::publish::PictureSize size) {
    return steelyard::publish::svg_of(
        drawing, {look, "drawing", true, steelyard::scene::Point(size.width_px, size.height_px)});
}

} // namespace

int main(int argc, char** argv) {
    steelyard::app::RunOptions options;
    options.data_folder = steelyard::setup::data_folder();
    options.tools.png.lend(svg_for_png);
    if (argc > 2 && std::string_view(argv[1]) == "--narration")
        options.narration = argv[2]; // what each frame shows, for tests
    return steelyard::app::run(options);
}
