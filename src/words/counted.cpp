#include "words/counted.h"

#include <fmt/core.h>

namespace steelyard::words {

std::string counted(std::int64_t count, std::string_view thing) {
    return fmt::format("{} {}{}", count, thing, count == 1 ? "" : "s");
}

} // namespace steelyard::words
