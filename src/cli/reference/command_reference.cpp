#include "cli/reference/command_reference.h"

#include "cli/window_request.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <utility>

namespace steelyard::cli {

namespace {

/// "a,b" as its parts.
std::vector<std::string> parted(const std::string& text, char at) {
    std::vector<std::string> parts;
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t to = std::min(text.find(at, from), text.size());
        if (to > from)
            parts.push_back(text.substr(from, to - from));
        from = to + 1;
    }
    return parts;
}

ValueKind kind_of(const std::string& value) {
    if (value.front() == '{')
        return ValueKind::words;
    constexpr std::pair<std::string_view, ValueKind> kKinds[]{
        {"SETUP", ValueKind::setup}, {"BLUEPRINT", ValueKind::blueprint},
        {"SKILL", ValueKind::skill}, {"FAMILY", ValueKind::family},
        {"FILE", ValueKind::file},   {"DIR", ValueKind::folder}};
    for (const auto& [word, kind] : kKinds)
        if (value == word)
            return kind;
    return ValueKind::other;
}

/// "N:INT in [1 - 5]" as "N": what help adds about checks is left to it.
std::string value_of(const CLI::Option& option) {
    const std::string type = option.get_type_name();
    const std::string word = type.substr(0, type.find(':'));
    if (!word.empty())
        return word;
    return option.get_positional() ? option.get_name(true) : std::string("VALUE");
}

OptionEntry entry_of(const CLI::Option& option) {
    OptionEntry entry;
    for (const std::string& name : option.get_snames())
        entry.names.push_back("-" + name);
    for (const std::string& name : option.get_lnames())
        entry.names.push_back("--" + name);
    entry.says = option.get_description();
    entry.is_required = option.get_required();
    entry.is_repeatable = option.get_items_expected_max() > 1;
    if (option.get_items_expected_max() == 0)
        return entry;
    entry.value = value_of(option);
    entry.kind = kind_of(entry.value);
    if (entry.kind == ValueKind::words)
        entry.words = parted(entry.value.substr(1, entry.value.size() - 2), ',');
    return entry;
}

CommandEntry command_of(const Verb& verb) {
    CLI::App parser;
    parser.set_help_flag("-h,--help", "show this");
    verb.add_options(parser);
    CommandEntry command{std::string(verb.name), std::string(verb.summary),
                         parted(std::string(verb.examples), '\n'), options_of(parser)};
    for (std::string& example : command.examples)
        example.erase(0, example.find_first_not_of(' '));
    return command;
}

} // namespace

std::vector<OptionEntry> options_of(const CLI::App& parser) {
    std::vector<OptionEntry> options;
    for (const CLI::Option* option : parser.get_options()) {
        OptionEntry entry = entry_of(*option);
        if (option->get_positional() && !entry.names.empty()) {
            options.push_back(entry); // by its place, or by its name
            options.back().names.clear();
        }
        options.push_back(std::move(entry));
    }
    std::stable_partition(options.begin(), options.end(),
                          [](const OptionEntry& option) { return option.names.empty(); });
    return options;
}

std::vector<CommandEntry> all_commands() {
    CLI::App window;
    window.set_help_flag("-h,--help", "list all verbs");
    window.set_version_flag("--version", "", "say which version this is");
    WindowWords words;
    add_window_options(window, words);
    std::vector<CommandEntry> commands{
        {"", "open the window", {"steelyard", "steelyard my.setup.toml"}, options_of(window)}};
    for (const Verb& verb : all_verbs())
        commands.push_back(command_of(verb));
    return commands;
}

std::vector<std::string_view> lists_for(ValueKind kind) {
    switch (kind) {
    case ValueKind::setup:
        return {"setups", "exercises"};
    case ValueKind::blueprint:
        return {"blueprints"};
    case ValueKind::skill:
        return {"skills"};
    case ValueKind::family:
        return {"families"};
    case ValueKind::none:
    case ValueKind::other:
    case ValueKind::words:
    case ValueKind::file:
    case ValueKind::folder:
        break;
    }
    return {};
}

bool takes_file(ValueKind kind) {
    return kind == ValueKind::file || kind == ValueKind::setup || kind == ValueKind::blueprint;
}

} // namespace steelyard::cli
