// What is mistyped is answered with the nearest word, what is out of range with a sentence, and "-"
// is the standard stream wherever a file is named.

#include "catch.h"
#include "cli/run_here.h"
#include "setup/files/data_folder.h"
#include "temp_folder.h"

#include <nlohmann/json.hpp>

namespace {

std::string shipped(const std::string& name) {
    return content(steelyard::setup::data_folder() / "assets" / name);
}

} // namespace

TEST_CASE("every word that is mistyped is answered with the nearest one") {
    struct Slip {
        std::vector<std::string> typed;
        const char* meant;
    };
    const TempFolder folder;
    const std::vector<Slip> slips{
        {{"slove", "crowbar"}, "'solve'"},
        {{"solve", "crowbar", "--jsno"}, "'--json'"},
        {{"solve", "crobwar"}, "crowbar"},
        {{"draw", "crobwar", "--out", folder / "a.png"}, "crowbar"},
        {{"figure", "crowbar", "--beside", "wheelbarow", "--out", folder / "a.png"}, "wheelbarrow"},
        {{"draw", "crowbar", "--out", folder / "a.png", "--look", "drak"}, "'dark'"},
        {{"draw", "crowbar", "--out", folder / "a.png", "--format", "pgn"}, "'png'"},
        {{"draw", "curl-dumbbell", "--out", folder / "a.png", "--view", "fornt"}, "'front'"},
        {{"figure", "crowbar", "--out", folder / "a.png", "--sweep", "--over", "laod"}, "'load'"},
        {{"list", "exercise"}, "'exercises'"},
        {{"bank", "chek"}, "'check'"},
        {{"record", "exprot"}, "'export'"},
        {{"record", "export", "--format", "cvs"}, "'csv'"},
        {{"export", "--format", "qti12", "--out", folder / "a.zip"}, "'qti21'"},
        {{"generate", "--skill", "moment-arm-oblik"}, "\"moment-arm-oblique\""},
        {{"generate", "--family", "effort-on-a-plnak"}, "\"effort-on-a-plank\""},
        {{"handout", "--blueprint", "boathose", "--out", folder.path()}, "boathouse"},
        {{"handout", "--code", "boathose-42", "--out", folder.path()}, "boathouse"},
        {{"handout", "--blueprint", "boathouse", "--paper", "Leter", "--out", folder.path()},
         "'Letter'"},
        {{"whatif", "crate-far", "--joint", "lumbarr", "--less", "5 %"}, "lumbar"},
        {{"reference", "bahs"}, "'bash'"},
    };
    for (const Slip& slip : slips) {
        const Run run = run_here(slip.typed);
        INFO(slip.meant << ": " << run.err);
        CHECK(run.status == 2);
        CHECK_THAT(run.err, ContainsSubstring(slip.meant));
        CHECK(run.out.empty());
    }
    CHECK(folder.count() == 0);
    // Capitals are no slip.
    CHECK(run_here({"generate", "--count", "1", "--units", "si"}).status == 0);
}

TEST_CASE("a seed is a whole number of 64 bits, and any other is refused with a sentence") {
    const std::vector<std::vector<std::string>> seeded{
        {"generate", "--count", "1"},
        {"export", "--format", "csv", "--count", "1", "--out", "-"},
        {"ask"}};
    for (std::vector<std::string> command : seeded) {
        command.insert(command.end(), {"--seed", ""});
        for (const char* seed :
             {"-1", "18446744073709551616", "1e3", "0x10", "1.5", "seven", " 7"}) {
            command.back() = seed;
            const Run run = run_here(command);
            INFO(command.front() << " " << seed << ": " << run.err);
            CHECK(run.status == 2);
            CHECK_THAT(run.err, ContainsSubstring("whole number from 0 to 18446744073709551615"));
        }
        for (const char* seed : {"0", "18446744073709551615"}) {
            command.back() = seed;
            CHECK(run_here(command).status == 0);
        }
    }
    const TempFolder folder;
    for (const std::vector<std::string>& other : std::vector<std::vector<std::string>>{
             {"handout", "--blueprint", "boathouse", "--out", folder.path(), "--seed", "-1"},
             {"exam", "--data", folder.path(), "--seed", "-1"},
             {"learn", "--data", folder.path(), "--seed", "-1"},
             {"quick", "--data", folder.path(), "--seed", "-1"}})
        CHECK_THAT(run_here(other).err, ContainsSubstring("whole number from 0"));
}

TEST_CASE("a setup comes from standard input, wherever one is named") {
    const std::string crowbar = shipped("setups/crowbar.setup.toml");
    REQUIRE_FALSE(crowbar.empty());
    CHECK(run_here({"solve", "-", "--json"}, crowbar).out ==
          run_here({"solve", "crowbar", "--json"}).out);
    CHECK(run_here({"draw", "-", "--out", "-", "--format", "svg"}, crowbar).out ==
          run_here({"draw", "crowbar", "--out", "-", "--format", "svg"}).out);
    CHECK(run_here({"figure", "wheelbarrow", "--beside", "-", "--out", "-", "--format", "svg"},
                   crowbar)
              .status == 0);
    const std::string far = shipped("setups/body/crate-far.setup.toml");
    for (const std::vector<std::string>& words : std::vector<std::vector<std::string>>{
             {"whatif", "-", "--joint", "lumbar", "--less", "20 %", "--change", "load"},
             {"whatif", "crate-near", "--joint", "lumbar", "--equal", "-", "--change", "load"}})
        CHECK(run_here(words, far).status == 0);
    const Run broken = run_here({"solve", "-"}, "[[[");
    CHECK(broken.status == 2);
    CHECK_THAT(broken.err, ContainsSubstring("standard input"));
}

TEST_CASE("pictures, questions and records go to standard output, as to a file") {
    const TempFolder folder;
    for (const char* format : {"svg", "png", "pdf"}) {
        const std::string name = folder / (std::string("a.") + format);
        REQUIRE(run_here({"draw", "crowbar", "--out", name}).status == 0);
        const Run run = run_here({"draw", "crowbar", "--out", "-", "--format", format});
        CHECK(run.status == 0);
        CHECK(run.out == content(name));
    }
    CHECK_THAT(run_here({"draw", "crowbar", "--out", "-"}).err, ContainsSubstring("--format"));
    const std::string zip = folder / "a.zip";
    REQUIRE(run_here({"export", "--format", "qti21", "--count", "3", "--out", zip}).status == 0);
    CHECK(run_here({"export", "--format", "qti21", "--count", "3", "--out", "-"}).out ==
          content(zip));
    const std::string data = folder / "record";
    run_here({"quick", "--learner", "Ada", "--new", "--data", data}, "?\n?\n?\n?\n?\n");
    const Run record = run_here({"record", "export", "-", "--data", data});
    CHECK(record.status == 0);
    CHECK(record.out == run_here({"record", "export", "--data", data}).out);
    const Run taken = run_here({"record", "import", "-", "--data", folder / "other"}, record.out);
    CHECK(taken.status == 0);
    CHECK_THAT(taken.out, ContainsSubstring("5 lines new to the record of Ada"));
}

TEST_CASE("a blueprint comes from standard input, and sheets go to a folder") {
    const TempFolder folder;
    const std::string text = shipped("blueprints/boathouse.blueprint.toml");
    REQUIRE_FALSE(text.empty());
    const Run made =
        run_here({"handout", "--blueprint", "-", "--html", "--out", folder / "a"}, text);
    INFO(made.err);
    CHECK(made.status == 0);
    CHECK_THAT(made.out, ContainsSubstring("sheet-1.html"));
    CHECK_THAT(run_here({"handout", "--blueprint", "boathouse", "--out", "-"}).err,
               ContainsSubstring("Name a folder"));
}
