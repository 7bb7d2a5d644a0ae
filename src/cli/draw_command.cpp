#include "cli/draw_command.h"

#include "cli/picture_options.h"
#include "cli/setup_file.h"
#include "publish/lever_figure.h"

#include <CLI/CLI.hpp>
#include <memory>
#include <ostream>
#include <utility>

namespace steelyard::cli {
namespace {

struct Options {
    std::string file;
    PictureOptions picture;
    bool caption = false;
};

ExitStatus draw(const Options& options, const Streams& streams) {
    const auto setup = setup_from(options.file, streams);
    if (!setup) {
        return ExitStatus::bad_input;
    }
    const auto* found = std::get_if<setup::LeverSetup>(&*setup);
    if (!found) {
        streams.err << options.file << ": found a body setup, expected a lever.\n";
        return ExitStatus::bad_input;
    }
    const setup::LeverSetup& lever = *found;
    const auto result = solved(lever, streams);
    if (!result) {
        return ExitStatus::bad_input;
    }
    const scene::Point sheet_px = publish::sheet_for(options.picture.size);
    const scene::Drawing drawing = options.caption
                                       ? publish::captioned_lever_figure(lever, *result, sheet_px)
                                       : publish::lever_figure(lever, *result, sheet_px);
    return write_picture(drawing, options.picture, streams);
}

Work declare(CLI::App& command, Options defaults) {
    const auto options = std::make_shared<Options>(std::move(defaults));
    command
        .add_option("FILE", options->file,
                    "a setup file, or the name of one that comes with the program")
        ->required()
        ->type_name("");
    add_picture_options(command, options->picture);
    return [options](const Streams& streams) { return draw(*options, streams); };
}

Work add_draw_options(CLI::App& command) {
    return declare(command, {});
}

Work add_figure_options(CLI::App& command) {
    Options options;
    options.caption = true;
    options.picture.look = scene::Look::print;
    options.picture.size = {960, 640};
    return declare(command, std::move(options));
}

} // namespace

Verb draw_verb() {
    return {"draw", "draw a setup as on the stage, as a PNG, SVG or PDF",
            "  steelyard draw launch-trolley --out trolley.png\n"
            "  steelyard draw my-lever.setup.toml --out lever.svg --size 1920x1080 --look dark",
            &add_draw_options};
}

Verb figure_verb() {
    return {"figure", "draw a setup for a page, with a caption of its numbers",
            "  steelyard figure wheelbarrow --out wheelbarrow.pdf\n"
            "  steelyard figure my-lever.setup.toml --out lever.svg --size 800x500",
            &add_figure_options};
}

} // namespace steelyard::cli
