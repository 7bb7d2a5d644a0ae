#include "publish/worksheet_pdf.h"

#include "problems/question_writer.h"
#include "publish/painter.h"
#include "publish/paper_blocks.h"
#include "publish/paper_pdf.h"
#include "publish/question_figure.h"
#include "publish/question_text.h"
#include "publish/worksheet_blocks.h"

#include <utility>

namespace steelyard::publish {
namespace {

using problems::Kind;
using problems::Question;
using scene::Role;

/// Figures are set at this scale, so that their 16 px text comes out at 9 pt.
constexpr double kFigurePtPerPx = 9.0 / 16.0;

Piece figure(const PageSetting& page, const Question& question) {
    const double scale = kFigurePtPerPx * page.format.scale;
    return {scale * figure_size(question).y(),
            [&question, scale, family = page.type.family()](cairo_t* surface) {
                cairo_scale(surface, scale, scale);
                paint_drawing(surface, question_figure(question, figure_size(question)),
                              {scene::Look::print, family, false});
            },
            Tag::figure, false};
}

/// A box to tick, a letter, the words.
Pieces choice_lines(const PageSetting& page, TickBox box, std::size_t index,
                    const std::string& words, double width_pt) {
    const double indent = 9.0 * page.format.step_pt();
    const TextStyle style{page.format.body_pt()};
    Pieces lines = indented(page.type.paragraph(words, style, width_pt - indent), indent);
    const Piece mark = tick_box(page.format, box);
    const Piece letter =
        page.type.line(problems::letter(index), {page.format.body_pt(), true, Role::ink});
    lines.front().paint = [words_paint = lines.front().paint, mark, letter,
                           step = page.format.step_pt()](cairo_t* surface) {
        paint_at(surface, mark, 0.0);
        paint_at(surface, letter, 4.5 * step);
        words_paint(surface);
    };
    lines.push_back(gap(0.5 * page.format.step_pt()));
    return lines;
}

TickBox box_for(Kind kind) {
    switch (kind) {
    case Kind::several_choices:
        return TickBox::square;
    case Kind::ordering:
        return TickBox::line;
    default:
        return TickBox::round;
    }
}

Pieces choices_to_tick(const PageSetting& page, const Question& question, double width_pt) {
    Pieces pieces;
    const std::string instruction = pen_instruction(question);
    if (!instruction.empty()) {
        append(pieces,
               page.type.paragraph(instruction, {page.format.small_pt(), false, Role::quiet_ink},
                                   width_pt));
        pieces.push_back(gap(page.format.step_pt()));
    }
    const std::vector<std::string> choices = tickable(question);
    for (std::size_t i = 0; i < choices.size(); ++i) {
        append(pieces, choice_lines(page, box_for(question.kind), i, choices[i], width_pt));
    }
    return pieces;
}

/// Words and choices on the left, the figure on the right; below each other where the page is too
/// narrow for both, or where the words are longer than a page.
Pieces question_and_figure(const PageSetting& page, const Question& question, double width_pt) {
    const double step = page.format.step_pt();
    const double figure_width = kFigurePtPerPx * page.format.scale * figure_size(question).x();
    const bool drawn = has_figure(question);
    const double beside_width = width_pt - figure_width - 4.0 * step;
    const auto words = [&](double width) {
        Pieces pieces = paragraphs(page, question.prompt, {page.format.body_pt()}, width);
        append(pieces, choices_to_tick(page, question, width));
        return pieces;
    };
    if (drawn && beside_width > 36.0 * step) {
        Pieces text = words(beside_width);
        if (height_of(text) < page.format.content_height_pt()) {
            return {
                side_by_side(std::move(text), {figure(page, question)}, beside_width + 4.0 * step)};
        }
    }
    Pieces pieces = words(width_pt);
    if (drawn) {
        pieces.push_back(figure(page, question));
    }
    return pieces;
}

/// Room to work, more for a harder question, and the line for the number.
Pieces number_space(const PageSetting& page, const Question& question, double width_pt) {
    const double step = page.format.step_pt();
    const TextStyle strong{page.format.body_pt(), true, Role::ink};
    const std::string name = answer_name(question);
    const bool fits = page.type.width(name, strong) < 0.55 * width_pt;
    Pieces pieces{gap(step), working_room(width_pt, (7.0 + 3.0 * question.difficulty) * step)};
    if (!fits) {
        append(pieces, page.type.paragraph(name, strong, width_pt));
    }
    pieces.push_back(answer_rule(page, fits ? name : "", question.unit, width_pt));
    return pieces;
}

/// The question without its number.
Pieces question_body(const PageSetting& page, const Question& question, double width_pt) {
    Pieces pieces = question_and_figure(page, question, width_pt);
    if (question.kind == Kind::numeric) {
        append(pieces, number_space(page, question, width_pt));
    }
    return pieces;
}

Pieces question_block(const PageSetting& page, const NumberedQuestion& numbered) {
    Pieces block = part_heading(page, numbered.heading);
    const double width = page.format.content_width_pt() - number_margin_pt(page.format);
    append(block,
           with_number(page, numbered.number, question_body(page, *numbered.question, width)));
    block.push_back(gap(6.0 * page.format.step_pt()));
    return block;
}

} // namespace

PaperBlocks sheet_blocks(const Worksheet& sheet) {
    const std::size_t questions = sheet.count();
    PaperBlocks blocks;
    blocks.count = questions + 2;
    blocks.make = [&sheet, questions](const PageSetting& page, std::size_t index) {
        if (index == 0) {
            return paper_head(page, sheet, false);
        }
        return index <= questions ? question_block(page, question_at(sheet, index - 1))
                                  : caution(page);
    };
    return blocks;
}

tl::expected<std::string, PublishError> worksheet_pdf(const Worksheet& sheet,
                                                      const Progress& progress) {
    return paper_pdf(sheet, sheet.title, sheet_blocks(sheet), progress);
}

} // namespace steelyard::publish
