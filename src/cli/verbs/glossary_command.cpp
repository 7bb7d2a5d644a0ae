#include "cli/verbs/glossary_command.h"

#include "cli/options/checked_options.h"
#include "lesson/glossary.h"
#include "paint/paper/term_list_pdf.h"
#include "publish/files/whole_file.h"
#include "publish/sheets/term_list.h"
#include "setup/files/data_folder.h"
#include "setup/toml/input_error.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <filesystem>
#include <memory>
#include <ostream>

namespace steelyard::cli {

namespace {

struct GlossaryOptions {
    std::string term;
    std::string out;
    std::string paper = "A4";
    bool large_print = false;
};

std::string in_one_line(const std::vector<std::string>& names) {
    std::string line;
    for (const std::string& name : names)
        line += (line.empty() ? "" : ", ") + name;
    return line;
}

void tell(const lesson::Term& term, std::ostream& out) {
    out << term.name << '\n';
    if (!term.also.empty())
        out << "  also called " << in_one_line(term.also) << '\n';
    out << "  " << term.says << '\n';
    if (!term.formula.empty())
        out << "  " << term.formula << '\n';
    out << "  Source: " << term.source << '\n';
}

publish::TermList printed(const std::vector<lesson::Term>& terms, const GlossaryOptions& options) {
    publish::TermList list;
    list.paper = options.paper == "A4" ? publish::PaperSize::a4 : publish::PaperSize::letter;
    list.large_print = options.large_print;
    for (const lesson::Term& term : terms)
        list.terms.push_back(
            {term.name, in_one_line(term.also), term.says, term.formula, term.source});
    std::sort(list.terms.begin(), list.terms.end(),
              [](const auto& a, const auto& b) { return a.name < b.name; });
    return list;
}

ExitStatus print_to(const std::filesystem::path& path, const publish::TermList& list,
                    const Streams& streams) {
    const std::string ending = path.extension().string();
    if (ending != ".pdf" && ending != ".html") {
        streams.err << fmt::format("--out {}: the name must end in .pdf or .html.\n",
                                   path.string());
        return ExitStatus::bad_input;
    }
    auto bytes =
        ending == ".pdf"
            ? paint::term_list_pdf(list)
            : tl::expected<std::string, publish::PublishError>(publish::term_list_html(list));
    const auto written = bytes.and_then(
        [&](const std::string& text) { return publish::write_whole_file(path, text); });
    if (!written) {
        streams.err << written.error().message << '\n';
        return ExitStatus::failed;
    }
    streams.out << path.string() << '\n';
    return ExitStatus::ok;
}

ExitStatus glossary(const GlossaryOptions& options, const Streams& streams) {
    const auto terms =
        lesson::read_glossary(setup::data_folder() / "assets" / "pages" / "glossary.toml");
    if (!terms) {
        streams.err << setup::to_text(terms.error()) << '\n';
        return ExitStatus::failed;
    }
    if (!options.out.empty())
        return print_to(options.out, printed(*terms, options), streams);
    const std::vector<std::size_t> found = lesson::terms_with(*terms, options.term);
    if (found.empty()) {
        streams.err << fmt::format(
            "No term is called '{}', nor has it as another name. `steelyard list terms` names "
            "all.\n",
            options.term);
        return ExitStatus::bad_input;
    }
    for (const std::size_t index : found)
        tell((*terms)[index], streams.out);
    return ExitStatus::ok;
}

Work add_glossary_options(CLI::App& command) {
    const auto options = std::make_shared<GlossaryOptions>();
    command.add_option("TERM", options->term, "a term, another name of it, or a part; all if none")
        ->type_name("");
    command
        .add_option("--out", options->out,
                    "make a handout of all, with a formula sheet; .pdf or .html says the format")
        ->type_name("FILE");
    only_words(command.add_option("--paper", options->paper, "of the handout"), {"A4", "Letter"});
    command.add_flag("--large-print", options->large_print, "set the text in 18 pt");
    return [options](const Streams& streams) { return glossary(*options, streams); };
}

} // namespace

Verb glossary_verb() {
    return {"glossary", "say what a term means, or print all with a formula sheet",
            "  steelyard glossary fulcrum\n"
            "  steelyard glossary --out glossary.pdf --paper Letter",
            add_glossary_options};
}

} // namespace steelyard::cli
