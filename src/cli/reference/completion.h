#pragma once
// Scripts that complete words of the command line in a shell.

#include "cli/reference/command_reference.h"

#include <string>
#include <vector>

namespace steelyard::cli {

/// For bash 4 or newer; to be sourced, or put into a folder of bash-completion.
std::string bash_completion(const std::vector<CommandEntry>& commands);
/// For zsh; a file _steelyard of a folder in $fpath.
std::string zsh_completion(const std::vector<CommandEntry>& commands);
/// For fish; a file of its folder of completions.
std::string fish_completion(const std::vector<CommandEntry>& commands);

} // namespace steelyard::cli
