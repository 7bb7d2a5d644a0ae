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

/// The drawing of an item.
struct ItemFigure {
    std::string href; ///< path from the item; empty when there is none
    std::string alt;  ///< what it shows, in words
};

/// The item as XML, in English. After an answer it tells what that answer means, then the solution,
/// which stands in it once. It scores 0 or 1.
/// Tolerance is written as a least and a most number: `equal` with a tolerance is read differently
/// by different engines, and by some not at all.
std::string qti_item(const problems::Bank& bank, const problems::Question& question,
                     QtiVersion version, const ItemFigure& figure);

} // namespace steelyard::publish
