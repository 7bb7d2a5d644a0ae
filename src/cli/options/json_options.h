#pragma once
// The options of verbs that write for other programs.

#include "cli/reports/json_text.h"

#include <optional>

namespace CLI {
class App;
}

namespace steelyard::cli {

/// Declares --json.
void add_json_option(CLI::App& command, bool& json);

/// How rows are wanted; empty = to read.
using WantedRows = std::optional<RowStyle>;

/// Declares --json and --jsonl, one of which can be given.
void add_row_options(CLI::App& command, WantedRows& rows);

} // namespace steelyard::cli
