#pragma once
// The frame of a printable page: head, style, foot.

#include "publish/sheets/worksheet.h"

#include <string>
#include <string_view>

namespace steelyard::publish {

/// A complete HTML document around a body.
/// @param title  of the browser's window and of the printed document
std::string html_page(const Worksheet& sheet, std::string_view title, std::string_view body);

/// Text in an element of a class: `<p class="note">...</p>`; nothing for an empty text.
std::string html_element(std::string_view tag, std::string_view css_class, std::string_view text);

/// A symbol with its index: "F_load" as F<sub>load</sub>, made safe.
std::string html_formula(std::string_view formula);

} // namespace steelyard::publish
