#include "cli/verbs/reference_command.h"

#include "cli/options/checked_options.h"
#include "cli/reference/completion.h"
#include "cli/reference/man_page.h"

#include <CLI/CLI.hpp>
#include <memory>
#include <ostream>

namespace steelyard::cli {

namespace {

std::string written(const std::string& what) {
    const std::vector<CommandEntry> commands = all_commands();
    if (what == "man")
        return man_page(commands, STEELYARD_VERSION);
    if (what == "bash")
        return bash_completion(commands);
    return what == "zsh" ? zsh_completion(commands) : fish_completion(commands);
}

Work add_reference_options(CLI::App& command) {
    const auto what = std::make_shared<std::string>();
    only_words(command.add_option("WHAT", *what,
                                  "man: the manual page; a shell: what completes words in it"),
               {"man", "bash", "zsh", "fish"})
        ->required();
    return [what](const Streams& streams) {
        streams.out << written(*what);
        return ExitStatus::ok;
    };
}

} // namespace

Verb reference_verb() {
    return {"reference", "print the manual page, or what completes words in a shell",
            "  steelyard reference man | man -l -\n"
            "  source <(steelyard reference bash)\n"
            "  steelyard reference zsh > ~/.zfunc/_steelyard\n"
            "  steelyard reference fish > ~/.config/fish/completions/steelyard.fish",
            &add_reference_options};
}

} // namespace steelyard::cli
