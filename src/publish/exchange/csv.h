#pragma once
// Questions, keys and flash cards as comma-separated values.
// Source of the format: RFC 4180; UTF-8.

#include "problems/bank/bank.h"
#include "problems/question/question.h"
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

/// One row for each question with its key: code, family, skill, kind, difficulty, prompt, choices,
/// answer, tolerance, unit, wrong answers. The first row names the columns.
tl::expected<std::string, PublishError>
questions_csv(const problems::Bank& bank, const std::vector<problems::Question>& questions,
              const Progress& progress = {});

/// Two columns, front and back: what is asked, and the answer with its reason.
tl::expected<std::string, PublishError>
flash_cards_csv(const std::vector<problems::Question>& questions, const Progress& progress = {});

} // namespace steelyard::publish
