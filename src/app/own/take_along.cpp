#include "app/own/take_along.h"

#include "app/own/own_files.h"
#include "app/platform/folders.h"
#include "mechanics/lever/lever_solve.h"
#include "publish/figures/body_figure.h"
#include "publish/figures/lever_figure.h"
#include "publish/pictures/picture_file.h"

#include <fmt/format.h>

#include <system_error>

namespace steelyard::app {

namespace fs = std::filesystem;

namespace {

using Made = tl::expected<fs::path, std::string>;

/// Between two drawings of a moving picture [s]: 20 a second.
constexpr double kFrame_s = 0.05;

publish::BodyFigureStyle figure_style(const PictureWish& wish) {
    publish::BodyFigureStyle style;
    style.sheet_px = publish::sheet_for(wish.size);
    style.view = wish.stage.view;
    style.plot = wish.plot;
    return style;
}

tl::expected<scene::Drawing, mechanics::MechanicsError> still_of(const PictureWish& wish) {
    if (const auto* lever = std::get_if<setup::LeverSetup>(&wish.stage.setup))
        return mechanics::solve_lever(lever->lever).map([&](const mechanics::LeverResult& solved) {
            return publish::lever_figure(*lever, solved, publish::sheet_for(wish.size));
        });
    publish::BodyFigureStyle style = figure_style(wish);
    style.progress = wish.stage.progress;
    return publish::body_figure(std::get<setup::BodySetup>(wish.stage.setup), wish.muscles, style);
}

Made make_still(const PictureWish& wish, const fs::path& path) {
    auto drawing = still_of(wish);
    if (drawing)
        drawing->has_sheet = wish.has_sheet;
    else
        return tl::unexpected("It cannot be drawn: " + drawing.error().key + " should be " +
                              drawing.error().expected + ".");
    const auto written = publish::write_picture(*drawing, wish.look, wish.size, path, wish.tools);
    return written ? Made(path) : tl::unexpected(written.error().message);
}

Made make_moving(const PictureWish& wish, const fs::path& path, const publish::Progress& progress) {
    const auto moving = publish::repetition_picture(std::get<setup::BodySetup>(wish.stage.setup),
                                                    wish.muscles, figure_style(wish), kFrame_s);
    if (!moving)
        return tl::unexpected(std::string("It holds still: there is nothing to move."));
    const auto written =
        publish::write_moving_picture(*moving, wish.look, wish.size, path, wish.tools, progress);
    return written ? Made(path) : tl::unexpected(written.error().message);
}

} // namespace

bool can_have_plot(const setup::Setup& setup) {
    const auto* body = std::get_if<setup::BodySetup>(&setup);
    return body != nullptr && body->exercise.path;
}

std::vector<PictureKind> picture_kinds(const setup::Setup& setup, const publish::Tools& tools) {
    std::vector<PictureKind> kinds;
    if (tools.png.is_there())
        kinds.push_back({"PNG", ".png"});
    kinds.push_back({"SVG", ".svg"});
    if (tools.picture_pdf.is_there())
        kinds.push_back({"PDF", ".pdf"});
    if (tools.gif.is_there() && can_have_plot(setup))
        kinds.push_back({"moving picture (GIF)", ".gif", true});
    return kinds;
}

void start(TakeAlong& taking, const PictureKind& kind, PictureWish wish) {
    if (taking.is_busy())
        return;
    taking.said.clear();
    taking.work->start([kind, wish = std::move(wish)](const publish::Progress& progress) -> Made {
        if (wish.folder.empty())
            return tl::unexpected(
                std::string("There is no folder to write to: no home folder is known."));
        std::error_code ignored; // what cannot be made is told when the file is written
        fs::create_directories(wish.folder, ignored);
        const fs::path path =
            free_path(wish.folder, head_of(wish.stage.setup).name, kind.ending, "picture");
        return kind.moves ? make_moving(wish, path, progress) : make_still(wish, path);
    });
}

void look_after(TakeAlong& taking) {
    const auto made = taking.work->take();
    if (!made)
        return;
    taking.is_fault = !*made;
    taking.said = *made ? "Written: " + where_given(**made) : made->error();
}

} // namespace steelyard::app
