#include "cli/reference/man_page.h"

#include "cli/reference/exit_statuses.h"
#include "words/caution.h"

#include <fmt/format.h>

namespace steelyard::cli {

namespace {

/// Text that roff leaves as it is: a dash that can be copied, no request at the start of a line.
std::string roff(std::string_view text) {
    std::string safe;
    for (const char c : text)
        if (c == '\\')
            safe += "\\e";
        else if (c == '-')
            safe += "\\-";
        else
            safe += c == '\n' ? ' ' : c;
    return !safe.empty() && (safe.front() == '.' || safe.front() == '\'') ? "\\&" + safe : safe;
}

/// "--out FILE", the names bold and the value in italics.
std::string heading_of(const OptionEntry& option) {
    std::string text;
    for (const std::string& name : option.names)
        text += fmt::format("{}\\fB{}\\fR", text.empty() ? "" : ", ", roff(name));
    if (option.kind != ValueKind::none)
        text += fmt::format("{}\\fI{}\\fR", text.empty() ? "" : " ", roff(option.value));
    return text;
}

std::string options_text(const CommandEntry& command) {
    std::string text;
    for (const OptionEntry& option : command.options)
        text += fmt::format(".TP\n{}\n{}{}\n", heading_of(option), roff(option.says),
                            option.is_required ? " (required)" : "");
    return text;
}

std::string examples_text(const CommandEntry& command) {
    std::string text = ".PP\nFor example:\n.PP\n.nf\n.RS\n";
    for (const std::string& example : command.examples)
        text += roff(example) + '\n';
    return text + ".RE\n.fi\n";
}

std::string verb_text(const CommandEntry& verb) {
    return fmt::format(".SS {}\n{}.\n", roff(verb.name), roff(verb.summary)) + options_text(verb) +
           examples_text(verb);
}

} // namespace

std::string man_page(const std::vector<CommandEntry>& commands, std::string_view version) {
    std::string text =
        fmt::format(".TH STEELYARD 1 \"\" \"Steelyard {}\" \"User Commands\"\n", roff(version));
    text += ".SH NAME\nsteelyard \\- levers, moment arms and torque, drawn, solved and asked\n"
            ".SH SYNOPSIS\n.B steelyard\n.RI [ OPTION ]...\\& \" \" [ FILE ]\n.br\n"
            ".B steelyard\n.I VERB\n.RI [ OPTION ]...\n"
            ".SH DESCRIPTION\nWithout a verb the window opens; every verb does the same work "
            "without a window. A setup is a short text file, or the name of one that comes with "
            "the program.\nWhere a file is named, \\- is standard input or output.\n";
    for (const CommandEntry& command : commands)
        if (command.name.empty())
            text += ".SH OPTIONS\n" + options_text(command);
    text += ".SH VERBS\n";
    for (const CommandEntry& command : commands)
        if (!command.name.empty())
            text += verb_text(command);
    text += ".SH EXIT STATUS\n";
    for (const StatusMeaning& status : kExitStatuses)
        text += fmt::format(".TP\n{}\n{}\n", static_cast<int>(status.status), roff(status.says));
    text += ".SH FILES\n.TP\n.I ~/.local/share/steelyard\nThe record of what was answered, and own "
            "setups;\n.I $XDG_DATA_HOME/steelyard\nwhere that is set.\n.TP\n"
            ".I /usr/share/steelyard/assets/schemas\nJSON Schemas of what "
            "\\-\\-json and \\-\\-jsonl write.\n";
    return text + ".SH CAUTION\n" + roff(words::kCaution) + '\n';
}

} // namespace steelyard::cli
