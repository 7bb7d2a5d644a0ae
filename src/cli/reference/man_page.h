#pragma once
// The manual page, section 1.

#include "cli/reference/command_reference.h"

#include <string>
#include <string_view>
#include <vector>

namespace steelyard::cli {

/// The page in the macros of man(7), which `man -l FILE` shows.
std::string man_page(const std::vector<CommandEntry>& commands, std::string_view version);

} // namespace steelyard::cli
