#include "catch.h"
#include "publish/files/written_text.h"
#include "publish/hostile_text.h"

#include <pugixml.hpp>

using namespace steelyard::publish;

TEST_CASE("good text is left as it is") {
    for (const char* text : {"", "12.5 N·m", "½ × 45°", "שלום", "🚣🏽‍♀️"})
        CHECK(one_line(text) == text);
}

TEST_CASE("each broken sequence becomes one replacement sign") {
    CHECK(one_line("\xC3\x28") == "\xEF\xBF\xBD(");
    CHECK(one_line("a\xFF") == "a\xEF\xBF\xBD");
    CHECK(one_line("\xEF\xBF\xBF") == "\xEF\xBF\xBD");
    CHECK(one_line("\xF0\x9F\x9A end") == "\xEF\xBF\xBD end");
}

TEST_CASE("line ends and controls become spaces") {
    CHECK(one_line("a\r\nb\tc\x01") == "a  b c ");
    CHECK(one_line("a\xE2\x80\xA8"
                   "b") == "a b");
}

TEST_CASE("an XML reader gets back the text that was escaped") {
    for (const std::string& text : hostile_texts()) {
        pugi::xml_document document;
        const std::string xml = "<t a=\"" + xml_escaped(text) + "\">" + xml_escaped(text) + "</t>";
        REQUIRE(document.load_buffer(xml.data(), xml.size(),
                                     pugi::parse_default | pugi::parse_ws_pcdata_single));
        CHECK(document.child("t").text().get() == one_line(text));
        CHECK(document.child("t").attribute("a").value() == one_line(text));
    }
}

TEST_CASE("a string of a style sheet holds no sign that ends it") {
    // Read back by hand: \\22 is the quotation mark, \\3c the less-than sign (ASCII).
    CHECK(css_string("a \"b\" </style>") == "\"a \\22 b\\22  \\3c \\2f style\\3e \"");
    CHECK(css_string("boat-7.A") == "\"boat-7.A\"");
    CHECK(css_string("Ü") == "\"Ü\"");
}
