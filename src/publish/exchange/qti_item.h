#pragma once
// One question as a QTI item: choice or numeric entry, the figure, one branch of feedback for each
// wrong rule.

#include "problems/bank/bank.h"
#include "problems/question/question.h"
#include "publish/exchange/qti_names.h"

#include <string>

namespace steelyard::publish {

/// Identifier of a question's item, made from its code: unique within a package.
std::string qti_identifier(const problems::Question& question);

/// The item as XML.
/// Tolerance is written as absolute bounds around the answer: relative ones are read differently by
/// different engines and fail for negative answers.
/// @param figure_href  path of the figure within the package; empty when there is none
std::string qti_item(const problems::Bank& bank, const problems::Question& question,
                     QtiVersion version, const std::string& figure_href);

} // namespace steelyard::publish
