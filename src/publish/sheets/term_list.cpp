#include "publish/sheets/term_list.h"

#include "publish/files/written_text.h"
#include "publish/sheets/html_page.h"

#include <fmt/format.h>

namespace steelyard::publish {

std::string term_list_html(const TermList& list) {
    Worksheet sheet;
    sheet.title = kTermListTitle;
    sheet.paper = list.paper;
    sheet.large_print = list.large_print;
    std::string body = fmt::format("<header>\n<h1>{}</h1>\n</header>\n", kTermListTitle);
    body += html_element("h2", "part", kFormulasHeading);
    for (const PrintedTerm& term : list.terms)
        if (!term.formula.empty())
            body += fmt::format("<p><b>{}</b></p>\n<p class=\"formula\">{}</p>\n",
                                xml_escaped(term.name), html_formula(term.formula));
    body += html_element("h2", "part", kTermsHeading);
    for (const PrintedTerm& term : list.terms) {
        body += fmt::format("<p><b>{}</b>{}</p>\n", xml_escaped(term.name),
                            term.also.empty() ? "" : " \u2013 " + xml_escaped(term.also));
        body += html_element("p", "says", term.says) +
                html_element("p", "why", "Source: " + term.source);
    }
    return html_page(sheet, sheet.title, body);
}

} // namespace steelyard::publish
