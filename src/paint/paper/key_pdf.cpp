#include "paint/paper/paper_blocks.h"
#include "paint/paper/paper_pdf.h"
#include "paint/paper/worksheet_blocks.h"
#include "paint/paper/worksheet_pdf.h"
#include "publish/question/question_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace steelyard::paint {
using namespace publish;
namespace {

using problems::Question;
using scene::Role;

/// Answers of a long paper stand in groups, so that a column is never read across pages.
constexpr std::size_t kGlanceGroup = 100;

std::size_t glance_groups(std::size_t answers) {
    return (answers + kGlanceGroup - 1) / kGlanceGroup;
}

/// A group of the answers at a glance, in columns that are read downwards.
/// @param group  counted from 0
Pieces glance(const PageSetting& page, const std::vector<std::string>& all, std::size_t group) {
    const std::size_t before = group * kGlanceGroup;
    const std::vector<std::string> answers(
        all.begin() + static_cast<std::ptrdiff_t>(before),
        all.begin() + static_cast<std::ptrdiff_t>(std::min(all.size(), before + kGlanceGroup)));
    const TextStyle number_style{page.format.body_pt(), false, Role::quiet_ink};
    const TextStyle answer_style{page.format.body_pt(), true, Role::ink};
    const double margin = number_margin_pt(page.format);
    const double width = page.format.content_width_pt();
    const std::size_t count = answers.size();
    double widest = 0.0;
    for (const std::string& answer : all)
        widest = std::max(widest, page.type.width(answer, answer_style));
    constexpr double kMostColumns = 5.0;
    const double column = widest + margin + 4.0 * page.format.step_pt();
    const auto columns = static_cast<std::size_t>(std::clamp(width / column, 1.0, kMostColumns));
    const std::size_t rows = (count + columns - 1) / columns;

    Pieces pieces;
    for (std::size_t row = 0; row < rows; ++row) {
        std::vector<std::pair<Piece, Piece>> cells;
        for (std::size_t i = row; i < count; i += rows) {
            cells.emplace_back(
                page.type.line(fmt::format("{} ", before + i + 1), number_style),
                page.type.paragraph(answers[i] + " ", answer_style, width - margin).front());
        }
        const double step = width / static_cast<double>(columns);
        const double height = cells.front().first.height_pt;
        pieces.push_back({height,
                          [cells, step, margin](cairo_t* surface) {
                              for (const auto& [number, answer] : cells) {
                                  paint_at(surface, number, 0.0);
                                  paint_at(surface, answer, margin);
                                  cairo_translate(surface, step, 0.0);
                              }
                          },
                          Tag::paragraph, false});
    }
    pieces.push_back(gap(2.0 * page.format.step_pt()));
    if (before + kGlanceGroup < all.size())
        return pieces;
    pieces.push_back(notched_rule(page));
    pieces.push_back(gap(4.0 * page.format.step_pt()));
    return pieces;
}

/// What the question is about, with the code that makes it again at the right end.
Pieces title_line(const PageSetting& page, const std::string& title, const std::string& code,
                  double width_pt) {
    const TextStyle style{page.format.small_pt(), false, Role::quiet_ink};
    const double code_width = page.type.width(code, style);
    Pieces lines = page.type.paragraph(title + " ", style,
                                       width_pt - code_width - 4.0 * page.format.step_pt());
    const Piece end = page.type.line(code, style);
    lines.back().paint = [paint = lines.back().paint, end,
                          right = width_pt - code_width](cairo_t* surface) {
        paint_at(surface, {0.0, paint}, 0.0);
        paint_at(surface, end, right);
    };
    return lines;
}

Pieces step_lines(const PageSetting& page, const problems::Step& step, double width_pt) {
    const double indent = 4.0 * page.format.step_pt();
    Pieces lines = paragraphs(page, step.says, {page.format.body_pt(), false, Role::ink}, width_pt);
    if (!lines.empty())
        lines.pop_back(); // the formula follows closely
    const std::string formula = worked_formula(step);
    if (!formula.empty()) {
        append(lines, indented(page.type.paragraph(formula,
                                                   {page.format.body_pt(), false, Role::ink, true},
                                                   width_pt - indent),
                               indent));
    }
    lines.push_back(gap(page.format.step_pt()));
    return lines;
}

/// A cross, the wrong answer, the thinking behind it.
Pieces mistake_lines(const PageSetting& page, const Mistake& mistake, double answer_width,
                     double width_pt) {
    const double step = page.format.step_pt();
    const double words_at = 4.0 * step + answer_width + 2.0 * step;
    Pieces lines =
        indented(page.type.paragraph(mistake.title, {page.format.body_pt(), false, Role::quiet_ink},
                                     width_pt - words_at),
                 words_at);
    const Piece cross = verdict_mark(page.format, false);
    const Piece answer =
        page.type.line(mistake.answer + " ", {page.format.body_pt(), true, Role::wrong});
    lines.front().paint = [paint = lines.front().paint, cross, answer, step](cairo_t* surface) {
        paint_at(surface, cross, 0.0);
        paint_at(surface, answer, 4.0 * step);
        paint(surface);
    };
    return lines;
}

Pieces mistakes_table(const PageSetting& page, const problems::Bank& bank, const Question& question,
                      double width_pt) {
    const std::vector<Mistake> found = mistakes(bank, question);
    if (found.empty())
        return {};
    double answer_width = 0.0;
    for (const Mistake& mistake : found) {
        answer_width =
            std::max(answer_width, page.type.width(mistake.answer, {page.format.body_pt(), true}));
    }
    Pieces lines = page.type.paragraph("Watch for",
                                       {page.format.small_pt(), false, Role::quiet_ink}, width_pt);
    for (const Mistake& mistake : found) {
        append(lines,
               mistake_lines(page, mistake, std::min(answer_width, 0.4 * width_pt), width_pt));
    }
    return lines;
}

Pieces key_block(const PageSetting& page, const problems::Bank& bank,
                 const NumberedQuestion& numbered) {
    const Question& question = *numbered.question;
    const double step = page.format.step_pt();
    const double width = page.format.content_width_pt() - number_margin_pt(page.format);
    Pieces body = title_line(page, short_title(bank, question), question.code, width);
    append(body, page.type.paragraph(key_answer(question),
                                     {page.format.body_pt(), true, Role::right}, width));
    body.push_back(gap(step));
    for (const problems::Step& worked : question.steps)
        append(body, step_lines(page, worked, width));
    append(body, paragraphs(page, question.reason, {page.format.body_pt()}, width));
    append(body, mistakes_table(page, bank, question, width));
    Pieces block = part_heading(page, numbered.heading);
    append(block, with_number(page, numbered.number, std::move(body)));
    block.push_back(gap(5.0 * step));
    return block;
}

} // namespace

PaperBlocks key_blocks(const Worksheet& sheet, const problems::Bank& bank) {
    const std::size_t questions = sheet.count();
    std::vector<std::string> answers;
    for (const SheetPart& part : sheet.parts)
        for (const Question& question : part.questions)
            answers.push_back(short_answer(question));
    PaperBlocks blocks;
    const std::size_t first = 1 + glance_groups(questions); // after the head and the glance
    blocks.count = first + questions + 1;
    blocks.make = [&sheet, &bank, questions, first,
                   answers = std::move(answers)](const PageSetting& page, std::size_t index) {
        if (index == 0)
            return paper_head(page, sheet, true);
        if (index < first)
            return glance(page, answers, index - 1);
        return index < first + questions ? key_block(page, bank, question_at(sheet, index - first))
                                         : caution(page);
    };
    return blocks;
}

std::string key_title(const Worksheet& sheet) {
    return "Key: " + sheet.title;
}

tl::expected<std::string, PublishError> key_pdf(const Worksheet& sheet, const problems::Bank& bank,
                                                const Progress& progress) {
    return paper_pdf(sheet, key_title(sheet), key_blocks(sheet, bank), progress);
}

} // namespace steelyard::paint
