#include "publish/sheets/worksheet_html.h"

#include "problems/bank/answer_kinds.h"
#include "problems/question/question_writer.h"
#include "publish/files/written_text.h"
#include "publish/pictures/svg.h"
#include "publish/question/question_figure.h"
#include "publish/question/question_text.h"
#include "publish/question/question_view.h"
#include "publish/sheets/html_page.h"

#include <fmt/format.h>

#include <algorithm>
#include <functional>

namespace steelyard::publish {
namespace {

using problems::Question;

std::string paragraphs_html(std::string_view text) {
    std::string html;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t to = std::min(text.find('\n', from), text.size());
        html += html_element("p", "", text.substr(from, to - from));
        from = to + 1;
    }
    return html;
}

std::string head_html(const Worksheet& sheet, bool is_key) {
    std::string html = "<header>\n<h1>" +
                       xml_escaped(is_key ? "Key: " + sheet.title : sheet.title) + "</h1>\n" +
                       html_element("div", "version", sheet.version);
    if (!is_key) {
        html += html_element("p", "note", sheet.note) +
                html_element("p", "note", sheet.how_to_mark()) +
                fmt::format("<div class=\"fields\">Name<span></span>Date<span></span>Score<span>"
                            "</span>/ {}</div>\n",
                            sheet.count());
    }
    return html + "</header>\n";
}

const char* box_class(const Question& question) {
    switch (problems::row_of(question).picks) {
    case problems::Picks::nothing:
    case problems::Picks::one:
        break;
    case problems::Picks::any:
        return "box";
    case problems::Picks::all_in_order:
        return "box line";
    }
    return "box round";
}

std::string answer_html(const Question& question) {
    if (const problems::NumberWanted* number = problems::wanted_number(question)) {
        return fmt::format("<div class=\"room\"></div>\n<p class=\"answer\">{} = <i>&nbsp;</i> "
                           "{}</p>\n",
                           xml_escaped(answer_name(question)), xml_escaped(number->unit));
    }
    std::string html = html_element("p", "pen", pen_instruction(question));
    html += "<ul class=\"choices\">\n";
    const std::vector<std::string> choices = tickable(question);
    for (std::size_t i = 0; i < choices.size(); ++i) {
        html += fmt::format("<li><span class=\"{}\"></span><b>{}</b><span>{}</span></li>\n",
                            box_class(question), problems::letter(i), xml_escaped(choices[i]));
    }
    return html + "</ul>\n";
}

tl::expected<std::string, PublishError> question_html(const Question& question, std::size_t number,
                                                      bool prints_code) {
    const std::string text = fmt::format(
        "<div class=\"body\">\n{}{}{}</div>\n", paragraphs_html(question.prompt),
        answer_html(question), prints_code ? html_element("p", "code", question.code) : "");
    std::string body = text;
    if (has_figure(question)) {
        const auto figure = svg_of(question_figure(question, figure_size(question)),
                                   {scene::Look::print, fmt::format("question-{}", number), false});
        if (!figure)
            return tl::make_unexpected(figure.error());
        body = fmt::format("<div class=\"two\">\n{}{}</div>\n", text, *figure);
    }
    return fmt::format("<li><span class=\"number\">{}</span>\n{}</li>\n", number, body);
}

std::string glance_html(const Worksheet& sheet) {
    std::string html = "<ol class=\"glance\">\n";
    std::size_t number = 0;
    for (const SheetPart& part : sheet.parts) {
        for (const Question& question : part.questions) {
            html += fmt::format("<li><span>{}</span><b>{}</b></li>\n", ++number,
                                xml_escaped(short_answer(question)));
        }
    }
    return html + "</ol>\n";
}

std::string key_entry_html(const problems::Bank& bank, const Question& question,
                           std::size_t number) {
    std::string html =
        fmt::format("<li><span class=\"number\">{}</span>\n<div>\n{}<p class=\"right\">{}<span "
                    "class=\"code\">{}</span></p>\n",
                    number, html_element("p", "pen", short_title(bank, question)),
                    xml_escaped(key_answer(question)), xml_escaped(question.code));
    for (const problems::Step& step : question.steps) {
        html += html_element("p", "says", step.says) +
                fmt::format("<p class=\"formula\">{}</p>\n", html_formula(worked_formula(step)));
    }
    html += paragraphs_html(question.reason);
    const std::vector<Mistake> found = mistakes(bank, question);
    if (!found.empty()) {
        html += "<p class=\"pen\">Watch for</p>\n<table class=\"watch\">\n";
        for (const Mistake& mistake : found) {
            html += fmt::format("<tr><td class=\"wrong\">× {}</td><td class=\"why\">{}</td></tr>\n",
                                xml_escaped(mistake.answer), xml_escaped(mistake.title));
        }
        html += "</table>\n";
    }
    return html + "</div></li>\n";
}

/// A question of a paper, in the list of its part.
using EntryHtml =
    std::function<tl::expected<std::string, PublishError>(const Question&, std::size_t number)>;

/// All parts with their headings, an entry for each question.
tl::expected<std::string, PublishError> parts_html(const Worksheet& sheet, const EntryHtml& entry,
                                                   const Progress& progress) {
    const std::size_t all = sheet.count();
    std::string html;
    std::size_t number = 0;
    for (const SheetPart& part : sheet.parts) {
        html += html_element("h2", "part", part.heading) + "<ol class=\"questions\">\n";
        for (const Question& question : part.questions) {
            const auto one = entry(question, ++number);
            if (!one)
                return one;
            html += *one;
            if (!goes_on(progress, number, all))
                return stopped_work();
        }
        html += "</ol>\n";
    }
    return html;
}

} // namespace

tl::expected<std::string, PublishError> worksheet_html(const Worksheet& sheet,
                                                       const Progress& progress) {
    const auto entry = [&](const Question& question, std::size_t number) {
        return question_html(question, number, sheet.prints_codes);
    };
    return parts_html(sheet, entry, progress).map([&](const std::string& parts) {
        return html_page(sheet, sheet.title, head_html(sheet, false) + parts);
    });
}

tl::expected<std::string, PublishError> key_html(const Worksheet& sheet, const problems::Bank& bank,
                                                 const Progress& progress) {
    const auto entry = [&](const Question& question, std::size_t number) {
        return tl::expected<std::string, PublishError>(key_entry_html(bank, question, number));
    };
    return parts_html(sheet, entry, progress).map([&](const std::string& parts) {
        return html_page(sheet, "Key: " + sheet.title,
                         head_html(sheet, true) + glance_html(sheet) + parts);
    });
}

} // namespace steelyard::publish
