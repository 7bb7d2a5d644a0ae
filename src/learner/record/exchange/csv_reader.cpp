#include "learner/record/exchange/csv_reader.h"

#include "learner/record/exchange/import_lines.h"

#include <fmt/format.h>

namespace steelyard::learner {

tl::expected<std::optional<std::vector<std::string>>, std::string> CsvReader::row() {
    line_ = next_line_;
    std::vector<std::string> cells(1);
    bool quoted = false;
    bool was_quoted = false;
    bool any = false;
    std::size_t bytes = 0;
    for (int c = in_.get(); c != std::istream::traits_type::eof(); c = in_.get()) {
        any = true;
        const char character = static_cast<char>(c);
        next_line_ += character == '\n' ? 1 : 0;
        // Also a cell within quotation marks, and commas without end.
        if (++bytes > kLongestLine)
            return tl::make_unexpected(fmt::format("a row of more than {} bytes", kLongestLine));
        if (quoted) {
            if (character != '"')
                cells.back() += character;
            else if (in_.peek() == '"')
                cells.back() += static_cast<char>(in_.get());
            else
                quoted = false;
        } else if (character == '"' && cells.back().empty() && !was_quoted) {
            quoted = was_quoted = true;
        } else if (character == '"') {
            return tl::make_unexpected(std::string("a quotation mark within a cell"));
        } else if (character == ',') {
            if (cells.size() == kMostCells)
                return tl::make_unexpected(fmt::format("a row of more than {} cells", kMostCells));
            cells.emplace_back();
            was_quoted = false;
        } else if (character == '\n') {
            return cells;
        } else if (character != '\r') {
            cells.back() += character;
        }
    }
    if (quoted)
        return tl::make_unexpected(std::string("a quotation mark that is never closed"));
    if (!any)
        return std::nullopt;
    return cells;
}

} // namespace steelyard::learner
