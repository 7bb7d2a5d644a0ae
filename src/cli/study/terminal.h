#pragma once
// Conversation in a terminal: lines that fit, and answers that are typed.

#include "cli/verbs/verb.h"

#include <string>
#include <string_view>

namespace steelyard::cli {

/// Columns of a usual terminal, with a little air.
inline constexpr std::size_t kColumns = 78;

/// Breaks a text at blanks so that no line is longer than a terminal; ends with a line break.
/// @param indent  before every line
std::string wrapped(const std::string& text, const std::string& indent = "");

/// How many columns a text takes: letters beyond ASCII take more bytes than columns.
std::size_t columns_of(std::string_view text);

/// Columns for a drawing: those of the terminal that the program writes to, within what can be read
/// at a glance; kColumns for whatever is no terminal.
int terminal_columns(const std::ostream& out);

/// Asks for a line. @return false when the input has ended
bool read_line(const Streams& streams, std::string_view prompt, std::string& line);

/// Whether somebody can type an answer. Streams other than the program's own are a conversation
/// that another part of the program leads.
bool can_answer(const Streams& streams);

/// A bar of so many columns, filled to a share from 0 to 1: "#####....".
std::string bar(double share, std::size_t columns);

/// A seed that nobody chose.
std::uint64_t any_seed();

} // namespace steelyard::cli
