#pragma once
// Questions as a QTI package: a zip archive with a manifest, one test, its items and figures.

#include "problems/bank/bank.h"
#include "problems/question/question.h"
#include "publish/exchange/qti_names.h"
#include "publish/files/error.h"
#include "publish/files/progress.h"

#include <tl/expected.hpp>

#include <string>
#include <vector>

namespace steelyard::publish {

/// A file within a package.
struct PackedFile {
    std::string path;
    std::string bytes;
};

/// The files of a package, the manifest first.
/// @param title  of the test that holds the items in order
tl::expected<std::vector<PackedFile>, PublishError>
qti_files(const problems::Bank& bank, const std::vector<problems::Question>& questions,
          QtiVersion version, const std::string& title, const Progress& progress = {});

/// The files as the bytes of a zip archive. The same files give the same bytes.
tl::expected<std::string, PublishError> zip_of(const std::vector<PackedFile>& files);

} // namespace steelyard::publish
