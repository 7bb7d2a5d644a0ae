#include "publish/exchange/csv.h"

#include "problems/bank/answer_kinds.h"
#include "problems/question/question_writer.h"
#include "publish/files/written_text.h"
#include "publish/pictures/svg.h"
#include "publish/question/question_figure.h"
#include "publish/question/question_text.h"
#include "publish/question/question_view.h"
#include "setup/units/format_quantity.h"

#include <cmath>
#include <functional>
#include <string_view>
#include <utility>

namespace steelyard::publish {
namespace {

using problems::Question;

constexpr std::string_view kLineEnd = "\r\n"; // RFC 4180, section 2, rule 1

std::string row(const std::vector<std::string>& cells) {
    std::string line;
    for (std::size_t i = 0; i < cells.size(); ++i)
        line += (i == 0 ? "" : ",") + cells[i];
    line += kLineEnd;
    return line;
}

/// "A) first class; B) second class"
std::string lettered_choices(const Question& question) {
    std::string text;
    const std::vector<std::string> choices = tickable(question);
    for (std::size_t i = 0; i < choices.size(); ++i)
        text += (text.empty() ? "" : "; ") + problems::letter(i) + ") " + choices[i];
    return text;
}

/// "314 N: mass used as force; 8.8 N: arms swapped"
std::string mistakes_text(const problems::Bank& bank, const Question& question) {
    std::string text;
    for (const Mistake& mistake : mistakes(bank, question))
        text += (text.empty() ? "" : "; ") + mistake.answer + ": " + mistake.title;
    return text;
}

std::string picture_cell(const Question& question, PictureColumn pictures) {
    return pictures == PictureColumn::names && has_figure(question)
               ? csv_text(picture_name(question))
               : "";
}

/// A row of names, then one for each question.
tl::expected<std::string, PublishError>
table(const std::vector<std::string>& names, const std::vector<Question>& questions,
      const std::function<std::string(const Question&)>& row_of, const Progress& progress) {
    std::string text = row(names);
    for (std::size_t i = 0; i < questions.size(); ++i) {
        text += row_of(questions[i]);
        if (!goes_on(progress, i + 1, questions.size()))
            return stopped_work();
    }
    return text;
}

} // namespace

std::string csv_text(std::string_view text) {
    std::string cell = one_line(text);
    if (cell.find_first_of("=+-@") == 0)
        cell.insert(0, 1, '\'');
    if (cell.find_first_of(",\"") == std::string::npos)
        return cell;
    std::string quoted = "\"";
    for (const char c : cell) {
        quoted += c;
        if (c == '"')
            quoted += '"';
    }
    return quoted + '"';
}

std::string picture_name(const Question& question) {
    return "pictures/" + question.code + ".svg";
}

std::string csv_number(double value) {
    return std::isfinite(value) ? setup::exact_number(value) : std::string();
}

tl::expected<std::string, PublishError> questions_csv(const problems::Bank& bank,
                                                      const std::vector<Question>& questions,
                                                      PictureColumn pictures,
                                                      const Progress& progress) {
    const auto row_of = [&](const Question& question) {
        const problems::NumberWanted* number = problems::wanted_number(question);
        return row({csv_text(question.code), csv_text(question.family), csv_text(question.skill),
                    csv_text(problems::row_of(question).word), std::to_string(question.difficulty),
                    csv_text(question.prompt), csv_text(lettered_choices(question)),
                    csv_text(short_answer(question)), number ? csv_number(number->value) : "",
                    number ? csv_number(number->tolerance) : "",
                    csv_text(number ? number->unit : ""), csv_text(question.reason),
                    csv_text(mistakes_text(bank, question)), picture_cell(question, pictures)});
    };
    return table({"code", "family", "skill", "kind", "difficulty", "prompt", "choices", "answer",
                  "value", "tolerance", "unit", "reason", "wrong answers", "picture"},
                 questions, row_of, progress);
}

tl::expected<std::string, PublishError> flash_cards_csv(const std::vector<Question>& questions,
                                                        PictureColumn pictures,
                                                        const Progress& progress) {
    const auto row_of = [pictures](const Question& question) {
        std::string front = question.prompt;
        if (!problems::choices_of(question).empty())
            front += " " + lettered_choices(question);
        std::string back = key_answer(question);
        if (!question.reason.empty())
            back += ". " + question.reason;
        return row({csv_text(front), csv_text(back), picture_cell(question, pictures)});
    };
    return table({"front", "back", "picture"}, questions, row_of, progress);
}

tl::expected<std::vector<PackedFile>, PublishError>
with_pictures(std::string name, std::string table, const std::vector<Question>& questions,
              const Progress& progress) {
    std::vector<PackedFile> files{{std::move(name), std::move(table)}};
    for (std::size_t i = 0; i < questions.size(); ++i) {
        const Question& question = questions[i];
        if (has_figure(question)) {
            auto svg = svg_of(question_figure(question, figure_size(question)),
                              {scene::Look::print, "figure", true});
            if (!svg)
                return tl::make_unexpected(svg.error());
            files.push_back({picture_name(question), std::move(*svg)});
        }
        if (!goes_on(progress, i + 1, questions.size()))
            return stopped_work();
    }
    return files;
}

} // namespace steelyard::publish
