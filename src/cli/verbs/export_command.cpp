#include "cli/verbs/export_command.h"

#include "cli/options/checked_options.h"
#include "cli/options/out_file.h"
#include "cli/options/picture_options.h"
#include "cli/options/question_options.h"
#include "cli/options/standard_stream.h"
#include "paint/paint_tools.h"
#include "publish/sheets/handout_job.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <map>
#include <memory>
#include <ostream>

namespace steelyard::cli {
namespace {

struct ExportOptions {
    QuestionOptions questions;
    std::size_t count = 20;
    std::string format;
    std::string title;
    std::string out;
    bool force = false;
};

/// The words of the command line for formats, in the order in which help lists them.
const std::map<std::string, publish::HandoutFormat> kFormats{
    {"qti21", publish::HandoutFormat::qti21},
    {"qti3", publish::HandoutFormat::qti3},
    {"csv", publish::HandoutFormat::csv},
    {"cards", publish::HandoutFormat::cards}};

ExitStatus export_questions(const ExportOptions& options, const Streams& streams) {
    if (!may_write(options.out, options.force, streams))
        return ExitStatus::bad_input;
    const auto whole = open_whole_bank(options.questions, streams);
    if (!whole)
        return ExitStatus::bad_input;
    const problems::Bank& bank = *whole;
    const auto questions =
        problems::make_collection(bank, plan_from(options.questions, options.count));
    if (!questions) {
        streams.err << questions.error().message << '\n';
        return ExitStatus::bad_input;
    }
    const auto drawings =
        options.out.size() > 4 && options.out.rfind(".zip") == options.out.size() - 4
            ? publish::Drawings::beside
            : publish::Drawings::left_out;
    const auto made = publish::exported_questions(kFormats.at(options.format), bank, *questions,
                                                  options.title, drawings, paint::paint_tools());
    if (!made) {
        streams.err << made.error().message << '\n';
        return status_of(made.error());
    }
    if (made->left_out > 0)
        streams.err << fmt::format("{} of {} questions need their drawing and were left out. End "
                                   "the name in .zip to have the drawings beside the table.\n",
                                   made->left_out, questions->size());
    return write_out(options.out, made->bytes, streams);
}

Work add_export_options(CLI::App& command) {
    const auto options = std::make_shared<ExportOptions>();
    std::vector<std::string> formats;
    for (const auto& [word, format] : kFormats)
        formats.push_back(word);
    only_words(command.add_option(
                   "--format", options->format,
                   "qti21 or qti3 (a package for a course site), csv (questions and keys), "
                   "cards (flash cards as CSV). A name that ends in .zip "
                   "holds the drawings beside the CSV; without them, what needs one is left out"),
               formats)
        ->required();
    command.add_option("--count", options->count, "how many questions")
        ->check(CLI::Range(1, 100000))
        ->type_name("N");
    command.add_option("--title", options->title, "title of the test in a package")
        ->default_str("Levers, moment arms and torque")
        ->type_name("TEXT");
    options->title = "Levers, moment arms and torque";
    command.add_option("--out", options->out, "file to write, or - for standard output")
        ->required()
        ->type_name("FILE");
    add_force_option(command, options->force);
    add_choice_options(command, options->questions);
    return [options](const Streams& streams) { return export_questions(*options, streams); };
}

} // namespace

Verb export_verb() {
    return {"export", "write questions as a QTI package, as CSV or as flash cards",
            "  steelyard export --format qti21 --count 20 --seed 42 --out levers.zip\n"
            "  steelyard export --format csv --count 50 --out levers.zip\n"
            "  steelyard export --format cards --skill moment-arm-oblique --out cards.csv",
            &add_export_options};
}

} // namespace steelyard::cli
