#pragma once
// The same sheets and keys as pages that a browser prints: drawings inline as SVG, one style sheet
// inside, no script, nothing loaded from elsewhere.

#include "problems/bank/bank.h"
#include "publish/files/error.h"
#include "publish/files/progress.h"
#include "publish/sheets/worksheet.h"

#include <tl/expected.hpp>

#include <string>

namespace steelyard::publish {

/// The sheet for learners as one HTML file.
tl::expected<std::string, PublishError> worksheet_html(const Worksheet& sheet,
                                                       const Progress& progress = {});

/// The key as one HTML file.
tl::expected<std::string, PublishError> key_html(const Worksheet& sheet, const problems::Bank& bank,
                                                 const Progress& progress = {});

} // namespace steelyard::publish
