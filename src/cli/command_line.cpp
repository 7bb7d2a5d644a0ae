#include "cli/command_line.h"

#include "cli/options/checked_options.h"
#include "cli/reference/exit_statuses.h"
#include "cli/study/record_folder.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cctype>
#include <exception>
#include <ostream>
#include <string>
#include <vector>

namespace steelyard::cli {
namespace {

constexpr std::string_view kVersion = STEELYARD_VERSION;

std::string overview(const std::vector<Verb>& verbs) {
    std::string text = "Steelyard: levers, moment arms and torque, drawn, solved and asked.\n\n"
                       "  steelyard                 open the window\n"
                       "  steelyard FILE            open the window with a setup or a lesson\n"
                       "    --data DIR              ... with the record of this folder; also\n"
                       "                            before or after a verb that keeps one\n"
                       "    --size 1280x720         ... as large as this\n"
                       "    --narration FILE        ... writing what every frame shows, in words\n"
                       "                            and places, as lines of JSON\n";
    for (const Verb& verb : verbs)
        text += fmt::format("  steelyard {:<15} {}\n", verb.name, verb.summary);
    text += "\nFor example:\n";
    for (const Verb& verb : verbs) {
        text += verb.examples.substr(0, verb.examples.find('\n'));
        text += '\n';
    }
    text += "\nExit status:\n";
    for (const StatusMeaning& status : kExitStatuses)
        text += fmt::format("  {}  {}\n", static_cast<int>(status.status), status.says);
    text += "\n`steelyard VERB --help` shows a verb's options and more examples;\n"
            "`steelyard --version` says which version this is. A file's name may be -, for\n"
            "standard input or output.\n"
            "A setup is a short text file: assets/setups/README.md shows how to write one.\n\n"
            "Educational, not medical advice. Estimates for rigid levers and limbs. Stop if it\n"
            "hurts. Local regulations, your scope of practice and licensed practitioners come\n"
            "first.\n";
    return text;
}

/// "solve a setup" as "Solve a setup."
std::string sentence(std::string_view summary) {
    std::string text(summary);
    text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
    return text + '.';
}

ExitStatus refuse(const Streams& streams, std::string_view message, std::string_view command) {
    streams.err << fmt::format("{}\nSee `{} --help`.\n", message, command);
    return ExitStatus::bad_input;
}

/// The command line with what says before the verb where the record is put behind it.
std::vector<const char*> verb_first(int argc, const char* const* argv) {
    std::vector<const char*> words(argv, argv + argc);
    const int moved = leading_data_words(argc, argv);
    std::rotate(words.begin() + 1, words.begin() + 1 + moved, words.end());
    return words;
}

/// What was typed and is no option, with the nearest one.
std::string unknown_word(const CLI::App& parser) {
    const std::vector<std::string> left = parser.remaining();
    const std::string typed = left.empty() ? "" : left.front();
    if (typed.rfind("--", 0) != 0)
        return fmt::format("'{}' was not expected.", typed);
    std::vector<std::string> names;
    for (const CLI::Option* option : parser.get_options())
        for (const std::string& name : option->get_lnames())
            names.push_back("--" + name);
    const std::string name = typed.substr(0, typed.find('='));
    return fmt::format("There is no option '{}'.{}", name, did_you_mean(name, names));
}

ExitStatus run_verb(const Verb& verb, const std::vector<const char*>& words, bool names_record,
                    const Streams& streams) {
    const std::string command = fmt::format("steelyard {}", verb.name);
    CLI::App parser{sentence(verb.summary), command};
    parser.set_help_flag("-h,--help", "show this");
    parser.footer("For example:\n" + std::string(verb.examples));
    const Work work = verb.add_options(parser);
    if (names_record && parser.get_option_no_throw("--data") == nullptr)
        return refuse(streams, fmt::format("`{}` reads no record: leave --data out.", command),
                      command);
    try {
        parser.parse(static_cast<int>(words.size()) - 1, words.data() + 1);
    } catch (const CLI::CallForHelp&) {
        streams.out << parser.help();
        return ExitStatus::ok;
    } catch (const CLI::ExtrasError&) {
        return refuse(streams, unknown_word(parser), command);
    } catch (const CLI::ParseError& error) {
        return refuse(streams, error.what(), command);
    }
    return work(streams);
}

std::string unknown_verb(std::string_view word, const std::vector<Verb>& verbs) {
    std::vector<std::string> names;
    for (const Verb& verb : verbs)
        names.emplace_back(verb.name);
    return fmt::format("There is no verb '{}'.{}", word, did_you_mean(word, names));
}

ExitStatus run(int argc, const char* const* argv, const Streams& streams) {
    const std::vector<Verb> verbs = all_verbs();
    const std::vector<const char*> words = verb_first(argc, argv);
    const std::string_view first = words.size() > 1 ? words[1] : "--help";
    if (first == "--help" || first == "-h" || first == "help") {
        streams.out << overview(verbs);
        return ExitStatus::ok;
    }
    if (first == "--version") {
        streams.out << "steelyard " << kVersion << '\n';
        return ExitStatus::ok;
    }
    const auto verb = std::find_if(verbs.begin(), verbs.end(),
                                   [&](const Verb& known) { return known.name == first; });
    if (verb == verbs.end())
        return refuse(streams, unknown_verb(first, verbs), "steelyard");
    return run_verb(*verb, words, leading_data_words(argc, argv) > 0, streams);
}

} // namespace

int run_command_line(int argc, const char* const* argv, const Streams& streams) {
    ExitStatus status = ExitStatus::failed;
    try {
        status = run(argc, argv, streams);
    } catch (const std::exception& error) {
        // Nothing of ours throws: this is memory that ran out, or a library's surprise.
        streams.err << "Stopped: " << error.what() << '\n';
    }
    streams.out.flush();
    if (status == ExitStatus::ok && !streams.out) {
        streams.err << "The output could not be written in full.\n";
        status = ExitStatus::failed;
    }
    return static_cast<int>(status);
}

} // namespace steelyard::cli
