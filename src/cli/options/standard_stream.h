#pragma once
// "-" in place of a file's name: standard input, or standard output.

#include "cli/verbs/verb.h"
#include "publish/files/whole_file.h"

#include <string>
#include <string_view>

namespace steelyard::cli {

inline constexpr std::string_view kStandardStream = "-";
/// What errors call a text that came from there.
inline constexpr const char* kStandardInput = "standard input";

/// All that is left of standard input.
std::string all_of_input(const Streams& streams);

/// Writes a file whole or not at all, or "-" to standard output; told on streams.err when it cannot
/// be.
ExitStatus write_out(const std::string& name, std::string_view bytes, const Streams& streams,
                     publish::Readers readers = publish::Readers::as_usual);

} // namespace steelyard::cli
