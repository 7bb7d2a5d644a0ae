#pragma once
// What is wrong with a file or a typed line, said so that its author can mend it.

#include "setup/toml/spelling.h"

#include <string>

namespace steelyard::setup {

struct InputError {
    std::string file;     ///< as the caller named it; empty for typed input
    int line = 0;         ///< from 1; 0 = the file as a whole
    int column = 0;       ///< from 1; 0 = unknown
    std::string key;      ///< path of keys, counted from 1: "loads[2].at"; may be empty
    std::string found;    ///< a phrase: "\"45 cmm\""
    std::string expected; ///< a phrase: "a length such as \"45 cm\""
    std::string mend;     ///< what to do, a full sentence; may be empty
};

/// "beam.setup.toml, line 7, loads[2].at: found "45 cmm", expected a length such as "45 cm". Did
/// you mean "cm"?"
std::string to_text(const InputError& error);

} // namespace steelyard::setup
