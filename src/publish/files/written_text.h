#pragma once
// Text made safe for the formats that we write.

#include <string>
#include <string_view>

namespace steelyard::publish {

/// The text as valid UTF-8 of one line: what no XML 1.0 document may hold (broken sequences,
/// surrogates, U+FFFE, U+FFFF) becomes U+FFFD; tabs, line ends and other controls become spaces;
/// marks of direction vanish.
/// Source: XML 1.0 (fifth edition), production 2, "Char"; UTF-8 as in RFC 3629.
std::string one_line(std::string_view text);

/// one_line, with &, <, >, " and ' as entities: for XML and HTML text and quoted attributes.
std::string xml_escaped(std::string_view text);

/// one_line as a quoted string of a style sheet, safe inside an HTML style element.
/// Source: CSS Syntax Module Level 3, section 4.3.7: a backslash, hexadecimal digits, a space.
std::string css_string(std::string_view text);

} // namespace steelyard::publish
