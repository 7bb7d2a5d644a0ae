#include "catch.h"
#include "cli/command_line.h"
#include "cli/run_here.h"
#include "cli/window_request.h"
#include "temp_folder.h"

#include <regex>

using namespace steelyard::cli;

TEST_CASE("help teaches by example and ends with success") {
    for (const char* ask : {"--help", "-h", "help"}) {
        const Run run = run_here({ask});
        CHECK(run.status == 0);
        CHECK_THAT(run.out, ContainsSubstring("For example:"));
        CHECK(run.err.empty());
        for (const Verb& verb : all_verbs())
            CHECK_THAT(run.out, ContainsSubstring(std::string(verb.summary)));
    }
}

TEST_CASE("every verb explains itself with complete commands") {
    for (const Verb& verb : all_verbs()) {
        INFO(verb.name);
        const Run run = run_here({std::string(verb.name), "--help"});
        CHECK(run.status == 0);
        CHECK_THAT(run.out, ContainsSubstring("  steelyard " + std::string(verb.name)));
        CHECK(verb.examples.substr(0, 12) == "  steelyard ");
    }
}

TEST_CASE("the version is one line") {
    const Run run = run_here({"--version"});
    CHECK(run.status == 0);
    CHECK(std::regex_match(run.out, std::regex("steelyard [0-9]+\\.[0-9]+\\.[0-9]+\n")));
}

TEST_CASE("an unknown verb is bad input") {
    const Run run = run_here({"juggle"});
    CHECK(run.status == 2);
    CHECK_THAT(run.err, ContainsSubstring("'juggle'"));
    CHECK(run.out.empty());
}

TEST_CASE("an unknown option of a known verb is bad input") {
    for (const Verb& verb : all_verbs())
        CHECK(run_here({std::string(verb.name), "--juggle"}).status == 2);
}

TEST_CASE("the window opens for no arguments and for the file of a setup or a lesson alone") {
    const auto asks = [](std::vector<const char*> arguments) {
        arguments.insert(arguments.begin(), "steelyard");
        return asks_for_window(static_cast<int>(arguments.size()), arguments.data());
    };
    CHECK(asks({}));
    CHECK(asks({"oar.setup.toml"}));
    CHECK(asks({"arms.lesson.toml"}));
    CHECK_FALSE(asks({"solve"}));
    CHECK_FALSE(asks({"solve", "oar.setup.toml"}));
    CHECK_FALSE(asks({"--help"}));
    CHECK_FALSE(asks({""}));
}

TEST_CASE("the record's folder may be named before the verb, and for the window") {
    const auto request = [](std::vector<const char*> arguments) {
        arguments.insert(arguments.begin(), "steelyard");
        const int count = static_cast<int>(arguments.size());
        REQUIRE(asks_for_window(count, arguments.data()));
        return read_window_request(count, arguments.data());
    };
    CHECK(request({"--data", "here"})->record_folder == "here");
    CHECK(request({"--data=here"})->record_folder == "here");
    CHECK(request({"--data", "here", "oar.setup.toml"})->file == "oar.setup.toml");
    CHECK(request({"oar.setup.toml", "--data", "here"})->record_folder == "here");
    CHECK(request({"--data", "here", "--size", "640x480"})->width_px == 640);
    CHECK_FALSE(request({"oar.setup.toml"})->record_folder);
    CHECK_FALSE(request({"--data", ""}).has_value());
    CHECK_FALSE(request({"--data"}).has_value());
    const TempFolder folder;
    const std::string before = "--data=" + (folder / "record");
    CHECK_THAT(run_here({before, "progress"}).out, ContainsSubstring("Your name")); // nobody yet
    CHECK(std::filesystem::exists(folder / "record/record.sqlite"));
    CHECK(run_here({"--data", folder / "other", "record", "check"}).status == 0);
    CHECK(std::filesystem::exists(folder / "other/record.sqlite"));
    CHECK_THAT(run_here({"--data", folder / "x", "juggle"}).err, ContainsSubstring("'juggle'"));
    CHECK_THAT(run_here({"--data", folder / "x", "solve", "oar"}).err,
               ContainsSubstring("reads no record"));
}

TEST_CASE("an empty name of the record's folder is an error, not the usual folder") {
    for (const char* verb : {"learn", "quick", "exam", "progress"}) {
        const Run after = run_here({verb, "--data", ""});
        CHECK(after.status == 2);
        CHECK_THAT(after.err, ContainsSubstring("name a folder"));
        CHECK(run_here({"--data", "", verb}).status == 2);
    }
    CHECK(run_here({"record", "check", "--data", ""}).status == 2);
}
