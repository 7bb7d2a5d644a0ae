#include "cli/solve_command.h"

#include "cli/lever_report.h"
#include "cli/setup_file.h"

#include <CLI/CLI.hpp>
#include <memory>
#include <ostream>

namespace steelyard::cli {
namespace {

struct Options {
    std::string file;
    bool json = false;
};

ExitStatus solve(const Options& options, const Streams& streams) {
    const auto setup = setup_from(options.file, streams);
    if (!setup) {
        return ExitStatus::bad_input;
    }
    const auto* found = std::get_if<setup::LeverSetup>(&*setup);
    if (!found) {
        streams.err << options.file << ": found a body setup, expected a lever.\n";
        return ExitStatus::bad_input;
    }
    const setup::LeverSetup& lever = *found;
    const auto result = solved(lever, streams);
    if (!result) {
        return ExitStatus::bad_input;
    }
    if (options.json) {
        streams.out << lever_json(lever, *result).dump(2) << '\n';
    } else {
        streams.out << lever_report(lever, *result);
    }
    return ExitStatus::ok;
}

Work add_options(CLI::App& command) {
    const auto options = std::make_shared<Options>();
    command
        .add_option("FILE", options->file,
                    "a setup file, or the name of one that comes with the program")
        ->required()
        ->type_name("");
    command.add_flag("--json", options->json, "for another program: JSON, numbers in SI");
    return [options](const Streams& streams) { return solve(*options, streams); };
}

} // namespace

Verb solve_verb() {
    return {"solve", "solve a setup: effort, moment arms, torques, class",
            "  steelyard solve launch-trolley\n"
            "  steelyard solve my-lever.setup.toml --json",
            &add_options};
}

} // namespace steelyard::cli
