#pragma once
// The first letter of a sentence.

#include <string>

namespace steelyard::words {

/// The text with a capital letter first; only a to z change.
std::string capitalised(std::string text);

} // namespace steelyard::words
