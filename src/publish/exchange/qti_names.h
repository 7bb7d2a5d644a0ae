#pragma once
// What differs between the two editions of the QTI standard that we write. Both share one tree:
// 3.0 spells its elements with a prefix and dashes.
// Source: 1EdTech Question & Test Interoperability 2.1 and 3.0, information models and XSD.

#include <pugixml.hpp>
#include <string>
#include <string_view>

namespace steelyard::publish {

enum class QtiVersion { v2_1, v3_0 };

/// An element's name in the edition: "simpleChoice" or "qti-simple-choice".
std::string qti_element(QtiVersion version, std::string_view name);

/// An attribute's name in the edition: "baseType" or "base-type".
std::string qti_attribute(QtiVersion version, std::string_view name);

/// Writes elements and attributes in one edition's spelling.
class QtiNode {
public:
    QtiNode(pugi::xml_node node, QtiVersion version) : node_(node), version_(version) {}

    /// A new last child.
    QtiNode add(std::string_view name);
    /// A new last child that both editions take from HTML: p, img, div.
    QtiNode add_html(const char* name);
    QtiNode& set(std::string_view attribute, const std::string& value);
    /// Text after the children so far; made safe for XML.
    QtiNode& say(std::string_view text);

    QtiVersion version() const { return version_; }

private:
    pugi::xml_node node_;
    QtiVersion version_;
};

/// A document with its declaration and its root in the edition's namespace.
QtiNode qti_root(pugi::xml_document& document, QtiVersion version, std::string_view name);

/// The document as text.
std::string xml_text(const pugi::xml_document& document);

} // namespace steelyard::publish
