#include "cli/verbs/draw_command.h"

#include "cli/options/checked_options.h"
#include "cli/options/picture_options.h"
#include "cli/options/setup_file.h"
#include "publish/figures/body_figure.h"
#include "publish/figures/comparison_figure.h"
#include "publish/figures/lever_comparison_figure.h"
#include "publish/figures/lever_figure.h"
#include "publish/figures/lever_sweep_figure.h"
#include "publish/figures/sweep_figure.h"
#include "setup/muscle/muscle_file.h"
#include "words/body/body_words.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <map>
#include <memory>
#include <optional>
#include <ostream>
#include <utility>

namespace steelyard::cli {
namespace {

struct DrawOptions {
    std::string file;
    PictureOptions picture;
    publish::BodyFigureStyle body; ///< its caption is for levers too
    bool sweep = false;
    std::optional<mechanics::LeverKnob> over; ///< of a lever: what a sweep changes
    std::string close_up; ///< joint of a body that is shown near by; empty = all of it
    std::string beside;   ///< another setup of the same kind to compare with; empty = none
};

/// A drawing, or why there is none.
using Drawn = tl::expected<scene::Drawing, mechanics::MechanicsError>;

/// Writes the drawing, or tells what is wrong with the setup that it was to be made of.
ExitStatus finish(const Drawn& drawing, const setup::SourceNotes& source,
                  const DrawOptions& options, const Streams& streams) {
    if (!drawing) {
        streams.err << to_text(setup::placed_error(drawing.error(), source)) << '\n';
        return ExitStatus::bad_input;
    }
    return write_picture(*drawing, options.picture, streams);
}

/// The other setup of a comparison; nothing after telling why it cannot be used.
template <typename Kind>
std::optional<Kind> setup_beside(const DrawOptions& options, const Streams& streams) {
    const auto other = setup_from(options.beside, streams);
    if (!other)
        return std::nullopt;
    const auto* same_kind = std::get_if<Kind>(&*other);
    if (same_kind == nullptr) {
        streams.err << options.beside
                    << ": found one of a lever and an exercise of the body, expected two of a "
                       "kind to compare.\n";
        return std::nullopt;
    }
    return *same_kind;
}

/// Writes the repetition as a moving picture.
ExitStatus draw_moving(const setup::BodySetup& setup, const std::vector<mechanics::Muscle>& muscles,
                       const DrawOptions& options, const publish::BodyFigureStyle& style,
                       const Streams& streams) {
    constexpr double kFrame_s = 0.05;
    if (options.sweep || !options.beside.empty() || options.body.progress) {
        streams.err << "--out: a moving picture shows the whole repetition of one exercise; leave "
                       "--sweep, --beside and --at out, or end the name in .png, .svg or .pdf.\n";
        return ExitStatus::bad_input;
    }
    const auto moving = publish::repetition_picture(setup, muscles, style, kFrame_s);
    if (!moving) {
        streams.err << options.file
                    << " holds still: a moving picture takes an exercise with a [path]. End the "
                       "name in .png, .svg or .pdf.\n";
        return ExitStatus::bad_input;
    }
    return write_moving_picture(*moving, options.picture, streams);
}

/// The axis of an exercise that people call by a joint's name; nothing after telling which there
/// are.
std::optional<std::size_t> axis_called(const setup::BodySetup& setup, const std::string& joint,
                                       const Streams& streams) {
    std::string known;
    for (std::size_t i = 0; i < setup.axes.size(); ++i) {
        const std::string word = words::axis_word(setup.axes, setup.axes[i]);
        if (joint == word || joint == mechanics::hinge_info(setup.axes[i]).name)
            return i;
        known += (known.empty() ? "" : ", ") + word;
    }
    streams.err << "--close-up: this exercise has no axis called " << joint
                << ", expected one of: " << known << ".\n";
    return std::nullopt;
}

ExitStatus draw_body(const setup::BodySetup& setup, const DrawOptions& options,
                     const Streams& streams) {
    const auto muscles = setup::shipped_muscles();
    if (!muscles) {
        streams.err << to_text(muscles.error()) << '\n';
        return ExitStatus::failed;
    }
    publish::BodyFigureStyle style = options.body;
    style.sheet_px = publish::sheet_for(options.picture.size);
    if (!options.close_up.empty()) {
        style.close_up = axis_called(setup, options.close_up, streams);
        if (!style.close_up)
            return ExitStatus::bad_input;
    }
    if (style.plot && !setup.exercise.path) {
        streams.err << "--with-plot: " << options.file
                    << " holds still, so that there is no range to plot.\n";
        return ExitStatus::bad_input;
    }
    if (wants_moving(options.picture))
        return draw_moving(setup, *muscles, options, style, streams);
    if (!options.beside.empty()) {
        const auto other = setup_beside<setup::BodySetup>(options, streams);
        return other ? finish(publish::comparison_figure(setup, *other, style.sheet_px),
                              setup.source, options, streams)
                     : ExitStatus::bad_input;
    }
    if (options.over) {
        streams.err << "--over: " << options.file
                    << " is an exercise of the body, which is swept through its own path; leave "
                       "--over out.\n";
        return ExitStatus::bad_input;
    }
    return finish(options.sweep ? publish::sweep_figure(setup, *muscles, style.sheet_px)
                                : publish::body_figure(setup, *muscles, style),
                  setup.source, options, streams);
}

ExitStatus sweep_lever(const setup::LeverSetup& lever, const DrawOptions& options,
                       const Streams& streams) {
    const auto knob = options.over.value_or(mechanics::LeverKnob::effort_direction);
    const auto changes = mechanics::possible_changes(lever.lever);
    const auto change =
        std::find_if(changes.begin(), changes.end(),
                     [&](const mechanics::LeverChange& one) { return one.knob == knob; });
    if (change == changes.end()) {
        streams.err << "--over: " << options.file << " has no load with a place.\n";
        return ExitStatus::bad_input;
    }
    return finish(publish::sweep_figure(lever, *change, publish::sheet_for(options.picture.size)),
                  lever.source, options, streams);
}

ExitStatus draw_lever(const setup::LeverSetup& lever, const DrawOptions& options,
                      const Streams& streams) {
    if (options.sweep)
        return sweep_lever(lever, options, streams);
    if (options.body.plot) {
        streams.err << "--with-plot: " << options.file
                    << " is a lever; `steelyard figure --sweep` draws what a number of it does.\n";
        return ExitStatus::bad_input;
    }
    const scene::Point sheet_px = publish::sheet_for(options.picture.size);
    if (!options.beside.empty()) {
        const auto other = setup_beside<setup::LeverSetup>(options, streams);
        return other ? finish(publish::comparison_figure(lever, *other, sheet_px), lever.source,
                              options, streams)
                     : ExitStatus::bad_input;
    }
    const auto result = solved(lever, streams);
    if (!result)
        return ExitStatus::bad_input;
    return write_picture(options.body.caption
                             ? publish::captioned_lever_figure(lever, *result, sheet_px)
                             : publish::lever_figure(lever, *result, sheet_px),
                         options.picture, streams);
}

ExitStatus draw(const DrawOptions& options, const Streams& streams) {
    const auto setup = setup_from(options.file, streams);
    if (!setup)
        return ExitStatus::bad_input;
    if (const auto* body = std::get_if<setup::BodySetup>(&*setup))
        return draw_body(*body, options, streams);
    return draw_lever(std::get<setup::LeverSetup>(*setup), options, streams);
}

setup::BodyView view_called(const std::string& name) {
    const auto& names = setup::body_view_names();
    return static_cast<setup::BodyView>(std::find(names.begin(), names.end(), name) -
                                        names.begin());
}

/// What a sweep of a lever can change, of its first load where it is about a load.
const std::map<std::string, mechanics::LeverKnob> kKnobs{
    {"direction", mechanics::LeverKnob::effort_direction},
    {"effort-place", mechanics::LeverKnob::effort_place},
    {"load-place", mechanics::LeverKnob::load_place},
    {"axis-place", mechanics::LeverKnob::axis_place},
    {"load", mechanics::LeverKnob::load_size}};

std::shared_ptr<DrawOptions> declare(CLI::App& command, DrawOptions defaults) {
    auto options = std::make_shared<DrawOptions>(std::move(defaults));
    command.add_option("SETUP", options->file, std::string(kSetupHelp))->required()->type_name("");
    add_picture_options(command, options->picture);
    only_words(
        command.add_option_function<std::string>(
            "--view",
            [options](const std::string& view) { options->body.view = view_called(view); },
            "of a body: from the side, the front, above or obliquely; its own when not given"),
        {setup::body_view_names().begin(), setup::body_view_names().end()});
    command
        .add_option("--close-up", options->close_up,
                    "of a body: one of its joints near by, such as elbow, with the class of its "
                    "lever and the pull of its strongest muscle")
        ->type_name("JOINT");
    command
        .add_option_function<double>(
            "--at", [options](double percent) { options->body.progress = 0.01 * percent; },
            "of a body: place on its path, 0 to 100; where it is hardest when not given")
        ->check(CLI::Range(0.0, 100.0))
        ->type_name("PERCENT");
    command.add_flag("--with-plot", options->body.plot,
                     "of a body: its torques over the range beside it; of a lever, take "
                     "`steelyard figure --sweep`");
    return options;
}

Work work_of(const std::shared_ptr<DrawOptions>& options) {
    return [options](const Streams& streams) { return draw(*options, streams); };
}

Work add_draw_options(CLI::App& command) {
    return work_of(declare(command, {}));
}

Work add_figure_options(CLI::App& command) {
    DrawOptions defaults;
    defaults.body.caption = true;
    defaults.picture.look = scene::Look::print;
    defaults.picture.size = {960, 720};
    const auto options = declare(command, std::move(defaults));
    command.add_flag("--sweep", options->sweep,
                     "torques and muscle pulls of a body through its range of motion; effort and "
                     "advantage of a lever while one of its numbers changes");
    std::vector<std::string> knobs;
    for (const auto& [word, knob] : kKnobs)
        knobs.push_back(word);
    only_words(command.add_option_function<std::string>(
                   "--over",
                   [options](const std::string& word) { options->over = kKnobs.at(word); },
                   "of a lever: what --sweep changes; the direction of the effort when not given"),
               knobs)
        ->needs("--sweep");
    command
        .add_option("--beside", options->beside,
                    "another lever or exercise at the same scale, and what differs")
        ->excludes("--sweep")
        ->type_name("SETUP");
    return work_of(options);
}

} // namespace

Verb draw_verb() {
    return {"draw", "draw a setup as on the stage, as a PNG, SVG or PDF; a repetition as a GIF",
            "  steelyard draw launch-trolley --out trolley.png\n"
            "  steelyard draw squat-bar-back --out squat.gif --size 640x480\n"
            "  steelyard draw squat-bar-back --out frames/\n"
            "  steelyard draw squat-bar-back --with-plot --out squat.gif\n"
            "  steelyard draw curl-dumbbell --close-up elbow --out elbow.svg\n"
            "  steelyard draw wheelbarrow --out - --format svg > wheelbarrow.svg\n"
            "  steelyard draw my-lever.setup.toml --out lever.svg --size 1920x1080 --look dark",
            &add_draw_options};
}

Verb figure_verb() {
    return {"figure",
            "draw a setup for a page, with a caption of its numbers, as a PNG, SVG or PDF",
            "  steelyard figure wheelbarrow --out wheelbarrow.pdf\n"
            "  steelyard figure curl-dumbbell --sweep --out curl.svg\n"
            "  steelyard figure crowbar --sweep --over axis-place --out crowbar.svg\n"
            "  steelyard figure crate-near --beside crate-far --out crates.pdf\n"
            "  steelyard figure my-lever.setup.toml --out lever.svg --size 800x500",
            &add_figure_options};
}

} // namespace steelyard::cli
