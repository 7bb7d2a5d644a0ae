#include "catch.h"
#include "setup/setup.h"
#include "setup/toml/letters.h"

using namespace steelyard::setup;

namespace {

std::string repeated(const std::string& letter, int times) {
    std::string text;
    for (int i = 0; i < times; ++i)
        text += letter;
    return text;
}

std::string lever_named(const std::string& name) {
    return "kind = \"lever\"\nname = " + toml_string(name) +
           "\ndescription = \"x\"\nlength = \"1 m\"\naxis = \"50 cm\"\n"
           "[effort]\nat = \"0 cm\"\ndirection = \"down\"\n"
           "[[load]]\nname = \"crate\"\nat = \"1 m\"\nmass = \"5 kg\"\n";
}

} // namespace

TEST_CASE(
    "a short text is one line of at most 80 letters without controls and marks of direction") {
    for (const char* text : {"", "Ada", "Zoë Ångström", "李雷", "👩‍🏫 Ms Oar", "שרה"}) {
        INFO(text);
        CHECK_FALSE(fault_of_short_text(text));
        CHECK(short_text(text) == text);
    }
    CHECK_FALSE(fault_of_short_text(repeated("é", 80)));
    CHECK_THAT(fault_of_short_text(repeated("é", 81)).value(), ContainsSubstring("80 letters"));
    CHECK_THAT(fault_of_short_text("a\nb").value(), ContainsSubstring("control"));
    CHECK_THAT(fault_of_short_text("a\x1B[2J").value(), ContainsSubstring("control"));
    CHECK_THAT(fault_of_short_text("a\xC2\x9B").value(), ContainsSubstring("control"));
    CHECK_THAT(fault_of_short_text("a\xE2\x80\xAE").value(), ContainsSubstring("U+202E"));
    CHECK_THAT(fault_of_short_text("a\xE2\x81\xA6").value(), ContainsSubstring("U+2066"));
    CHECK_THAT(fault_of_short_text("a\xFF").value(), ContainsSubstring("UTF-8"));
    CHECK_THAT(fault_of_short_text("\xE2\x82").value(), ContainsSubstring("UTF-8"));
}

TEST_CASE("what was not asked about is shown so that it cannot show anything else") {
    CHECK(short_text("red\x1B[31m\r\n") == "red [31m  ");
    CHECK(short_text("txt\xE2\x80\xAE"
                     "exe") == "txtexe");
    CHECK(short_text("a\xFF\xE2\x82z") == "a\xEF\xBF\xBD\xEF\xBF\xBDz");
    CHECK(short_text(repeated("é", 81)) == repeated("é", 79) + "…");
    CHECK(typed_name(repeated("é", 81) + "\n") == repeated("é", 80));
    CHECK(one_line(repeated("é", 81)) == repeated("é", 81));
    for (const std::string& text : {std::string("a\x1B\xE2\x80\xAE\xFF"), repeated("\xFF", 200)})
        CHECK(fault_of_short_text(short_text(text)) == std::nullopt);
}

TEST_CASE("a file's names and titles keep to the rule, and its other texts hold no controls") {
    for (const std::string& name : {repeated("é", 81), std::string("a\x1B[2J"),
                                    std::string("a\xE2\x80\xAE"), std::string("a\nb")}) {
        const auto setup = parse_setup(lever_named(name), "my.setup.toml");
        REQUIRE_FALSE(setup);
        CHECK(setup.error().key == "name");
        CHECK(setup.error().line == 2);
        const std::string told = to_text(setup.error());
        CHECK(told.find('\x1B') == std::string::npos);
        CHECK(told.find("\xE2\x80\xAE") == std::string::npos);
    }
    auto text = lever_named("Beam");
    text.replace(text.find("\"x\""), 3, "\"x\\u202Ey\"");
    const auto setup = parse_setup(text, "my.setup.toml");
    REQUIRE_FALSE(setup);
    CHECK(setup.error().key == "description");
}

TEST_CASE("what is written can be read, whatever was typed or pasted as a name") {
    auto setup = parse_setup(lever_named("Beam"), "my.setup.toml");
    REQUIRE(setup);
    auto& lever = std::get<LeverSetup>(*setup);
    const std::string pasted = repeated("é", 100) + "\x1B\n\xE2\x80\xAE";
    lever.head.name = lever.head.place = lever.head.description = lever.head.note = pasted;
    lever.lever.effort.name = pasted;
    for (auto& load : lever.lever.loads)
        load.name = pasted;
    const auto again = parse_setup(write_setup(*setup), "my.setup.toml");
    REQUIRE(again);
    CHECK(head_of(*again).name == repeated("é", 79) + "…");
    CHECK(head_of(*again).description == repeated("é", 100) + "\n");
}

TEST_CASE("the name of a file cannot write over what is said about it") {
    InputError error;
    error.file = "my\x1B[2J\nfile\xE2\x80\xAE.toml";
    error.found = "nothing";
    CHECK(to_text(error) == "my [2J file.toml: found nothing.");
}
