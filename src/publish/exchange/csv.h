#pragma once
// Questions, keys and flash cards as comma-separated values.
// Source of the format: RFC 4180; UTF-8.

#include "problems/bank/bank.h"
#include "problems/question/question.h"
#include "publish/exchange/packed_file.h"
#include "publish/files/progress.h"

#include <string>
#include <string_view>
#include <vector>

namespace steelyard::publish {

/// A cell that holds words. One that a spreadsheet would take for a formula (it starts with
/// = + - @) gets an apostrophe before it; what needs quotes is quoted.
std::string csv_text(std::string_view text);

/// A cell that holds a number, exactly as a double reads it back; empty for one that is not finite.
std::string csv_number(double value);

/// Where the drawing of a question lies beside the table: "pictures/K7M2Q-9XD4T.svg".
std::string picture_name(const problems::Question& question);

/// What the column of pictures holds.
enum class PictureColumn {
    names, ///< picture_name of each question that has a drawing
    empty, ///< nothing: no drawings go with the table
};

/// One row for each question with its key: code, family, skill, kind, difficulty, prompt, choices,
/// answer, tolerance, unit, wrong answers, picture. The first row names the columns.
tl::expected<std::string, PublishError>
questions_csv(const problems::Bank& bank, const std::vector<problems::Question>& questions,
              PictureColumn pictures, const Progress& progress = {});

/// Three columns, front, back and picture: what is asked, the answer with its reason, the drawing.
tl::expected<std::string, PublishError>
flash_cards_csv(const std::vector<problems::Question>& questions, PictureColumn pictures,
                const Progress& progress = {});

/// The files of a package: a table, and the drawings that its column of pictures names.
/// @param name  of the table: "questions.csv"
tl::expected<std::vector<PackedFile>, PublishError>
with_pictures(std::string name, std::string table, const std::vector<problems::Question>& questions,
              const Progress& progress = {});

} // namespace steelyard::publish
