#include "paint/pdf/artifact_filter.h"

#include <algorithm>
#include <array>

namespace steelyard::paint {
namespace {

template <std::size_t kCount>
bool is_among(std::string_view name, const std::array<std::string_view, kCount>& names) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

/// Begin a path or a text object, or show something at once.
constexpr std::array<std::string_view, 6> kBegins{"m", "re", "BT", "Do", "sh", "BI"};
/// End what was begun.
constexpr std::array<std::string_view, 14> kEnds{"S", "s",  "f", "F",  "f*", "B",  "B*",
                                                 "b", "b*", "n", "ET", "Do", "sh", "EI"};

} // namespace

void ArtifactFilter::handleToken(QPDFTokenizer::Token const& token) {
    operation_ += token.getRawValue();
    if (token.getType() == QPDFTokenizer::tt_word)
        end_operation(token.getValue());
}

void ArtifactFilter::end_operation(std::string_view name) {
    if (name == "BMC" || name == "BDC")
        ++depth_;
    if (depth_ == 0 && !in_artifact_ && is_among(name, kBegins)) {
        write("\n/Artifact BMC\n");
        in_artifact_ = true;
    }
    write(operation_);
    operation_.clear();
    if (name == "EMC")
        --depth_;
    if (in_artifact_ && is_among(name, kEnds)) {
        write("\nEMC\n");
        in_artifact_ = false;
    }
}

void ArtifactFilter::handleEOF() {
    write(operation_);
}

} // namespace steelyard::paint
