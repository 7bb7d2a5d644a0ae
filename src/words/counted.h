#pragma once
// Numbers of things in sentences.

#include <cstdint>
#include <string>
#include <string_view>

namespace steelyard::words {

/// "1 answer", "3 answers".
/// @param thing  one of them; its plural ends in s
std::string counted(std::int64_t count, std::string_view thing);

} // namespace steelyard::words
