#pragma once
// A glossary and formula sheet as PDF.

#include "publish/files/error.h"
#include "publish/sheets/term_list.h"

#include <tl/expected.hpp>

#include <string>

namespace steelyard::paint {

/// The bytes of the paper: formulas first, then every term with its other names and its source.
tl::expected<std::string, publish::PublishError> term_list_pdf(const publish::TermList& list);

} // namespace steelyard::paint
