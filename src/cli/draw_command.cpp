#include "cli/draw_command.h"

#include "cli/picture_options.h"
#include "cli/setup_file.h"
#include "publish/body_figure.h"
#include "publish/comparison_figure.h"
#include "publish/lever_figure.h"
#include "publish/sweep_figure.h"
#include "setup/muscle_file.h"

#include <CLI/CLI.hpp>
#include <map>
#include <memory>
#include <optional>
#include <ostream>
#include <utility>

namespace steelyard::cli {
namespace {

struct Options {
    std::string file;
    PictureOptions picture;
    publish::BodyFigureStyle body; ///< its caption is for levers too
    bool sweep = false;
    std::string beside; ///< another exercise to compare with; empty = none
};

ExitStatus refuse_lever(const std::string& file, const Streams& streams) {
    streams.err << file
                << ": found a lever, expected an exercise of the body: a lever has no "
                   "range of motion to sweep, nor joints to compare.\n";
    return ExitStatus::bad_input;
}

tl::expected<scene::Drawing, mechanics::MechanicsError>
body_drawing(const setup::BodySetup& setup, const std::optional<setup::Setup>& other,
             const std::vector<mechanics::Muscle>& muscles, const Options& options) {
    publish::BodyFigureStyle style = options.body;
    style.sheet_px = publish::sheet_for(options.picture.size);
    if (other) {
        return publish::comparison_figure(setup, std::get<setup::BodySetup>(*other),
                                          style.sheet_px);
    }
    return options.sweep ? publish::sweep_figure(setup, muscles, style.sheet_px)
                         : publish::body_figure(setup, muscles, style);
}

ExitStatus draw_body(const setup::BodySetup& setup, const Options& options,
                     const Streams& streams) {
    const auto muscles = setup::shipped_muscles();
    if (!muscles) {
        streams.err << to_text(muscles.error()) << '\n';
        return ExitStatus::failed;
    }
    std::optional<setup::Setup> other;
    if (!options.beside.empty()) {
        other = setup_from(options.beside, streams);
        if (!other) {
            return ExitStatus::bad_input;
        }
        if (!std::holds_alternative<setup::BodySetup>(*other)) {
            return refuse_lever(options.beside, streams);
        }
    }
    const auto drawing = body_drawing(setup, other, *muscles, options);
    if (!drawing) {
        streams.err << to_text(setup::placed_error(drawing.error(), setup.source)) << '\n';
        return ExitStatus::bad_input;
    }
    return write_picture(*drawing, options.picture, streams);
}

ExitStatus draw_lever(const setup::LeverSetup& lever, const Options& options,
                      const Streams& streams) {
    const auto result = solved(lever, streams);
    if (!result) {
        return ExitStatus::bad_input;
    }
    if (options.sweep || !options.beside.empty()) {
        return refuse_lever(options.file, streams);
    }
    const scene::Point sheet_px = publish::sheet_for(options.picture.size);
    const scene::Drawing drawing = options.body.caption
                                       ? publish::captioned_lever_figure(lever, *result, sheet_px)
                                       : publish::lever_figure(lever, *result, sheet_px);
    return write_picture(drawing, options.picture, streams);
}

ExitStatus draw(const Options& options, const Streams& streams) {
    const auto setup = setup_from(options.file, streams);
    if (!setup) {
        return ExitStatus::bad_input;
    }
    if (const auto* body = std::get_if<setup::BodySetup>(&*setup)) {
        return draw_body(*body, options, streams);
    }
    return draw_lever(std::get<setup::LeverSetup>(*setup), options, streams);
}

/// The views of a body in the order of their enumeration.
const std::map<std::string, setup::BodyView> kViews{{"side", setup::BodyView::side},
                                                    {"front", setup::BodyView::front},
                                                    {"above", setup::BodyView::above}};

std::shared_ptr<Options> declare(CLI::App& command, Options defaults) {
    auto options = std::make_shared<Options>(std::move(defaults));
    command
        .add_option("FILE", options->file,
                    "a setup file, or the name of one that comes with the program")
        ->required()
        ->type_name("");
    add_picture_options(command, options->picture);
    command
        .add_option_function<std::string>(
            "--view", [options](const std::string& view) { options->body.view = kViews.at(view); },
            "of a body: from the side, the front or above; its own when not given")
        ->check(CLI::IsMember(kViews))
        ->type_name("VIEW");
    command
        .add_option_function<double>(
            "--at", [options](double percent) { options->body.progress = 0.01 * percent; },
            "of a body: place on its path, 0 to 100; where it is hardest when not given")
        ->check(CLI::Range(0.0, 100.0))
        ->type_name("PERCENT");
    return options;
}

Work work_of(const std::shared_ptr<Options>& options) {
    return [options](const Streams& streams) { return draw(*options, streams); };
}

Work add_draw_options(CLI::App& command) {
    return work_of(declare(command, {}));
}

Work add_figure_options(CLI::App& command) {
    Options defaults;
    defaults.body.caption = true;
    defaults.picture.look = scene::Look::print;
    defaults.picture.size = {960, 720};
    const auto options = declare(command, std::move(defaults));
    command.add_flag("--sweep", options->sweep,
                     "of a body: torques and muscle pulls through the range of motion");
    command
        .add_option("--beside", options->beside,
                    "of a body: another exercise at the same scale, and what differs")
        ->excludes("--sweep")
        ->type_name("FILE");
    return work_of(options);
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
            "  steelyard figure curl-dumbbell --sweep --out curl.svg\n"
            "  steelyard figure crate-near --beside crate-far --out crates.pdf\n"
            "  steelyard figure my-lever.setup.toml --out lever.svg --size 800x500",
            &add_figure_options};
}

} // namespace steelyard::cli
