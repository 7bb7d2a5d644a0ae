#include "cli/reference/completion.h"

#include <fmt/format.h>

namespace steelyard::cli {

namespace {

constexpr std::string_view kZshHead = R"zsh(#compdef steelyard
# zsh completion for steelyard, made by `steelyard reference zsh`

# Names in lists of the program: the first word of each line; then files where they fit too.
_steelyard_names() {
    local -a names
    local list line
    for list in "$@"; do
        [[ $list == files ]] && continue
        for line in ${(f)"$(steelyard list $list 2>/dev/null)"}; do names+=(${line%% *}); done
    done
    compadd -a names
    [[ ${@[-1]} == files ]] && _files
}

_steelyard() {
    local verb=$words[2]
)zsh";

/// Text within single quotes and brackets.
std::string zsh_quoted(std::string_view text) {
    std::string safe;
    for (const char c : text)
        if (c == '\'')
            safe += "'\\''";
        else if (c == '[' || c == ']' || c == ':')
            safe += std::string("\\") + c;
        else
            safe += c == '\n' ? ' ' : c;
    return safe;
}

std::string action_of(const OptionEntry& option) {
    if (!option.words.empty())
        return fmt::format("({})", fmt::join(option.words, " "));
    std::string lists;
    for (const std::string_view list : lists_for(option.kind))
        lists += fmt::format(" {}", list);
    if (!lists.empty())
        return "_steelyard_names" + lists + (takes_file(option.kind) ? " files" : "");
    if (option.kind == ValueKind::folder)
        return "_files -/";
    return takes_file(option.kind) ? "_files" : " ";
}

std::string argument_of(const OptionEntry& option, std::size_t place) {
    const std::string value =
        option.kind == ValueKind::none
            ? ""
            : fmt::format(":{}:{}", option.words.empty() ? zsh_quoted(option.value) : "word",
                          action_of(option));
    if (option.names.empty())
        return fmt::format("            '{}{}'", place, value);
    std::string lines;
    for (const std::string& name : option.names)
        lines += fmt::format("{}            '{}{}[{}]{}'", lines.empty() ? "" : " \\\n",
                             option.is_repeatable ? "*" : "", name, zsh_quoted(option.says), value);
    return lines;
}

std::string arguments_of(const CommandEntry& command) {
    std::string text = "        _arguments -s";
    std::size_t place = 0;
    for (const OptionEntry& option : command.options)
        text += " \\\n" + argument_of(option, option.names.empty() ? ++place : 0);
    return text + '\n';
}

} // namespace

std::string zsh_completion(const std::vector<CommandEntry>& commands) {
    std::string verbs = "    local -a verbs=(\n";
    std::string cases;
    std::string window;
    for (const CommandEntry& command : commands) {
        if (command.name.empty()) {
            window = arguments_of(command);
            continue;
        }
        verbs += fmt::format("        '{}:{}'\n", command.name, zsh_quoted(command.summary));
        cases += fmt::format("    {})\n{}        ;;\n", command.name, arguments_of(command));
    }
    return std::string(kZshHead) + verbs +
           "    )\n    if ((CURRENT == 2)) && [[ $PREFIX != -* ]]; then\n"
           "        _describe verb verbs\n        _files -g '*.toml'\n        return\n    fi\n"
           "    if (($+verbs[(r)$verb:*])); then\n        shift words\n        ((CURRENT--))\n"
           "    fi\n    case $verb in\n" +
           cases + "    *)\n" + window + "        ;;\n    esac\n}\n_steelyard \"$@\"\n";
}

} // namespace steelyard::cli
