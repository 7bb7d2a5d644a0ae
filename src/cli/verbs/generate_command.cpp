#include "cli/verbs/generate_command.h"

#include "cli/options/json_options.h"
#include "cli/options/question_options.h"
#include "cli/reports/question_json.h"
#include "problems/question/paper.h"
#include "problems/question/question_writer.h"

#include <fmt/core.h>

#include <CLI/CLI.hpp>
#include <memory>
#include <ostream>

namespace steelyard::cli {

namespace {

struct GenerateOptions {
    QuestionOptions questions;
    std::size_t count = 10;
    std::string shard;
    WantedRows rows;
};

/// Reads "I/N", counted from 0: 0/4, 1/4, 2/4, 3/4.
bool read_shard(const std::string& text, problems::PaperPlan& plan) {
    if (text.empty())
        return true;
    const std::size_t slash = text.find('/');
    const auto is_number = [](const std::string& part) {
        return !part.empty() && part.size() < 9 &&
               part.find_first_not_of("0123456789") == std::string::npos;
    };
    if (slash == std::string::npos || !is_number(text.substr(0, slash)) ||
        !is_number(text.substr(slash + 1)))
        return false;
    plan.shard = std::stoul(text.substr(0, slash));
    plan.shards = std::stoul(text.substr(slash + 1));
    return plan.shard < plan.shards;
}

void write_plain(const problems::Question& question, std::ostream& out) {
    out << fmt::format("{}  {}\n", question.code, question.prompt);
    const std::vector<problems::Choice>& choices = problems::choices_of(question);
    for (std::size_t i = 0; i < choices.size(); ++i)
        out << fmt::format("    {}  {}\n", problems::letter(i), choices[i].text);
    out << fmt::format("    Answer: {}\n", question.answer_text);
}

ExitStatus generate(const GenerateOptions& options, const Streams& streams) {
    problems::PaperPlan plan = plan_from(options.questions, options.count);
    if (!read_shard(options.shard, plan)) {
        streams.err << fmt::format("--shard {}: write I/N with I from 0 to N - 1, such as 0/4.\n",
                                   options.shard);
        return ExitStatus::bad_input;
    }
    const auto whole = open_whole_bank(options.questions, streams);
    if (!whole)
        return ExitStatus::bad_input;
    const problems::Bank& bank = *whole;
    std::optional<JsonRows> rows;
    if (options.rows)
        rows.emplace(streams.out, "generate", "questions", *options.rows);
    // Written one by one, so that a large pool takes no more memory than one paper.
    const auto drawn = problems::draw_paper(bank, plan, [&](const problems::Instance& instance) {
        const problems::Question question = write_question(bank, instance);
        if (rows)
            rows->add(question_json(question));
        else
            write_plain(question, streams.out);
        return true;
    });
    if (rows && (drawn || rows->begun()))
        rows->finish();
    if (!drawn) {
        streams.err << drawn.error().message << '\n';
        return ExitStatus::bad_input;
    }
    return ExitStatus::ok;
}

Work add_generate_options(CLI::App& command) {
    auto options = std::make_shared<GenerateOptions>();
    command.add_option("--count", options->count, "how many questions")
        ->check(CLI::Range(0, 10000000))
        ->type_name("N");
    add_choice_options(command, options->questions);
    command
        .add_option("--shard", options->shard,
                    "part I of N of the whole, I from 0: the parts together are the whole")
        ->type_name("I/N");
    add_row_options(command, options->rows);
    return [options](const Streams& streams) { return generate(*options, streams); };
}

} // namespace

Verb generate_verb() {
    return {"generate", "make questions with answers, steps and wrong rules",
            "  steelyard generate --count 10 --seed 7\n"
            "  steelyard generate --count 20 --skill lever-class --json\n"
            "  steelyard generate --count 10000 --seed 7 --shard 0/4 --jsonl",
            add_generate_options};
}

} // namespace steelyard::cli
