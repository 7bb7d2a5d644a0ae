#include "catch.h"
#include "setup/toml/toml_reader.h"
#include "temp_folder.h"

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>
#include <sys/stat.h>

using namespace steelyard::setup;
namespace fs = std::filesystem;

namespace {

/// A file that is gone again after the test.
struct ScratchFile {
    fs::path path;
    ScratchFile(const std::string& name, const std::string& content)
        : path(fs::temp_directory_path() / ("steelyard_" + name)) {
        std::ofstream(path, std::ios::binary) << content;
    }
    ~ScratchFile() { fs::remove(path); }
};

InputError refused(const std::string& text) {
    const auto document = parse_toml(text, "x.toml");
    REQUIRE_FALSE(document.has_value());
    INFO(to_text(document.error()));
    CHECK(document.error().file == "x.toml");
    return document.error();
}

} // namespace

TEST_CASE("getters give what the file says and remember where", "[toml]") {
    const auto document = parse_toml(R"(
name = "Beam balance"
order = 10
steep = true
share = "45 %"
ratio = 2.5
arm = "45 cm"
turn = 30
[effort]
force = "2 kg"
[[load]]
mass = "3 lb"
[[load]]
mass = "1/2 lb"
)",
                                     "x.toml");
    REQUIRE(document.has_value());
    InputErrors errors;
    TomlReader table(*document, errors);
    CHECK(table.text("name", Need::required) == "Beam balance");
    CHECK(table.integer("order", Need::required, 0, 100) == 10);
    CHECK(table.boolean("steep") == true);
    CHECK(table.number("share") == 0.45);
    CHECK(table.number("ratio") == 2.5);
    const auto arm = table.quantity("arm", Dimension::length);
    REQUIRE(arm.has_value());
    CHECK(arm->value_SI == 0.45);
    CHECK(arm->text == "45 cm");
    CHECK(arm->line == 7);
    CHECK(table.quantity("turn", Dimension::angle)->value_SI == Approx(0.5235987755982988));
    auto effort = table.table("effort", Need::required);
    REQUIRE(effort.has_value());
    CHECK(effort->quantity("force", Dimension::force, Need::required, true)->value_SI ==
          2 * 9.80665);
    effort->finish();
    auto loads = table.tables("load");
    REQUIRE(loads.size() == 2);
    CHECK(loads[1].quantity("mass", Dimension::mass)->value_SI == Approx(0.226796185));
    CHECK(loads[1].path_of("mass") == "load[2].mass");
    loads[0].quantity("mass", Dimension::mass);
    loads[0].finish();
    CHECK_FALSE(table.text("missing").has_value());
    table.finish();
    CHECK(errors.empty());
}

TEST_CASE("errors name file, line, key, what was found and expected, and the nearest spelling",
          "[toml]") {
    const auto document = parse_toml("nmae = \"x\"\narm = \"45 cmm\"\nside = \"lfet\"\nflag = 1\n",
                                     "beam.setup.toml");
    REQUIRE(document.has_value());
    InputErrors errors;
    TomlReader table(*document, errors);
    CHECK_FALSE(table.text("name", Need::required).has_value());
    CHECK_FALSE(table.quantity("arm", Dimension::length).has_value());
    CHECK_FALSE(table.choice("side", {"left", "right"}).has_value());
    CHECK_FALSE(table.boolean("flag").has_value());
    table.finish();
    REQUIRE(errors.size() == 5);
    CHECK(to_text(errors[1]) == "beam.setup.toml, line 2, arm: found \"45 cmm\", expected a length "
                                "such as \"45 cm\". “cmm” is not a unit of length. Did you mean "
                                "cm?");
    CHECK(to_text(errors[2]) == "beam.setup.toml, line 3, side: found \"lfet\", expected \"left\" "
                                "or \"right\". Did you mean \"left\"?");
    CHECK(errors[3].expected == "true or false");
    CHECK(errors[4].key == "nmae");
    CHECK(errors[4].line == 1);
    CHECK(errors[4].mend == "Did you mean \"name\"?");
    CHECK(first_of(errors).line == 1);
}

TEST_CASE("numbers without a unit are refused, but for zero and angles", "[toml]") {
    const auto document =
        parse_toml("arm = 45\nnone = 0\nturn = -30\nbad = nan\nworse = inf\n", "x");
    REQUIRE(document.has_value());
    InputErrors errors;
    TomlReader table(*document, errors);
    CHECK_FALSE(table.quantity("arm", Dimension::length).has_value());
    CHECK(table.quantity("none", Dimension::length)->value_SI == 0.0);
    CHECK(table.quantity("turn", Dimension::angle).has_value());
    CHECK(errors.size() == 1);
    CHECK(errors[0].mend.find("unit") != std::string::npos);
    CHECK_FALSE(table.number("bad").has_value());
    CHECK_FALSE(table.number("worse").has_value());
    CHECK(errors.size() == 3);
}

TEST_CASE("wrong types are named, not converted", "[toml]") {
    const auto document = parse_toml(
        "a = [1]\nb = {x = 1}\nc = 2020-01-01\nd = \"t\"\ne = [\"x\", 1]\n[f]\nx = 1\n", "x");
    REQUIRE(document.has_value());
    InputErrors errors;
    TomlReader table(*document, errors);
    table.text("a");
    table.text("b");
    table.text("c");
    table.integer("d");
    table.texts("e");
    table.tables("f");
    table.table("d");
    REQUIRE(errors.size() == 7);
    CHECK(errors[0].found == "a list");
    CHECK(errors[1].found == "a table");
    CHECK(errors[2].found == "a date or time");
    CHECK(errors[3].expected == "a whole number");
    CHECK(errors[5].mend == "Write two brackets: [[f]].");
}

TEST_CASE("a text that is not TOML is refused with its line", "[toml]") {
    CHECK(refused("a = 1\nb = = 2\n").line == 2);
    CHECK(refused("a = \"open\nb = 2\n").line == 1);
    CHECK(refused("a = 1\na = 2\n").line == 2); // duplicate key
    CHECK(refused("a = [1, 2\n").line >= 1);
    CHECK(refused("").found == "an empty file");
    CHECK(refused(" \n\t\n").found == "an empty file");
    CHECK(refused("\xEF\xBB\xBF").found == "an empty file");
    CHECK(refused(std::string("a = 1\n\0b", 8)).found == "binary data");
    CHECK(refused("a = \"\xC3\x28\"\n").mend.find("UTF-8") != std::string::npos);
    CHECK(refused("a = 1\nb = \"\xED\xA0\x80\"\n").line == 2); // a surrogate
}

TEST_CASE("letters beyond ASCII are welcome in texts and refused outside of them", "[toml]") {
    const InputError degrees = refused("a = 1\nb = 30°\n");
    CHECK(degrees.line == 2);
    CHECK(degrees.found == "° outside of quotation marks");
    CHECK(degrees.mend.find("quotation marks") != std::string::npos);
    CHECK(refused("größe = 1\n").line == 1);
    CHECK(refused("a = \"x\"é\n").line == 1);
    // Where the parser looks for white space inside a text: after a backslash and a new line.
    const auto folded = parse_toml("# é\na = \"\"\"one \\\n  élan\"\"\"\nb = 'Ω'\n", "x");
    REQUIRE(folded.has_value());
    InputErrors errors;
    CHECK(TomlReader(*folded, errors).text("a") == "one élan");
    CHECK(refused("a = \"\\é\"\n").line == 1);
    CHECK(refused("a = \"\"\"\\é\"\"\"\n").line == 1);
}

TEST_CASE("deep nesting is refused before it can exhaust the stack", "[toml]") {
    const std::size_t deep = 1000000;
    std::string dotted = "a";
    for (std::size_t i = 0; i < deep; ++i)
        dotted += ".a";
    CHECK(refused("x = 1\n" + dotted + " = 1\n").line == 2);
    CHECK(refused("[" + dotted + "]\n").line == 1);
    CHECK(refused("a = " + std::string(deep, '[') + "\n").line == 1);
    std::string inline_tables = "a = ";
    for (std::size_t i = 0; i < deep; ++i)
        inline_tables += "{a = ";
    CHECK(refused(inline_tables).line == 1);
    // Dots and brackets in texts and comments are no nesting.
    const std::string dots(1000, '.');
    CHECK(parse_toml("# " + dots + "\na = \"" + dots + "\"\nb = '''\n" + std::string(100, '[') +
                         "\n" + dots + "'''\n",
                     "x")
              .has_value());
}

TEST_CASE("files that cannot be read are refused with a sentence", "[toml]") {
    const auto refusal = [](const fs::path& path) {
        const auto document = read_toml_file(path);
        REQUIRE_FALSE(document.has_value());
        return to_text(document.error());
    };
    CHECK(refusal("no/such/file.toml").find("no such file") != std::string::npos);
    CHECK(refusal(fs::temp_directory_path()).find("a folder") != std::string::npos);
    CHECK(refusal("/dev/null").find("not a plain file") != std::string::npos);

    const ScratchFile huge("huge.toml", "a = 1\n");
    fs::resize_file(huge.path, 100u << 20); // 100 MB, sparse
    CHECK(refusal(huge.path).find("a file of 100 MB") != std::string::npos);

    const ScratchFile binary("binary.toml", std::string("\x7F"
                                                        "ELF\0\0\1",
                                                        7));
    CHECK(refusal(binary.path).find("binary data") != std::string::npos);
    const ScratchFile good("good.toml", "a = 1\r\nb = \"two\"\r\n");
    CHECK(read_toml_file(good.path).has_value());
}

TEST_CASE("texts are quoted so that they read back the same", "[toml]") {
    for (const std::string text :
         {"plain", "with \"quotes\" and \\", "two\nlines\ttab", "\x01\x7F", "ünïcödé ☂", ""}) {
        const auto document = parse_toml("a = " + toml_string(text), "x");
        REQUIRE(document.has_value());
        InputErrors errors;
        CHECK(TomlReader(*document, errors).text("a") == text);
    }
}

TEST_CASE("a hostile file cannot reach the terminal through its error", "[toml]") {
    const std::string escape = "\\u001B[2J";
    const auto document = parse_toml(
        "\"" + escape + std::string(100000, 'k') + "\" = 1\nb = \"" + escape + "\"\n", "x");
    REQUIRE(document.has_value());
    InputErrors errors;
    TomlReader table(*document, errors);
    table.boolean("b");
    table.finish();
    REQUIRE(errors.size() == 2);
    for (const InputError& error : errors) {
        const std::string text = to_text(error);
        CHECK(text.find('\x1B') == std::string::npos);
        CHECK(text.size() < 1000);
    }
}

TEST_CASE("a list of absurd length is one error", "[toml]") {
    std::string text;
    for (int i = 0; i < 20000; ++i)
        text += "[[load]]\n";
    const auto document = parse_toml(text, "x");
    REQUIRE(document.has_value());
    InputErrors errors;
    TomlReader table(*document, errors);
    CHECK(table.tables("load").empty());
    REQUIRE(errors.size() == 1);
    CHECK(errors[0].found == "20000 tables");
}

TEST_CASE("what is no plain file of a sane size is refused unread", "[toml]") {
    const TempFolder folder;
    REQUIRE(mkfifo((folder / "pipe.toml").c_str(), 0600) == 0);
    const std::string large = folder.put("large.toml", "a = 1\n");
    std::filesystem::resize_file(large, kLargestFile + 1);
    for (const std::string& path : {folder.path(), folder / "pipe.toml", large,
                                    folder / "none.toml", std::string("/dev/zero")}) {
        INFO(path);
        const auto read = read_toml_file(path);
        REQUIRE_FALSE(read);
        CHECK(read.error().file == path);
        CHECK_FALSE(read.error().found.empty());
    }
    std::string tables;
    for (int i = 0; i < 10001; ++i)
        tables += "[[load]]\n";
    const auto document = parse_toml(tables, "x");
    REQUIRE(document);
    InputErrors errors;
    TomlReader reader(*document, errors);
    CHECK(reader.tables("load").empty());
    REQUIRE(errors.size() == 1);
    CHECK_THAT(errors[0].expected, ContainsSubstring("10000"));
}
