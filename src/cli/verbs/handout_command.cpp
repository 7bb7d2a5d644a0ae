#include "cli/verbs/handout_command.h"

#include "cli/options/checked_options.h"
#include "cli/options/picture_options.h"
#include "cli/options/question_options.h"
#include "cli/options/shipped_file.h"
#include "cli/options/standard_stream.h"
#include "paint/paint_tools.h"
#include "publish/sheets/blueprint.h"
#include "publish/sheets/handout_job.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <filesystem>
#include <memory>
#include <optional>
#include <ostream>
#include <utility>

namespace steelyard::cli {
namespace fs = std::filesystem;
namespace {

struct HandoutOptions {
    std::string blueprint;
    std::string code;
    int versions = 1;
    std::string out;
    bool html = false;
    bool large_print = false;
    std::string paper;
    QuestionOptions questions; ///< for --bank and --seed
};

/// Fills blueprint, seed and versions from a sheet's code.
/// @return the version that is asked for, counted from 0; empty = the whole set
tl::expected<std::optional<std::size_t>, std::string> take_code(HandoutOptions& options) {
    if (options.code.empty())
        return std::nullopt;
    const auto code = publish::read_sheet_code(options.code);
    if (!code) {
        return tl::make_unexpected(fmt::format(
            "--code: '{}' is no code of a sheet. It stands at the foot of every page, such as "
            "boathouse-42-B.",
            options.code));
    }
    if (options.blueprint.empty())
        options.blueprint = code->blueprint;
    options.questions.seed = code->seed;
    if (code->us_units)
        options.questions.units = "us";
    options.versions = std::max(1, code->version + 1);
    if (code->version == 0)
        options.versions = 2; // a set of one has no letter
    return code->version < 0 ? std::optional<std::size_t>(0)
                             : static_cast<std::size_t>(code->version);
}

std::optional<publish::Blueprint> blueprint_from(const HandoutOptions& options,
                                                 const Streams& streams) {
    const fs::path path =
        shipped_or_own(options.blueprint, "blueprints", publish::kBlueprintEnding);
    const bool from_input = options.blueprint == kStandardStream;
    auto blueprint = from_input ? publish::parse_blueprint(all_of_input(streams), kStandardInput)
                                : publish::read_blueprint(path);
    if (!blueprint) {
        streams.err << to_text(blueprint.error()) << '\n';
        std::error_code failed;
        const std::string meant =
            from_input || fs::exists(path, failed)
                ? ""
                : nearest_shipped(options.blueprint, "blueprints", publish::kBlueprintEnding);
        if (!meant.empty())
            streams.err << "Did you mean " << meant << "?\n";
        return std::nullopt;
    }
    if (from_input)
        blueprint->name = "sheet";
    blueprint->large_print = blueprint->large_print || options.large_print;
    blueprint->in_us_units = options.questions.units == "us";
    if (!options.paper.empty()) {
        blueprint->paper =
            options.paper == "A4" ? publish::PaperSize::a4 : publish::PaperSize::letter;
    }
    return std::move(*blueprint);
}

ExitStatus handout(HandoutOptions options, const Streams& streams) {
    const auto only = take_code(options);
    if (!only) {
        streams.err << only.error() << '\n';
        return ExitStatus::bad_input;
    }
    if (options.out == kStandardStream) {
        streams.err << "--out -: sheets and keys are several files. Name a folder.\n";
        return ExitStatus::bad_input;
    }
    if (options.blueprint.empty()) {
        streams.err << "Say what to make: --blueprint NAME, or --code of a sheet.\n";
        return ExitStatus::bad_input;
    }
    const auto blueprint = blueprint_from(options, streams);
    if (!blueprint)
        return ExitStatus::bad_input;
    const problems::Bank bank = open_bank(options.questions, streams);
    auto sheets = publish::make_worksheets(bank, *blueprint, options.questions.seed.value_or(1),
                                           options.versions);
    if (!sheets) {
        streams.err << sheets.error().message << '\n';
        return status_of(sheets.error());
    }
    if (*only)
        *sheets = {(*sheets)[**only]};
    const auto format = options.html ? publish::HandoutFormat::html : publish::HandoutFormat::pdf;
    const auto written =
        publish::write_handout(bank, *sheets, {format}, options.out, paint::paint_tools());
    if (!written) {
        streams.err << written.error().message << '\n';
        return status_of(written.error());
    }
    for (const fs::path& path : *written)
        streams.out << path.string() << '\n';
    return ExitStatus::ok;
}

Work add_handout_options(CLI::App& command) {
    const auto options = std::make_shared<HandoutOptions>();
    command
        .add_option("--blueprint", options->blueprint,
                    "a blueprint file, the name of one that comes with the program, or - for "
                    "standard input")
        ->type_name("BLUEPRINT");
    command.add_option("--code", options->code, "make the sheet of this code again")
        ->type_name("CODE");
    add_seed_option(command, options->questions.seed, "the same seed gives the same sheet");
    command
        .add_option("--versions", options->versions,
                    "how many: A, B, C ... with the same kinds of questions")
        ->check(CLI::Range(1, publish::kMostVersions))
        ->type_name("N");
    command.add_option("--out", options->out, "folder for the sheets and their keys")
        ->required()
        ->type_name("DIR");
    only_words(command.add_option("--paper", options->paper, "whatever the blueprint says"),
               {"A4", "Letter"});
    command.add_flag("--large-print", options->large_print, "set the text in 18 pt");
    command.add_flag("--html", options->html, "pages that a browser prints, instead of PDF");
    add_units_option(command, options->questions);
    add_bank_option(command, options->questions);
    return [options](const Streams& streams) { return handout(*options, streams); };
}

} // namespace

Verb handout_verb() {
    return {"handout", "make worksheets with keys, in several versions",
            "  steelyard handout --blueprint boathouse --seed 42 --versions 3 --out handouts\n"
            "  steelyard handout --code boathouse-42-B --out handouts\n"
            "  steelyard handout --blueprint mine.blueprint.toml --large-print --out handouts",
            &add_handout_options};
}

} // namespace steelyard::cli
