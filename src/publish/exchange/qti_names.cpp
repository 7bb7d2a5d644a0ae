#include "publish/exchange/qti_names.h"

#include "publish/files/written_text.h"

#include <cctype>
#include <sstream>

namespace steelyard::publish {
namespace {

/// "simpleChoice" as "simple-choice".
std::string dashed(std::string_view name) {
    std::string text;
    for (const char c : name) {
        const auto letter = static_cast<unsigned char>(c);
        if (std::isupper(letter) != 0)
            text += '-';
        text += static_cast<char>(std::tolower(letter));
    }
    return text;
}

} // namespace

std::string qti_element(QtiVersion version, std::string_view name) {
    return version == QtiVersion::v2_1 ? std::string(name) : "qti-" + dashed(name);
}

std::string qti_attribute(QtiVersion version, std::string_view name) {
    return version == QtiVersion::v2_1 ? std::string(name) : dashed(name);
}

QtiNode QtiNode::add(std::string_view name) {
    return {node_.append_child(qti_element(version_, name).c_str()), version_};
}

QtiNode QtiNode::add_html(const char* name) {
    return {node_.append_child(name), version_};
}

QtiNode& QtiNode::set(std::string_view attribute, const std::string& value) {
    node_.append_attribute(qti_attribute(version_, attribute).c_str()) = one_line(value).c_str();
    return *this;
}

QtiNode& QtiNode::say(std::string_view text) {
    node_.append_child(pugi::node_pcdata).set_value(one_line(text).c_str());
    return *this;
}

QtiNode qti_root(pugi::xml_document& document, QtiVersion version, std::string_view name) {
    pugi::xml_node declaration = document.append_child(pugi::node_declaration);
    declaration.append_attribute("version") = "1.0";
    declaration.append_attribute("encoding") = "UTF-8";
    pugi::xml_node root = document.append_child(qti_element(version, name).c_str());
    root.append_attribute("xmlns") = version == QtiVersion::v2_1
                                         ? "http://www.imsglobal.org/xsd/imsqti_v2p1"
                                         : "http://www.imsglobal.org/xsd/imsqtiasi_v3p0";
    return {root, version};
}

std::string xml_text(const pugi::xml_document& document) {
    std::ostringstream text;
    // Raw: indentation would put white space between words and interactions.
    document.save(text, "", pugi::format_raw, pugi::encoding_utf8);
    return text.str() + '\n';
}

} // namespace steelyard::publish
