#include "paint/paper/term_list_pdf.h"

#include "paint/paper/paper_blocks.h"
#include "paint/paper/paper_pdf.h"

namespace steelyard::paint {
using namespace publish;
namespace {

using scene::Role;

/// The title, above the first heading.
Pieces title_lines(const PageSetting& page) {
    Pieces lines = page.type.paragraph(kTermListTitle, {1.6 * page.format.body_pt(), true},
                                       page.format.content_width_pt());
    lines.push_back(gap(3.0 * page.format.step_pt()));
    return lines;
}

void add(Pieces& lines, Pieces more) {
    for (Piece& piece : more)
        lines.push_back(std::move(piece));
}

Pieces formula_lines(const PageSetting& page, const PrintedTerm& term) {
    const double width_pt = page.format.content_width_pt();
    const double indent_pt = 4.0 * page.format.step_pt();
    Pieces lines = page.type.paragraph(term.name, {page.format.body_pt(), true}, width_pt);
    add(lines,
        indented(page.type.paragraph(term.formula, {page.format.body_pt(), false, Role::ink, true},
                                     width_pt - indent_pt),
                 indent_pt));
    lines.push_back(gap(2.0 * page.format.step_pt()));
    return lines;
}

Pieces term_lines(const PageSetting& page, const PrintedTerm& term) {
    const double width_pt = page.format.content_width_pt();
    Pieces lines = page.type.paragraph(term.name, {page.format.body_pt(), true}, width_pt);
    if (!term.also.empty())
        add(lines, page.type.paragraph(term.also, {page.format.body_pt(), false, Role::quiet_ink},
                                       width_pt));
    add(lines, page.type.paragraph(term.says, {page.format.body_pt()}, width_pt));
    add(lines, page.type.paragraph("Source: " + term.source,
                                   {page.format.small_pt(), false, Role::quiet_ink}, width_pt));
    lines.push_back(gap(3.0 * page.format.step_pt()));
    return lines;
}

/// Every block in its order; made anew for each page setting.
Pieces block_at(const PageSetting& page, const TermList& list,
                const std::vector<const PrintedTerm*>& formulas, std::size_t index) {
    if (index == 0)
        return title_lines(page);
    --index;
    if (index < formulas.size()) {
        Pieces lines = part_heading(page, index == 0 ? kFormulasHeading : "");
        add(lines, formula_lines(page, *formulas[index]));
        return lines;
    }
    index -= formulas.size();
    if (index == list.terms.size())
        return caution(page);
    Pieces lines = part_heading(page, index == 0 ? kTermsHeading : "");
    add(lines, term_lines(page, list.terms[index]));
    return lines;
}

} // namespace

tl::expected<std::string, PublishError> term_list_pdf(const TermList& list) {
    Worksheet sheet;
    sheet.title = kTermListTitle;
    sheet.paper = list.paper;
    sheet.large_print = list.large_print;
    std::vector<const PrintedTerm*> formulas;
    for (const PrintedTerm& term : list.terms)
        if (!term.formula.empty())
            formulas.push_back(&term);
    PaperBlocks blocks;
    blocks.count = 1 + formulas.size() + list.terms.size() + 1;
    blocks.make = [&list, &formulas](const PageSetting& page, std::size_t index) {
        return block_at(page, list, formulas, index);
    };
    return paper_pdf(sheet, sheet.title, blocks, {});
}

} // namespace steelyard::paint
