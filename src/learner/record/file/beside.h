#pragma once
// Small files of one learner beside the record: what is worth keeping, but no answer. Whoever is
// erased from the record is erased from them too.

#include <array>
#include <cstdint>
#include <string>

namespace steelyard::learner {

inline constexpr const char* kSessionBeside = "session"; ///< in progress: study/kept_session.h
inline constexpr const char* kMarksBeside = "marked";    ///< codes of questions, one a line
inline constexpr std::array kAllBeside{kSessionBeside, kMarksBeside};

/// "session-3.txt": the name of a learner's file in the folder of the record.
inline std::string name_beside(const char* what, std::int64_t learner) {
    return std::string(what) + '-' + std::to_string(learner) + ".txt";
}

} // namespace steelyard::learner
