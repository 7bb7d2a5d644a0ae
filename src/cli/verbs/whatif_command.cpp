#include "cli/verbs/whatif_command.h"

#include "cli/options/json_options.h"
#include "cli/options/setup_file.h"
#include "cli/reports/json_text.h"
#include "cli/reports/whatif_report.h"
#include "words/whatif/gym_moves.h"

#include <CLI/CLI.hpp>
#include <memory>
#include <ostream>

namespace steelyard::cli {
namespace {

struct WhatifOptions {
    std::string file;
    WhatIfWords words;
    std::string equal; ///< another setup file
    bool feasible = false;
    bool json = false;
};

ExitStatus refuse(setup::InputError error, const WhatifOptions& options, const Streams& streams) {
    if (error.file.empty() && error.key.rfind("--", 0) != 0)
        error.file = options.file;
    streams.err << to_text(error) << '\n';
    return ExitStatus::bad_input;
}

void print(const Json& json, const std::string& report, const WhatifOptions& options,
           const Streams& streams) {
    if (options.json)
        streams.out << json_text(json);
    else
        streams.out << report;
}

/// The exercise of a file, or nothing after its error was told.
std::optional<setup::BodySetup> body_from_file(const std::string& file, const Streams& streams) {
    auto setup = setup_from(file, streams);
    if (!setup)
        return std::nullopt;
    if (auto* body = std::get_if<setup::BodySetup>(&*setup))
        return std::move(*body);
    streams.err << file << ": found a lever, expected an exercise of the body (kind = \"body\").\n";
    return std::nullopt;
}

ExitStatus answer_feasible(const WhatIfAsked& asked, const std::vector<mechanics::Change>& changes,
                           const WhatifOptions& options, const Streams& streams) {
    const mechanics::Change& change = changes.front();
    const auto range = range_of(change, asked.exercise);
    const auto spans = feasible_settings(asked.exercise, change, asked.goal.wanted.caps);
    if (!range || !spans)
        return refuse(question_error(range ? spans.error() : range.error()), options, streams);
    print(feasible_json(asked, change, *range, *spans),
          feasible_report(asked, change, *range, *spans), options, streams);
    return ExitStatus::ok;
}

ExitStatus answer_torque(const WhatIfAsked& asked, const std::vector<mechanics::Change>& changes,
                         const WhatifOptions& options, const Streams& streams) {
    if (!options.words.change.empty() && !asked.goal.keep) {
        const auto answer = solve_for_torque(asked.exercise, changes.front(), asked.goal.wanted);
        if (!answer)
            return refuse(question_error(answer.error()), options, streams);
        print(answer_json(asked, changes.front(), *answer),
              answer_report(asked, changes.front(), *answer), options, streams);
        return ExitStatus::ok;
    }
    auto ways = ranked_ways(asked.exercise, asked.goal, changes);
    if (!ways)
        return refuse(question_error(ways.error()), options, streams);
    words::order_for_the_gym(*ways, asked.exercise);
    print(ways_json(asked, *ways), ways_report(asked, *ways), options, streams);
    return ExitStatus::ok;
}

/// The torque to reach: of another exercise, or as the words say.
tl::expected<double, setup::InputError>
torque_to_reach(const WhatifOptions& options, const WhatIfAsked& asked,
                const std::optional<setup::BodySetup>& other) {
    const mechanics::Hinge hinge = asked.goal.wanted.hinge;
    if (!other)
        return torque_meant(options.words, asked.exercise, hinge, asked.setup.head.units);
    auto torque_Nm = peak_less(other->exercise, hinge, 0.0);
    if (!torque_Nm)
        return tl::make_unexpected(question_error(torque_Nm.error()));
    return *torque_Nm;
}

/// Everything of the question but the changes.
tl::expected<void, setup::InputError> understand(const WhatifOptions& options,
                                                 const std::optional<setup::BodySetup>& other,
                                                 WhatIfAsked& asked) {
    const auto hinge = hinge_meant(options.words.joint, asked.exercise, "--joint");
    if (!hinge)
        return tl::make_unexpected(hinge.error());
    asked.goal.wanted.hinge = *hinge;
    auto caps = caps_meant(options.words.caps, asked.exercise, asked.setup.head.units);
    if (!caps)
        return tl::make_unexpected(caps.error());
    asked.goal.wanted.caps = std::move(*caps);
    if (!options.words.keep.empty()) {
        const auto kept = hinge_meant(options.words.keep, asked.exercise, "--keep");
        if (!kept)
            return tl::make_unexpected(kept.error());
        const auto within = part_meant(options.words.within, "--within");
        if (!within)
            return tl::make_unexpected(within.error());
        asked.goal.keep = mechanics::Keep{*kept, *within};
    }
    if (options.feasible)
        return {};
    const auto torque_Nm = torque_to_reach(options, asked, other);
    if (!torque_Nm)
        return tl::make_unexpected(torque_Nm.error());
    asked.goal.wanted.torque_Nm = *torque_Nm;
    return {};
}

/// Which of the options cannot stand together; empty when all is well.
std::string contradiction(const WhatifOptions& options) {
    const int goals = (options.words.torque.empty() ? 0 : 1) +
                      (options.words.less.empty() ? 0 : 1) + (options.equal.empty() ? 0 : 1) +
                      (options.feasible ? 1 : 0);
    if (goals != 1)
        return "say what is wanted by one of --torque, --less, --equal and --feasible";
    if (options.feasible && (options.words.caps.empty() || options.words.change.empty()))
        return "--feasible needs --change and one --cap or more";
    return "";
}

ExitStatus what_if(const WhatifOptions& options, const Streams& streams) {
    if (const std::string wrong = contradiction(options); !wrong.empty()) {
        streams.err << "whatif: " << wrong << ".\n";
        return ExitStatus::bad_input;
    }
    const auto setup = body_from_file(options.file, streams);
    if (!setup)
        return ExitStatus::bad_input;
    std::optional<setup::BodySetup> other;
    if (!options.equal.empty() && !(other = body_from_file(options.equal, streams)))
        return ExitStatus::bad_input;
    WhatIfAsked asked{*setup, setup->exercise, {}};
    if (auto understood = understand(options, other, asked); !understood)
        return refuse(understood.error(), options, streams);
    const auto changes =
        changes_meant(options.words.change, asked.exercise, asked.goal.wanted.hinge);
    if (!changes)
        return refuse(changes.error(), options, streams);
    return options.feasible ? answer_feasible(asked, *changes, options, streams)
                            : answer_torque(asked, *changes, options, streams);
}

Work add_whatif_options(CLI::App& command) {
    const auto options = std::make_shared<WhatifOptions>();
    WhatIfWords& words = options->words;
    command.add_option("SETUP", options->file, std::string(kSetupHelp))->required()->type_name("");
    command
        .add_option("--joint", words.joint,
                    "whose peak torque is meant: lumbar_flexion, elbow_flexion, right_hip; a name\n"
                    "without a side, or of a joint, means its hinge with the largest torque")
        ->required()
        ->type_name("JOINT");
    command.add_option("--torque", words.torque, "the wanted peak torque: \"20 Nm\"")
        ->type_name("TORQUE");
    command.add_option("--less", words.less, "take this part off the present peak: \"20 %\"")
        ->type_name("PART");
    command.add_option("--equal", options->equal, "as much as in this other exercise")
        ->type_name("SETUP");
    command.add_flag("--feasible", options->feasible,
                     "ask for every setting of the change that keeps the caps");
    command
        .add_option("--change", words.change,
                    "what to change: load, angle, distance, place, pulley, slack or tempo;\n"
                    "\"load:NAME\" and \"angle:JOINT\" say of what. Left out: every change, ranked")
        ->type_name("CHANGE");
    command.add_option("--keep", words.keep, "another joint that is to keep its torque")
        ->type_name("JOINT");
    command.add_option("--within", words.within, "by how much that one may change")
        ->type_name("PART")
        ->capture_default_str();
    command
        .add_option("--cap", words.caps, "most that a joint may be asked: \"hip_flexion=90 Nm\"")
        ->type_name("JOINT=TORQUE");
    add_json_option(command, options->json);
    return [options](const Streams& streams) { return what_if(*options, streams); };
}

} // namespace

Verb whatif_verb() {
    return {
        "whatif", "find the change of an exercise that gives a wanted torque at a joint",
        "  steelyard whatif crate-far --joint lumbar_flexion --less \"20 %\" --change distance\n"
        "  steelyard whatif curl-dumbbell --joint elbow_flexion --torque 20Nm --change load\n"
        "  steelyard whatif crate-far --joint lumbar --less \"20 %\" --keep hip",
        &add_whatif_options};
}

} // namespace steelyard::cli
