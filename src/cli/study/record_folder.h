#pragma once
// --data DIR before a verb, or for the window: where the record is, if not in the usual folder.

#include <CLI/CLI.hpp>
#include <string>

namespace steelyard::cli {

/// How many words of a command line's beginning say where the record is: 2 for "--data DIR", 1 for
/// "--data=DIR" or a "--data" with nothing after it, else 0.
int leading_data_words(int argc, const char* const* argv);

/// Declares --data; an empty name is refused, since a variable that is not set looks like that.
CLI::Option* add_data_option(CLI::App& command, std::string& folder);

} // namespace steelyard::cli
