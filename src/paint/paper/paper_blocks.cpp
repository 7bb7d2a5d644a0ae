#include "paint/paper/paper_blocks.h"

#include "words/caution.h"

#include <algorithm>
#include <cassert>
#include <string>

namespace steelyard::paint {
using namespace publish;

using scene::Role;

NumberedQuestion question_at(const Worksheet& sheet, std::size_t index) {
    std::size_t before = 0;
    for (const SheetPart& part : sheet.parts) {
        if (index < before + part.questions.size()) {
            const std::size_t within = index - before;
            return {std::make_shared<const problems::Question>(part.questions[within]), index + 1,
                    within == 0 ? std::string_view(part.heading) : std::string_view(),
                    sheet.prints_codes};
        }
        before += part.questions.size();
    }
    assert(false && "the caller counts the questions");
    return {};
}

double number_margin_pt(const PageFormat& format) {
    return 6.0 * format.step_pt();
}

Pieces part_heading(const PageSetting& page, std::string_view heading) {
    if (heading.empty())
        return {};
    Pieces pieces = page.type.paragraph(
        heading, {page.format.heading_pt(), true, Role::ink, false, Tag::heading_2},
        page.format.content_width_pt());
    pieces.push_back(gap(2.0 * page.format.step_pt()));
    return pieces;
}

Pieces with_number(const PageSetting& page, std::size_t number, Pieces body) {
    if (body.empty())
        body.push_back(gap(1.4 * page.format.body_pt()));
    body = indented(std::move(body), number_margin_pt(page.format));
    body.front().label = std::make_shared<const Piece>(
        page.type.line(std::to_string(number), {page.format.body_pt(), true, Role::ink}));
    return body;
}

Pieces paragraphs(const PageSetting& page, std::string_view text, const TextStyle& style,
                  double width_pt) {
    Pieces pieces;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t to = std::min(text.find('\n', from), text.size());
        if (to > from) {
            append(pieces, page.type.paragraph(text.substr(from, to - from), style, width_pt));
            pieces.push_back(gap(page.format.step_pt()));
        }
        from = to + 1;
    }
    return pieces;
}

Pieces caution(const PageSetting& page) {
    return page.type.paragraph(words::kCaution, {page.format.small_pt(), false, Role::quiet_ink},
                               page.format.content_width_pt());
}

} // namespace steelyard::paint
