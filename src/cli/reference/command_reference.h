#pragma once
// Every command with its options as data, read from the declarations that also parse the command
// line. The manual page and what completes words in a shell are made of it.

#include "cli/verbs/verb.h"

#include <string>
#include <string_view>
#include <vector>

namespace CLI {
class App;
}

namespace steelyard::cli {

/// What completes the value of an option, by the word that stands for the value in help.
enum class ValueKind {
    none,      ///< a switch without a value
    other,     ///< a number, a name: nothing completes it
    words,     ///< one of OptionEntry::words
    setup,     ///< SETUP: a name from `steelyard list setups` and `exercises`, or a file
    blueprint, ///< BLUEPRINT: a name from `steelyard list blueprints`, or a file
    skill,     ///< SKILL: from `steelyard list skills`
    family,    ///< FAMILY: from `steelyard list families`
    file,      ///< FILE
    folder,    ///< DIR
};

struct OptionEntry {
    std::vector<std::string> names; ///< "--out", "-h"; empty for what stands without a name
    std::string value;              ///< "FILE", "{a,b}"; of what has no name its own word
    std::vector<std::string> words; ///< "a", "b"
    std::string says;
    ValueKind kind = ValueKind::none;
    bool is_required = false;
    bool is_repeatable = false;
};

struct CommandEntry {
    std::string name; ///< "solve"; of the window empty
    std::string summary;
    std::vector<std::string> examples; ///< complete commands
    std::vector<OptionEntry> options;  ///< those without a name first
};

/// The options that are declared on a parser.
std::vector<OptionEntry> options_of(const CLI::App& parser);

/// The window's options, then every verb in its order.
std::vector<CommandEntry> all_commands();

/// The lists whose names complete a value: "setups", "exercises"; empty where none does.
std::vector<std::string_view> lists_for(ValueKind kind);
/// Whether the name of a file completes a value.
bool takes_file(ValueKind kind);

} // namespace steelyard::cli
