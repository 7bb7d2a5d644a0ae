#include "cli/options/json_options.h"

#include <CLI/CLI.hpp>

namespace steelyard::cli {

void add_json_option(CLI::App& command, bool& json) {
    command.add_flag("--json", json, "for another program: JSON, numbers in SI");
}

void add_row_options(CLI::App& command, WantedRows& rows) {
    CLI::Option* const document = command.add_flag_callback(
        "--json", [&rows] { rows = RowStyle::document; }, "for another program: JSON");
    command
        .add_flag_callback(
            "--jsonl", [&rows] { rows = RowStyle::lines; },
            "for another program: JSON Lines, a row each")
        ->excludes(document);
}

} // namespace steelyard::cli
