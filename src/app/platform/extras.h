#pragma once
// What a platform does for the person beside the program, where there is no other way to it.

#include <span>

namespace steelyard::app {

/// A deed and the words that it is chosen by.
struct Extra {
    const char* words;
    void (*act)();
};

/// A page opens files and shows its licences; a desktop has its own ways to both, and no extras.
std::span<const Extra> extras();

} // namespace steelyard::app
