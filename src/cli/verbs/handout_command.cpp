#include "cli/verbs/handout_command.h"

#include "cli/options/checked_options.h"
#include "cli/options/picture_options.h"
#include "cli/options/question_options.h"
#include "cli/options/shipped_file.h"
#include "cli/options/standard_stream.h"
#include "paint/paint_tools.h"
#include "publish/files/whole_file.h"
#include "publish/sheets/blueprint.h"
#include "publish/sheets/handout_job.h"
#include "publish/sheets/sheet_choice.h"
#include "setup/toml/spelling.h"

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
    QuestionOptions questions; ///< for --bank, --seed, --difficulty, --about and --own
    // A sheet that is put together in place of a blueprint.
    std::vector<std::string> topics;
    std::optional<std::int64_t> each;
    std::string title;
    std::string save; ///< where the choice is kept as a blueprint; empty = nowhere
    bool codes = false;

    bool chooses() const {
        return !topics.empty() || each || questions.difficulty || questions.about;
    }
};

/// The sheet that was put together by options; nothing after telling what is no skill.
std::optional<publish::Blueprint> chosen_blueprint(const HandoutOptions& options,
                                                   const problems::Bank& bank,
                                                   const Streams& streams) {
    publish::SheetChoice choice;
    for (const std::string& topic : options.topics) {
        if (bank.find_skill(topic) == nullptr) {
            std::vector<std::string_view> ids;
            for (const problems::Skill& skill : bank.skills)
                ids.push_back(skill.id);
            const std::string meant = setup::nearest_spelling(topic, ids);
            streams.err << fmt::format("--topic: there is no skill \"{}\".{}\n", topic,
                                       meant.empty() ? " `steelyard list skills` names them all."
                                                     : " Did you mean " + meant + "?");
            return std::nullopt;
        }
        choice.skills.push_back(topic);
    }
    choice.each = options.each.value_or(choice.each);
    choice.difficulty = options.questions.difficulty;
    choice.about = options.questions.about;
    if (!options.title.empty())
        choice.title = options.title;
    return publish::blueprint_of(choice, bank, "sheet");
}

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

std::optional<publish::Blueprint> named_blueprint(const HandoutOptions& options,
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
    return std::move(*blueprint);
}

/// The blueprint of a file or of a choice, with what the other options say.
std::optional<publish::Blueprint>
blueprint_from(const HandoutOptions& options, const problems::Bank& bank, const Streams& streams) {
    auto blueprint = options.chooses() ? chosen_blueprint(options, bank, streams)
                                       : named_blueprint(options, streams);
    if (!blueprint)
        return std::nullopt;
    blueprint->with_own = blueprint->with_own || options.questions.own;
    blueprint->prints_codes = blueprint->prints_codes || options.codes;
    blueprint->large_print = blueprint->large_print || options.large_print;
    blueprint->in_us_units = options.questions.units == "us";
    if (!options.paper.empty()) {
        blueprint->paper =
            options.paper == "A4" ? publish::PaperSize::a4 : publish::PaperSize::letter;
    }
    return blueprint;
}

/// Keeps the choice as a blueprint, from which the same sheet is made again.
ExitStatus save_blueprint(const HandoutOptions& options, publish::Blueprint& blueprint,
                          const Streams& streams) {
    fs::path path = options.save;
    if (!path.string().ends_with(publish::kBlueprintEnding))
        path += publish::kBlueprintEnding;
    std::error_code failed;
    if (fs::exists(path, failed)) {
        streams.err << fmt::format("--save: {} is there already; name another.\n", path.string());
        return ExitStatus::bad_input;
    }
    const auto written = publish::write_whole_file(path, publish::write_blueprint(blueprint));
    if (!written) {
        streams.err << written.error().message << '\n';
        return status_of(written.error());
    }
    streams.out << path.string() << '\n';
    blueprint.name = path.filename().string();
    blueprint.name.resize(blueprint.name.size() - publish::kBlueprintEnding.size());
    return ExitStatus::ok;
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
    if (options.blueprint.empty() == !options.chooses()) {
        streams.err << "Say what to make: --blueprint NAME, --topic SKILL, or --code of a sheet; "
                       "one of them.\n";
        return ExitStatus::bad_input;
    }
    const problems::Bank bank = open_bank(options.questions, streams);
    auto blueprint = blueprint_from(options, bank, streams);
    if (!blueprint)
        return ExitStatus::bad_input;
    if (!options.save.empty())
        if (const ExitStatus saved = save_blueprint(options, *blueprint, streams);
            saved != ExitStatus::ok)
            return saved;
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

/// What a sheet is put together from without a blueprint.
void add_topic_options(CLI::App& command, HandoutOptions& options) {
    command
        .add_option("--topic", options.topics,
                    "without a blueprint: questions of this skill (`steelyard list skills`); "
                    "several are named one after the other")
        ->type_name("SKILL");
    command.add_option("--each", options.each, "questions of each topic; without topics, in all")
        ->check(CLI::Range(1, 200))
        ->type_name("N");
    command
        .add_option("--difficulty", options.questions.difficulty,
                    "only this, from 1 (easy) to 5 (hard)")
        ->check(CLI::Range(1, 5))
        ->type_name("N");
    add_scene_options(command, options.questions);
    command.add_option("--title", options.title, "what stands at the top")->type_name("TEXT");
    command.add_option("--save", options.save, "keep the choice as a blueprint of this name")
        ->type_name("FILE");
    command.add_flag("--codes", options.codes,
                     "print each question's code below it, so that pupils can mark themselves: "
                     "`steelyard ask CODE`");
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
    add_topic_options(command, *options);
    add_units_option(command, options->questions);
    add_bank_option(command, options->questions);
    return [options](const Streams& streams) { return handout(*options, streams); };
}

} // namespace

Verb handout_verb() {
    return {"handout", "make worksheets with keys, in several versions",
            "  steelyard handout --blueprint boathouse --seed 42 --versions 3 --out handouts\n"
            "  steelyard handout --code boathouse-42-B --out handouts\n"
            "  steelyard handout --topic balance --topic lever-class --each 4 --codes --out "
            "handouts\n"
            "  steelyard handout --blueprint mine.blueprint.toml --large-print --out handouts",
            &add_handout_options};
}

} // namespace steelyard::cli
