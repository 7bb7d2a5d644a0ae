#include "cli/verbs/mark_command.h"

#include "cli/options/json_options.h"
#include "cli/options/question_options.h"
#include "cli/reports/json_text.h"
#include "cli/reports/question_json.h"
#include "problems/marking/marking.h"

#include <CLI/CLI.hpp>
#include <memory>
#include <ostream>

namespace steelyard::cli {

namespace {

struct MarkOptions {
    QuestionOptions questions;
    std::string code;
    std::string answer;
    bool json = false;
};

ExitStatus mark(const MarkOptions& options, const Streams& streams) {
    const problems::Bank bank = open_bank(options.questions, streams);
    const auto question = problems::question_from_code(bank, options.code);
    if (!question) {
        streams.err << question.error().message << '\n';
        return ExitStatus::bad_input;
    }
    const problems::Marking marking = problems::mark(bank, *question, options.answer);
    if (options.json) {
        streams.out << json_text(marking_json(*question, marking));
    } else {
        streams.out << marking.feedback << '\n';
        if (!marking.follow_up.empty())
            streams.out << marking.follow_up << '\n';
    }
    return ExitStatus::ok;
}

Work add_mark_options(CLI::App& command) {
    auto options = std::make_shared<MarkOptions>();
    command.add_option("CODE", options->code, "the question's code")->required()->type_name("");
    command.add_option("ANSWER", options->answer, "the answer, with its unit in one argument")
        ->required()
        ->type_name("");
    add_bank_option(command, options->questions);
    add_json_option(command, options->json);
    return [options](const Streams& streams) { return mark(*options, streams); };
}

} // namespace

Verb mark_verb() {
    return {"mark", "mark an answer to a question, by its code",
            "  steelyard mark K7M2Q-9XD4T \"47.1 N·m\"\n"
            "  steelyard mark K7M2Q-9XD4T B --json",
            add_mark_options};
}

} // namespace steelyard::cli
