#include "cli/verbs/record_command.h"

#include "cli/options/checked_options.h"
#include "cli/options/out_file.h"
#include "cli/options/standard_stream.h"
#include "cli/study/record_folder.h"
#include "cli/study/study.h"
#include "cli/study/terminal.h"
#include "learner/record/check.h"
#include "learner/record/exchange/exchange.h"
#include "learner/time/wall_clock.h"
#include "publish/exchange/csv.h"
#include "words/counted.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <cstdio>
#include <fstream>
#include <functional>
#include <memory>
#include <ostream>

namespace steelyard::cli {

namespace {

struct RecordOptions {
    LearnerOptions who;
    std::string what;
    std::string file;
    std::string format;
    bool yes = false;
    bool force = false;
};

/// Long work says how far it is, on the stream beside the results.
learner::Progress progress_on(const Streams& streams) {
    return [&streams](std::int64_t done) {
        constexpr std::int64_t kEvery = 100000;
        if (done % kEvery == 0)
            streams.err << fmt::format("{} answers ...\n", done) << std::flush;
    };
}

bool wants_csv(const RecordOptions& options) {
    if (!options.format.empty())
        return options.format == "csv";
    return std::filesystem::path(options.file).extension() == ".csv";
}

std::string csv_row(const std::vector<learner::Cell>& cells) {
    std::string row;
    for (const learner::Cell& cell : cells)
        row +=
            (row.empty() ? "" : ",") + (cell.is_number ? cell.text : publish::csv_text(cell.text));
    return row + "\r\n";
}

/// Hands out a record piece by piece, so that one of any length takes no more memory.
learner::Recorded<void> hand_out(learner::Record& record, const learner::Learner& who, bool csv,
                                 const std::function<void(std::string_view)>& take,
                                 const learner::Progress& progress) {
    if (!csv)
        return learner::export_json_lines(
            record, who,
            [&](std::string_view line) {
                take(line);
                take("\n");
            },
            progress);
    take(fmt::format("{}\r\n", fmt::join(learner::answer_columns(), ",")));
    return learner::export_rows(
        record, who, [&](const std::vector<learner::Cell>& cells) { take(csv_row(cells)); },
        progress);
}

/// The same into a file; what hinders reading is told as it is.
publish::FileFill filling_with(learner::Record& record, const learner::Learner& who, bool csv,
                               const learner::Progress& progress) {
    return [&record, &who, csv, progress](std::FILE* file) {
        return hand_out(
                   record, who, csv,
                   [file](std::string_view text) {
                       std::fwrite(text.data(), 1, text.size(), file);
                   },
                   progress)
            .map_error([](const learner::RecordError& error) {
                return publish::PublishError{publish::PublishFault::stopped, error.message};
            });
    };
}

ExitStatus export_record(const RecordOptions& options, const Streams& streams) {
    if (!options.file.empty() && !may_write(options.file, options.force, streams))
        return ExitStatus::bad_input;
    auto record = open_record(options.who, streams);
    if (!record)
        return record.error();
    const auto who = known_learner(*record, options.who, streams);
    if (!who)
        return who.error();
    const bool csv = wants_csv(options);
    if (options.file.empty() || options.file == kStandardStream) {
        const auto printed = hand_out(
            *record, *who, csv, [&](std::string_view text) { streams.out << text; },
            progress_on(streams));
        return printed ? ExitStatus::ok : tell(printed.error(), streams);
    }
    if (const auto written = publish::write_whole_file(
            options.file, filling_with(*record, *who, csv, progress_on(streams)),
            publish::Readers::owner);
        !written) {
        streams.err << written.error().message << '\n';
        return ExitStatus::failed;
    }
    const auto sums = record->sums(who->id);
    if (!sums)
        return tell(sums.error(), streams);
    streams.out << fmt::format("{}: {} of {}.\n", options.file, to_text(*sums), who->name);
    return ExitStatus::ok;
}

ExitStatus import_record(const RecordOptions& options, const Streams& streams) {
    if (options.file.empty()) {
        streams.err << "Say what to import: steelyard record import FILE\n";
        return ExitStatus::bad_input;
    }
    const bool from_input = options.file == kStandardStream;
    std::ifstream file(options.file, std::ios::binary);
    if (!from_input && (!file || std::filesystem::is_directory(options.file))) {
        streams.err << fmt::format("The file {} cannot be read.\n", options.file);
        return ExitStatus::bad_input;
    }
    auto shelf = open_course(options.who, streams);
    if (!shelf)
        return shelf.error();
    auto record = open_record(options.who, streams);
    if (!record)
        return record.error();
    const auto imported =
        learner::import_answers(*record, shelf->course, from_input ? streams.in : file,
                                from_input ? kStandardInput : options.file, options.who.learner,
                                learner::wall_clock(), progress_on(streams));
    if (!imported)
        return tell(imported.error(), streams);
    streams.out << fmt::format("{} read; {} new to the record of {}", to_text(imported->read),
                               words::counted(imported->added, "line"), imported->learner)
                << (imported->exams > 0
                        ? fmt::format("; {}.\n", words::counted(imported->exams, "mock exam"))
                        : ".\n");
    back_up(*record, streams);
    return ExitStatus::ok;
}

ExitStatus erase(const RecordOptions& options, const Streams& streams) {
    auto record = open_record(options.who, streams);
    if (!record)
        return record.error();
    if (options.who.learner.empty()) {
        streams.err << "Say whose record to erase: --learner NAME\n";
        return ExitStatus::bad_input;
    }
    const auto who = known_learner(*record, options.who, streams);
    if (!who)
        return who.error();
    const auto sums = record->sums(who->id);
    if (!sums)
        return tell(sums.error(), streams);
    if (!options.yes) {
        std::string line;
        if (!can_answer(streams) ||
            !read_line(streams,
                       fmt::format("All of {} goes, {}, here and in every backup, for good. "
                                   "Type the name to go on",
                                   who->name, to_text(*sums)),
                       line) ||
            line != who->name) {
            streams.err << "Nothing was erased. (--yes erases without asking.)\n";
            return ExitStatus::bad_input;
        }
    }
    if (const auto erased = record->erase_learner(who->id); !erased)
        return tell(erased.error(), streams);
    streams.out << fmt::format("The record of {} is erased.\n", who->name);
    return ExitStatus::ok;
}

ExitStatus check(const RecordOptions& options, const Streams& streams) {
    auto shelf = open_course(options.who, streams);
    if (!shelf)
        return shelf.error();
    auto record = open_record(options.who, streams);
    if (!record)
        return record.error();
    const auto found =
        learner::check_record(*record, shelf->course, learner::wall_clock(), progress_on(streams));
    if (!found)
        return tell(found.error(), streams);
    for (const std::string& fault : found->faults)
        streams.err << wrapped(fault);
    for (const std::string& mended : found->mended)
        streams.out << wrapped(mended);
    streams.out << fmt::format("{}: {}, {}, {}. {}\n",
                               (record->folder() / learner::kRecordFile).string(),
                               words::counted(found->learners, "learner"), to_text(found->answers),
                               words::counted(found->backups, "backup"),
                               found->faults.empty() ? "In order." : "Not in order.");
    return found->faults.empty() ? ExitStatus::ok : ExitStatus::failed;
}

ExitStatus run(const RecordOptions& options, const Streams& streams) {
    if (options.what == "export")
        return export_record(options, streams);
    if (options.what == "import")
        return import_record(options, streams);
    if (options.what == "erase")
        return erase(options, streams);
    return check(options, streams);
}

Work add_record_options(CLI::App& command) {
    auto options = std::make_shared<RecordOptions>();
    only_words(command.add_option("WHAT", options->what, "what to do"),
               {"export", "import", "erase", "check"})
        ->required();
    command
        .add_option("FILE,--out", options->file,
                    "file to write or read, or - for the standard stream, which an export without "
                    "one takes")
        ->type_name("FILE");
    only_words(
        command.add_option("--format", options->format, "of an export; else by the file's ending"),
        {"jsonl", "csv"});
    add_force_option(command, options->force);
    command.add_flag("--yes", options->yes, "erase without asking");
    command
        .add_option("--learner", options->who.learner, "who; for an import, whose answers they are")
        ->type_name("NAME");
    add_data_option(command, options->who.data);
    add_bank_option(command, options->who.questions);
    return [options](const Streams& streams) { return run(*options, streams); };
}

} // namespace

Verb record_verb() {
    return {"record", "export, import, erase or check what is kept of learners",
            "  steelyard record export ada.jsonl\n"
            "  steelyard record export ada.csv --learner \"Ada\"\n"
            "  steelyard record import ada.jsonl\n"
            "  steelyard record export - --format csv | head\n"
            "  steelyard record erase --learner \"Ada\"\n"
            "  steelyard record check",
            add_record_options};
}

} // namespace steelyard::cli
