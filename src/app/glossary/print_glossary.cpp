#include "app/glossary/print_glossary.h"

#include "app/own/own_files.h"
#include "app/platform/folders.h"
#include "publish/files/whole_file.h"
#include "publish/sheets/term_list.h"

#include <algorithm>

namespace steelyard::app {

namespace {

publish::TermList on_paper(const std::vector<lesson::Term>& terms, publish::PaperSize paper) {
    publish::TermList list;
    list.paper = paper;
    for (const lesson::Term& term : terms) {
        publish::PrintedTerm printed{term.name, {}, term.says, term.formula, term.source};
        for (const std::string& also : term.also)
            printed.also += (printed.also.empty() ? "" : ", ") + also;
        list.terms.push_back(std::move(printed));
    }
    std::sort(list.terms.begin(), list.terms.end(),
              [](const auto& a, const auto& b) { return a.name < b.name; });
    return list;
}

} // namespace

std::string print_glossary(const std::vector<lesson::Term>& terms,
                           const std::filesystem::path& folder, const publish::Tools& tools,
                           publish::PaperSize paper) {
    const publish::TermList list = on_paper(terms, paper);
    const bool as_pdf = tools.term_list_pdf.is_there();
    const std::filesystem::path path =
        free_path(folder, "glossary", as_pdf ? ".pdf" : ".html", "glossary");
    if (path.empty())
        return "Nothing was printed: no folder of your own is known here.";
    std::error_code failed; // the writing tells what is wrong
    std::filesystem::create_directories(folder, failed);
    auto bytes =
        as_pdf ? tools.term_list_pdf(list)
               : tl::expected<std::string, publish::PublishError>(publish::term_list_html(list));
    const auto written = bytes.and_then(
        [&](const std::string& text) { return publish::write_whole_file(path, text); });
    return written ? "It is in " + where_given(path) + "." : written.error().message;
}

} // namespace steelyard::app
