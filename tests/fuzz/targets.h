#pragma once
// Every reader of what comes from outside, as something that takes any bytes. A target returns when
// the bytes were refused or taken; it ends the program when something that must hold does not.

#include <string_view>
#include <vector>

namespace steelyard::fuzz {

struct Target {
    std::string_view name; ///< also of its folder in corpus/
    void (*take)(std::string_view bytes);
    std::string_view shipped; ///< a folder of the sources with more to begin from; may be empty
};

const std::vector<Target>& all_targets();

} // namespace steelyard::fuzz
