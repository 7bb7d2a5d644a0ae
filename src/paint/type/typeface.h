#pragma once
// Which font sets our text.

#include "publish/files/error.h"

#include <tl/expected.hpp>

#include <string>

namespace steelyard::paint {

/// The font family in which pictures are set: Inter, or when it is not installed the first of a few
/// plain families with Latin and Greek letters and arithmetic signs.
/// @return the family's name, or no_font with the package to install
tl::expected<std::string, publish::PublishError> text_family();

/// The font family in which papers are set: Inter and no other, since another would break lines and
/// pages elsewhere under the same code.
/// @return the family's name, or no_font with the package to install
tl::expected<std::string, publish::PublishError> paper_family();

} // namespace steelyard::paint
