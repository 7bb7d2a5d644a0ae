#pragma once
// Terms on paper: a formula sheet and a glossary, for those who learn without a screen.

#include "publish/sheets/page_format.h"

#include <string>
#include <string_view>
#include <vector>

namespace steelyard::publish {

/// A term as it is printed.
struct PrintedTerm {
    std::string name;
    std::string also;    ///< other names in one line; may be empty
    std::string says;    ///< a sentence or two
    std::string formula; ///< may be empty
    std::string source;
};

/// All that stands on the paper.
struct TermList {
    std::vector<PrintedTerm> terms; ///< by name
    PaperSize paper = PaperSize::a4;
    bool large_print = false;
};

inline constexpr std::string_view kTermListTitle = "Glossary and formula sheet";
/// Headings of its two parts.
inline constexpr std::string_view kFormulasHeading = "Formulas";
inline constexpr std::string_view kTermsHeading = "Terms";

/// The list as a page that a browser prints.
std::string term_list_html(const TermList& list);

} // namespace steelyard::publish
