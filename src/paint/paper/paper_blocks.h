#pragma once
// Parts of a paper that sheets and keys share: which question comes where, numbers in the margin,
// headings.

#include "paint/paper/page_furniture.h"
#include "publish/sheets/worksheet.h"

#include <memory>
#include <string_view>

namespace steelyard::paint {

/// A question of a sheet and its number there.
struct NumberedQuestion {
    std::shared_ptr<const problems::Question> question;
    std::size_t number = 0;   ///< from 1, through the whole sheet
    std::string_view heading; ///< of the part that starts with this question, else empty
    bool prints_code = false; ///< its code stands below it
};

/// The question at a place, counted from 0. The sheet must have one there.
NumberedQuestion question_at(const publish::Worksheet& sheet, std::size_t index);

/// Width of the margin for numbers.
double number_margin_pt(const publish::PageFormat& format);

/// The heading, or nothing for an empty one.
Pieces part_heading(const PageSetting& page, std::string_view heading);

/// The body moved to the right of the number's margin, with the number in it.
Pieces with_number(const PageSetting& page, std::size_t number, Pieces body);

/// A text with line ends, a paragraph for each line.
Pieces paragraphs(const PageSetting& page, std::string_view text, const TextStyle& style,
                  double width_pt);

/// The usual caution, in small quiet type.
Pieces caution(const PageSetting& page);

} // namespace steelyard::paint
