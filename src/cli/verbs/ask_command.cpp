#include "cli/verbs/ask_command.h"

#include "cli/options/question_options.h"
#include "cli/study/practice.h"
#include "cli/study/terminal.h"

#include <CLI/CLI.hpp>
#include <memory>
#include <ostream>

namespace steelyard::cli {

namespace {

struct AskOptions {
    QuestionOptions questions;
    std::string code;
    std::size_t count = 10;
    std::size_t done_steps = 0;
};

ExitStatus ask(const AskOptions& options, const Streams& streams) {
    const problems::Bank bank = open_bank(options.questions, streams);
    problems::PaperPlan plan = plan_from(options.questions, options.count);
    const bool conversation = can_answer(streams);
    if (!options.questions.seed)
        plan.seed = any_seed();
    if (!options.code.empty()) {
        const auto question = problems::question_from_code(bank, options.code);
        if (!question) {
            streams.err << question.error().message << '\n';
            return ExitStatus::bad_input;
        }
        if (conversation)
            return practise_one(bank, *question, options.done_steps, streams);
        show_worked(*question, streams);
        return ExitStatus::ok;
    }
    if (conversation)
        return practise(bank, plan, options.done_steps, streams);
    plan.count = 1;
    const auto questions = problems::make_paper(bank, plan);
    if (!questions) {
        streams.err << questions.error().message << '\n';
        return ExitStatus::bad_input;
    }
    show_worked(questions->front(), streams);
    return ExitStatus::ok;
}

Work add_ask_options(CLI::App& command) {
    auto options = std::make_shared<AskOptions>();
    command.add_option("CODE", options->code, "ask the question with this code")->type_name("");
    command.add_option("--count", options->count, "how many questions")
        ->check(CLI::Range(1, 1000))
        ->type_name("N");
    command
        .add_option("--done", options->done_steps,
                    "steps of each solution that are shown done; you do the rest")
        ->type_name("N");
    add_choice_options(command, options->questions);
    return [options](const Streams& streams) { return ask(*options, streams); };
}

} // namespace

Verb ask_verb() {
    return {"ask", "practise in the terminal, with hints and reasons",
            "  steelyard ask\n"
            "  steelyard ask --skill moment-arm-oblique --count 5\n"
            "  steelyard ask K7M2Q-9XD4T --done 1",
            add_ask_options};
}

} // namespace steelyard::cli
