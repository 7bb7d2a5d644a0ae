#include "paint/paper/worksheet_pdf.h"

#include "paint/paper/paper_blocks.h"
#include "paint/paper/paper_pdf.h"
#include "paint/paper/worksheet_blocks.h"
#include "paint/pdf/figure_words.h"
#include "paint/picture/painter.h"
#include "problems/bank/answer_kinds.h"
#include "problems/question/question_writer.h"
#include "publish/question/question_figure.h"
#include "publish/question/question_text.h"
#include "publish/question/question_view.h"

#include <algorithm>
#include <memory>
#include <utility>

namespace steelyard::paint {
using namespace publish;
namespace {

using problems::Question;
using scene::Role;
using QuestionHold = std::shared_ptr<const Question>;

/// Figures are set at this scale, so that their 16 px text comes out at 9 pt.
constexpr double kFigurePtPerPx = 9.0 / 16.0;

/// How large the parts of a question are that may be smaller where a page has no room for it.
struct QuestionSizes {
    double working_pt = 0.0; ///< height of the room to work
    double figure = 1.0;     ///< of its usual size
};
constexpr double kSmallestFigure = 0.6; ///< its text is then 5.4 pt, in large print 9 pt

double figure_scale(const PageSetting& page, const QuestionSizes& sizes) {
    return kFigurePtPerPx * page.format.scale * sizes.figure;
}

/// Drawn when it is painted; the piece keeps its question until then.
Piece figure(const PageSetting& page, const QuestionHold& question, const QuestionSizes& sizes) {
    const double scale = figure_scale(page, sizes);
    return {scale * figure_size(*question).y(),
            [question, scale, family = page.type.family()](cairo_t* surface) {
                cairo_scale(surface, scale, scale);
                const scene::Drawing drawing = question_figure(*question, figure_size(*question));
                note_figure(surface, drawing.description);
                paint_drawing(surface, drawing, {scene::Look::print, family, false});
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
        page.type.line(problems::letter(index) + " ", {page.format.body_pt(), true, Role::ink});
    lines.front().paint = [words_paint = lines.front().paint, mark, letter,
                           step = page.format.step_pt()](cairo_t* surface) {
        paint_at(surface, mark, 0.0);
        paint_at(surface, letter, 4.5 * step);
        words_paint(surface);
    };
    lines.push_back(gap(0.5 * page.format.step_pt()));
    return lines;
}

TickBox box_for(const Question& question) {
    switch (problems::row_of(question).picks) {
    case problems::Picks::nothing:
    case problems::Picks::one:
        break;
    case problems::Picks::any:
        return TickBox::square;
    case problems::Picks::all_in_order:
        return TickBox::line;
    }
    return TickBox::round;
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
    for (std::size_t i = 0; i < choices.size(); ++i)
        append(pieces, choice_lines(page, box_for(question), i, choices[i], width_pt));
    return pieces;
}

/// Words and choices on the left, the figure on the right; below each other where the page is too
/// narrow for both, or where the words are longer than a page.
Pieces question_and_figure(const PageSetting& page, const QuestionHold& question,
                           const QuestionSizes& sizes, double width_pt) {
    const double step = page.format.step_pt();
    const double figure_width = figure_scale(page, sizes) * figure_size(*question).x();
    const bool drawn = has_figure(*question);
    const double beside_width = width_pt - figure_width - 4.0 * step;
    const auto words = [&](double width) {
        Pieces pieces = paragraphs(page, question->prompt, {page.format.body_pt()}, width);
        append(pieces, choices_to_tick(page, *question, width));
        return pieces;
    };
    if (drawn && beside_width > 36.0 * step) {
        Pieces text = words(beside_width);
        if (height_of(text) < page.format.content_height_pt()) {
            return {side_by_side(std::move(text), {figure(page, question, sizes)},
                                 beside_width + 4.0 * step)};
        }
    }
    Pieces pieces = words(width_pt);
    if (drawn)
        pieces.push_back(figure(page, question, sizes));
    return pieces;
}

/// Room to work and the line for the number.
Pieces number_space(const PageSetting& page, const Question& question,
                    const problems::NumberWanted& number, const QuestionSizes& sizes,
                    double width_pt) {
    const double step = page.format.step_pt();
    const TextStyle strong{page.format.body_pt(), true, Role::ink};
    const std::string name = answer_name(question);
    const bool fits = page.type.width(name, strong) < 0.55 * width_pt;
    Pieces pieces{gap(step), working_room(width_pt, sizes.working_pt)};
    if (!fits)
        append(pieces, page.type.paragraph(name, strong, width_pt));
    pieces.push_back(answer_rule(page, fits ? name : "", number.unit, width_pt));
    return pieces;
}

/// The question with its number, below the heading of the part that it begins.
Pieces block_in(const PageSetting& page, const NumberedQuestion& numbered,
                const QuestionSizes& sizes) {
    const double width = page.format.content_width_pt() - number_margin_pt(page.format);
    Pieces body = question_and_figure(page, numbered.question, sizes, width);
    if (const problems::NumberWanted* number = problems::wanted_number(*numbered.question))
        append(body, number_space(page, *numbered.question, *number, sizes, width));
    if (numbered.prints_code)
        append(body, page.type.paragraph(numbered.question->code,
                                         {page.format.small_pt(), false, Role::quiet_ink}, width));
    Pieces block = part_heading(page, numbered.heading);
    append(block, with_number(page, numbered.number, std::move(body)));
    return block;
}

/// In the usual sizes, more room to work for a harder question; where that is higher than a page,
/// with less room, then with a smaller figure.
Pieces question_block(const PageSetting& page, const NumberedQuestion& numbered) {
    const double step = page.format.step_pt();
    const Question& question = *numbered.question;
    QuestionSizes sizes{(7.0 + 3.0 * question.difficulty) * step, 1.0};
    Pieces block = block_in(page, numbered, sizes);
    const auto excess_pt = [&] { return height_of(block) - page.format.content_height_pt(); };
    if (excess_pt() > 0.0 && problems::wanted_number(question) != nullptr) {
        sizes.working_pt = std::max(4.0 * step, sizes.working_pt - excess_pt());
        block = block_in(page, numbered, sizes);
    }
    if (excess_pt() > 0.0 && has_figure(question)) {
        const double height_pt = figure_scale(page, sizes) * figure_size(question).y();
        sizes.figure = std::max(kSmallestFigure, 1.0 - excess_pt() / height_pt);
        block = block_in(page, numbered, sizes);
    }
    block.push_back(gap(6.0 * step));
    return block;
}

} // namespace

PaperBlocks sheet_blocks(const Worksheet& sheet) {
    const std::size_t questions = sheet.count();
    PaperBlocks blocks;
    blocks.count = questions + 2;
    blocks.make = [&sheet, questions](const PageSetting& page, std::size_t index) {
        if (index == 0)
            return paper_head(page, sheet, false);
        return index <= questions ? question_block(page, question_at(sheet, index - 1))
                                  : caution(page);
    };
    return blocks;
}

tl::expected<std::string, PublishError> worksheet_pdf(const Worksheet& sheet,
                                                      const Progress& progress) {
    return paper_pdf(sheet, sheet.title, sheet_blocks(sheet), progress);
}

tl::expected<void, PublishError> write_sheet_pdf(const std::filesystem::path& path,
                                                 const Worksheet& sheet, const problems::Bank& bank,
                                                 SheetSide side, const Progress& progress) {
    return side == SheetSide::key
               ? write_paper_pdf(path, sheet, key_title(sheet), key_blocks(sheet, bank), progress)
               : write_paper_pdf(path, sheet, sheet.title, sheet_blocks(sheet), progress);
}

} // namespace steelyard::paint
