#include "cli/reference/completion.h"

#include <fmt/format.h>

namespace steelyard::cli {

namespace {

constexpr std::string_view kBashHead =
    R"bash(# bash completion for steelyard, made by `steelyard reference bash`

# Names in a list of the program: the first word of each line.
_steelyard_list() {
    steelyard list "$1" 2>/dev/null | while read -r name _; do printf '%s\n' "$name"; done
}

_steelyard() {
    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} verb=${COMP_WORDS[1]}
    local names= values= files=
    COMPREPLY=()
)bash";

constexpr std::string_view kBashFoot = R"bash(    [[ $word == -* ]] && values=$names
    local IFS=$'\n'
    COMPREPLY=($(compgen -W "${values//[ $'\n']/$'\n'}" -- "$word"))
    if [[ $files && $word != -* ]]; then
        compopt -o filenames 2>/dev/null
        COMPREPLY+=($(compgen "$files" -- "$word"))
    fi
}
complete -F _steelyard steelyard
)bash";

/// What completes a value: an assignment to the variables of the script.
std::string bash_values(const OptionEntry& option) {
    std::string text;
    if (!option.words.empty())
        text += fmt::format(" values='{}'", fmt::join(option.words, " "));
    std::string lists;
    for (const std::string_view list : lists_for(option.kind))
        lists += fmt::format("{}$(_steelyard_list {})", lists.empty() ? "" : " ", list);
    if (!lists.empty())
        text += fmt::format(" values=\"{}\"", lists);
    if (takes_file(option.kind))
        text += " files=-f";
    else if (option.kind == ValueKind::folder)
        text += " files=-d";
    return text;
}

std::string bash_options(const CommandEntry& command) {
    std::string names;
    std::string unnamed; ///< what may stand without a name; the first tells most
    std::string cases;
    for (const OptionEntry& option : command.options) {
        if (option.names.empty()) {
            if (unnamed.empty())
                unnamed = bash_values(option);
            continue;
        }
        for (const std::string& name : option.names)
            names += (names.empty() ? "" : " ") + name;
        if (option.kind != ValueKind::none)
            cases +=
                fmt::format("        {})\n           {} names= ;;\n", fmt::join(option.names, "|"),
                            bash_values(option).empty() ? " :" : bash_values(option));
    }
    std::string text = fmt::format("        names='{}'{}\n", names, unnamed);
    if (!cases.empty())
        text += "        case $before in\n" + cases + "        esac\n";
    return text;
}

} // namespace

std::string bash_completion(const std::vector<CommandEntry>& commands) {
    std::string verbs;
    std::string cases;
    for (const CommandEntry& command : commands) {
        if (!command.name.empty())
            verbs += (verbs.empty() ? "" : " ") + command.name;
        cases += fmt::format("    {})\n{}        ;;\n", command.name.empty() ? "*" : command.name,
                             bash_options(command));
    }
    // The window's case stands for any other word, so it comes last.
    const std::size_t first_end = cases.find("        ;;\n") + std::string("        ;;\n").size();
    cases = cases.substr(first_end) + cases.substr(0, first_end);
    return std::string(kBashHead) + "    case $verb in\n" + cases + "    esac\n" +
           fmt::format("    if ((COMP_CWORD == 1)); then\n        values='{}'\n        files=-f\n"
                       "    fi\n",
                       verbs) +
           std::string(kBashFoot);
}

} // namespace steelyard::cli
