#pragma once
// Marks as artifacts what a page shows outside of its structure: rules, boxes, the line at the
// foot. Cairo 1.16 cannot. Source: PDF 1.7 (ISO 32000-1:2008), 14.8.2.2 real content and
// artifacts, 14.6 marked content, table 51 operator categories.

#include <qpdf/QPDF.hh>
#include <qpdf/QPDFTokenizer.hh>
#include <string>
#include <string_view>

namespace steelyard::paint {

/// Goes through a page's content operator by operator. A path and its painting, a text object or an
/// external object outside of any marked content is put between /Artifact BMC and EMC.
class ArtifactFilter : public QPDFObjectHandle::TokenFilter {
public:
    void handleToken(QPDFTokenizer::Token const& token) override;
    void handleEOF() override;

private:
    void end_operation(std::string_view name);

    std::string operation_; ///< operands and white space since the last operator
    int depth_ = 0;         ///< of marked content
    bool in_artifact_ = false;
};

} // namespace steelyard::paint
