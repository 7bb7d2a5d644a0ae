#include "cli/reference/completion.h"

#include <fmt/format.h>

namespace steelyard::cli {

namespace {

constexpr std::string_view kFishHead =
    R"fish(# fish completion for steelyard, made by `steelyard reference fish`

# Names in a list of the program with their titles.
function __steelyard_list
    steelyard list $argv[1] 2>/dev/null | string replace -r '  +' \t
end

complete -c steelyard -f
)fish";

std::string fish_quoted(std::string_view text) {
    std::string safe = "'";
    for (const char c : text) {
        if (c == '\'' || c == '\\')
            safe += '\\';
        safe += c == '\n' ? ' ' : c;
    }
    return safe + '\'';
}

/// What completes a value: "-x -a ..." where only these do, "-r -F" for files.
std::string fish_values(const OptionEntry& option) {
    std::string from;
    for (const std::string& word : option.words)
        from += (from.empty() ? "" : " ") + word;
    for (const std::string_view list : lists_for(option.kind))
        from += fmt::format("{}(__steelyard_list {})", from.empty() ? "" : " ", list);
    if (option.kind == ValueKind::folder)
        from = "(__fish_complete_directories)";
    std::string text = from.empty() ? "" : " -a " + fish_quoted(from);
    if (takes_file(option.kind))
        text += " -F";
    return text;
}

std::string line_of(const OptionEntry& option, const std::string& condition) {
    std::string line = "complete -c steelyard -n " + fish_quoted(condition);
    if (option.names.empty()) {
        const std::string values = fish_values(option);
        return values.empty() ? "" : line + values + '\n';
    }
    for (const std::string& name : option.names)
        line += name[1] == '-' ? " -l " + name.substr(2) : " -s " + name.substr(1);
    if (option.kind != ValueKind::none)
        line += (takes_file(option.kind) ? " -r" : " -x") + fish_values(option);
    return line + " -d " + fish_quoted(option.says) + '\n';
}

} // namespace

std::string fish_completion(const std::vector<CommandEntry>& commands) {
    std::string text(kFishHead);
    for (const CommandEntry& command : commands) {
        const std::string condition = command.name.empty()
                                          ? std::string("__fish_use_subcommand")
                                          : "__fish_seen_subcommand_from " + command.name;
        if (!command.name.empty())
            text += fmt::format("\ncomplete -c steelyard -n __fish_use_subcommand -a {} -d {}\n",
                                command.name, fish_quoted(command.summary));
        for (const OptionEntry& option : command.options)
            text += line_of(option, condition);
    }
    return text;
}

} // namespace steelyard::cli
