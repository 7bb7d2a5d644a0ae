#pragma once
// Capital and small letters of the Latin alphabet; all other letters stay what they are.

#include <string>

namespace steelyard::words {

/// The text with a capital letter first, as a sentence begins.
std::string capitalised(std::string text);

/// The text in small letters, to compare what people type.
std::string in_small_letters(std::string text);

} // namespace steelyard::words
