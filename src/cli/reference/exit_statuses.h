#pragma once
// What the process reports when it ends, in words.

#include "cli/verbs/verb.h"

#include <array>
#include <string_view>

namespace steelyard::cli {

struct StatusMeaning {
    ExitStatus status;
    std::string_view says; ///< of one line
};

inline constexpr std::array<StatusMeaning, 3> kExitStatuses{{
    {ExitStatus::ok, "done"},
    {ExitStatus::failed, "failed although the input was fine: a full disk, a lost folder"},
    {ExitStatus::bad_input, "bad input: what was typed, or a file that was named"},
}};

} // namespace steelyard::cli
