#include "cli/options/out_file.h"

#include "cli/options/standard_stream.h"
#include "setup/toml/letters.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <filesystem>
#include <ostream>
#include <system_error>

namespace steelyard::cli {

namespace fs = std::filesystem;

void add_force_option(CLI::App& command, bool& force) {
    command.add_flag("--force", force, "write over what is there already");
}

bool may_write(const std::string& out, bool force, const Streams& streams) {
    if (out == kStandardStream)
        return true;
    std::error_code failed;
    const fs::file_status there = fs::status(out, failed);
    const bool taken =
        fs::is_regular_file(there) || (fs::is_directory(there) && !fs::is_empty(out, failed));
    if (force || !taken)
        return true;
    streams.err << fmt::format("{} is there already: name another{}, or add --force to write over "
                               "it.\n",
                               setup::one_line(out), fs::is_directory(there) ? " folder" : "");
    return false;
}

} // namespace steelyard::cli
