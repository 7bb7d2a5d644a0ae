#pragma once
// Lines of a file from anywhere, no longer than a line of ours can be.

#include <cstddef>
#include <istream>
#include <string>

namespace steelyard::learner {

/// The longest line or row that is read [bytes]: an exam of 500 questions with answers of 4000
/// bytes has half as many.
inline constexpr std::size_t kLongestLine = 4U << 20U;

/// The most cells of a row: a table of somebody's has columns of its own, but not so many.
inline constexpr std::size_t kMostCells = 1000;

/// Reads the next line, without its line break. @return false when it is longer than kLongestLine
bool read_line(std::istream& in, std::string& line);

} // namespace steelyard::learner
