#pragma once
// Questions as a QTI package: a manifest, one test, its items and figures.

#include "problems/bank/bank.h"
#include "problems/question/question.h"
#include "publish/exchange/packed_file.h"
#include "publish/exchange/qti_names.h"
#include "publish/files/error.h"
#include "publish/files/progress.h"

#include <tl/expected.hpp>

#include <string>
#include <vector>

namespace steelyard::publish {

/// The files of a package, the manifest first.
/// @param title  of the test that holds the items in order
tl::expected<std::vector<PackedFile>, PublishError>
qti_files(const problems::Bank& bank, const std::vector<problems::Question>& questions,
          QtiVersion version, const std::string& title, const Progress& progress = {});

} // namespace steelyard::publish
