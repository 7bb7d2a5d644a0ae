#include "learner/record/exchange/import_lines.h"

namespace steelyard::learner {

bool read_line(std::istream& in, std::string& line) {
    line.clear();
    for (int c = in.get(); c != std::istream::traits_type::eof() && c != '\n'; c = in.get()) {
        if (line.size() == kLongestLine)
            return false;
        line += static_cast<char>(c);
    }
    return true;
}

} // namespace steelyard::learner
