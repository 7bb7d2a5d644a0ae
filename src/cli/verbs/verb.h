#pragma once
// What a verb of the command line is. Each verb lives in a file of its own and is one line in the
// table in verbs.cpp.

#include <functional>
#include <iosfwd>
#include <string_view>
#include <vector>

namespace CLI {
class App;
}

namespace steelyard::cli {

/// Where the program reads and writes; standard streams in the program, strings in a test.
struct Streams {
    std::istream& in;
    std::ostream& out;
    std::ostream& err;
};

/// How a run ended, as the process reports it.
enum class ExitStatus {
    ok = 0,
    failed = 1,    ///< the input was fine, something else was not: a full disk, a lost folder
    bad_input = 2, ///< the command line or a file says something that cannot be
};

/// The work of a verb once its options are known.
using Work = std::function<ExitStatus(const Streams&)>;

struct Verb {
    std::string_view name;     ///< one word, as typed: "solve"
    std::string_view summary;  ///< one line without a full stop, for the list of verbs
    std::string_view examples; ///< complete commands, one a line, each after two spaces
    /// Declares the verb's options on its command and returns the work that reads them.
    Work (*add_options)(CLI::App& command);
};

/// Every verb, in the order in which help lists them.
std::vector<Verb> all_verbs();

} // namespace steelyard::cli
