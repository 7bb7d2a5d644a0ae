#pragma once
// Rows of comma-separated values.
// Source of the format: RFC 4180; line breaks may be LF alone, and a byte order mark is skipped.

#include <tl/expected.hpp>

#include <istream>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::learner {

class CsvReader {
public:
    /// The stream must outlive it.
    explicit CsvReader(std::istream& in) : in_(in) {}

    /// The next row; nothing after the last one; or what is wrong with it, as a phrase.
    tl::expected<std::optional<std::vector<std::string>>, std::string> row();

    /// Line on which the last row began, from 1.
    int line() const { return line_; }

private:
    std::istream& in_;
    int line_ = 0;
    int next_line_ = 1;
};

} // namespace steelyard::learner
