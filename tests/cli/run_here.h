#pragma once
// Runs a command in this process and keeps what it wrote.

#include "cli/command_line.h"

#include <sstream>
#include <string>
#include <vector>

struct Run {
    int status = -1;
    std::string out;
    std::string err;
};

/// @param arguments  without the program's name
/// @param typed      what stands on standard input
inline Run run_here(std::vector<std::string> arguments, const std::string& typed = "") {
    std::vector<const char*> argv{"steelyard"};
    for (const std::string& argument : arguments)
        argv.push_back(argument.c_str());
    std::istringstream in(typed);
    std::ostringstream out;
    std::ostringstream err;
    const int status = steelyard::cli::run_command_line(static_cast<int>(argv.size()), argv.data(),
                                                        {in, out, err});
    return {status, out.str(), err.str()};
}
