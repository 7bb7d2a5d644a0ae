#include "cli/verbs/solve_command.h"

#include "cli/options/json_options.h"
#include "cli/options/setup_file.h"
#include "cli/reports/json_text.h"
#include "cli/reports/lever_report.h"
#include "cli/verbs/solve_body.h"

#include <CLI/CLI.hpp>
#include <memory>
#include <ostream>

namespace steelyard::cli {
namespace {

struct SolveOptions {
    std::string file;
    bool json = false;
    bool sweep = false;
};

ExitStatus solve(const SolveOptions& options, const Streams& streams) {
    const auto setup = setup_from(options.file, streams);
    if (!setup)
        return ExitStatus::bad_input;
    if (const auto* body = std::get_if<setup::BodySetup>(&*setup))
        return solve_body_setup(*body, {options.json, options.sweep}, streams);
    const auto& lever = std::get<setup::LeverSetup>(*setup);
    const auto result = solved(lever, streams);
    if (!result)
        return ExitStatus::bad_input;
    if (options.json)
        streams.out << json_text(lever_json(lever, *result));
    else
        streams.out << lever_report(lever, *result);
    return ExitStatus::ok;
}

Work add_solve_options(CLI::App& command) {
    const auto options = std::make_shared<SolveOptions>();
    command.add_option("SETUP", options->file, std::string(kSetupHelp))->required()->type_name("");
    command.add_flag("--sweep", options->sweep,
                     "for an exercise: the curves along its path as well");
    add_json_option(command, options->json);
    return [options](const Streams& streams) { return solve(*options, streams); };
}

} // namespace

Verb solve_verb() {
    return {"solve", "solve a setup: effort, moment arms, torques, class, muscle forces",
            "  steelyard solve launch-trolley\n"
            "  steelyard solve my-lever.setup.toml --json\n"
            "  sed 's/60 kg/80 kg/' my-lever.setup.toml | steelyard solve -\n"
            "  steelyard solve curl-dumbbell --sweep",
            &add_solve_options};
}

} // namespace steelyard::cli
