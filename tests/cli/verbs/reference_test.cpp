// The manual page and what completes words, as man and the shells themselves read them.

#include "catch.h"
#include "cli/reference/command_reference.h"
#include "cli/run_here.h"
#include "outside_program.h"
#include "temp_folder.h"

#include <algorithm>
#include <filesystem>
#include <regex>
#include <sstream>

using namespace steelyard::cli;

namespace {

std::string reference(const std::string& what) {
    const Run run = run_here({"reference", what});
    REQUIRE(run.status == 0);
    return run.out;
}

/// What bash offers for the last of the words of a command line.
std::vector<std::string> offered(const std::vector<std::string>& words) {
    std::string script = "PATH=" + std::filesystem::path(STEELYARD_PROGRAM).parent_path().string() +
                         ":$PATH\n" + reference("bash");
    script += "COMP_WORDS=(steelyard";
    for (const std::string& word : words)
        script += " '" + word + "'";
    script += ")\nCOMP_CWORD=" + std::to_string(words.size()) +
              "\n_steelyard\nprintf '%s\\n' \"${COMPREPLY[@]}\"\n";
    const TempFile file("complete.bash", script);
    const Ran ran = run_outside("bash " + file.path());
    CHECK(ran.status == 0);
    std::vector<std::string> lines;
    std::istringstream in(ran.out);
    for (std::string line; std::getline(in, line);)
        lines.push_back(line);
    return lines;
}

bool offers(const std::vector<std::string>& words, const std::string& word) {
    const std::vector<std::string> lines = offered(words);
    INFO(words.back());
    return std::find(lines.begin(), lines.end(), word) != lines.end();
}

} // namespace

TEST_CASE("the manual page and every completion hold every verb and every option") {
    const std::string man = reference("man");
    const std::vector<std::string> shells{reference("bash"), reference("zsh"), reference("fish")};
    for (const CommandEntry& command : all_commands()) {
        INFO(command.name);
        CHECK_THAT(man, ContainsSubstring(".SS " + command.name));
        for (const std::string& shell : shells)
            CHECK_THAT(shell, ContainsSubstring(command.name));
        CHECK(command.examples.size() > 0);
        for (const OptionEntry& option : command.options) {
            CHECK_FALSE(option.says.empty());
            for (const std::string& name : option.names) {
                INFO(name);
                const std::string bare = name.substr(name.find_first_not_of('-'));
                CHECK_THAT(man,
                           ContainsSubstring(std::regex_replace(bare, std::regex("-"), "\\-")));
                for (const std::string& shell : shells)
                    CHECK_THAT(shell, ContainsSubstring(bare));
            }
        }
    }
}

TEST_CASE("man shows the page without a complaint") {
    if (!has_program("man") || !has_program("groff")) {
        WARN("skipped: there is no man here");
        return;
    }
    const TempFile page("steelyard.1", reference("man"));
    const Ran shown = run_outside("MANWIDTH=78 man --warnings -l " + page.path() + " | cat");
    CHECK_THAT(shown.out, !ContainsSubstring("warning"));
    CHECK_THAT(shown.out, ContainsSubstring("EXIT STATUS"));
    CHECK_THAT(shown.out, ContainsSubstring("steelyard solve launch-trolley"));
}

TEST_CASE("bash completes verbs, options, words and names") {
    CHECK(offers({"so"}, "solve"));
    CHECK(offers({"solve", "--"}, "--json"));
    CHECK(offers({"export", "--format", ""}, "qti21"));
    CHECK(offers({"draw", "--look", "p"}, "print"));
    CHECK(offers({"solve", "laun"}, "launch-trolley"));
    CHECK(offers({"whatif", "curl-d"}, "curl-dumbbell"));
    CHECK(offers({"generate", "--skill", "moment-arm-o"}, "moment-arm-oblique"));
    CHECK(offers({"handout", "--blueprint", "boat"}, "boathouse"));
    CHECK(offers({"list", "ex"}, "exercises"));
    CHECK_FALSE(offers({"solve", "--"}, "--skill"));
}

TEST_CASE("zsh and fish read their completions, where they are at hand") {
    for (const auto& [shell, check] :
         {std::pair{"zsh", "zsh -n "}, {"fish", "fish --no-execute "}}) {
        if (!has_program(shell)) {
            WARN("skipped: there is no " << shell << " here");
            continue;
        }
        const TempFile file("complete", reference(shell));
        const Ran ran = run_outside(check + file.path());
        INFO(ran.out);
        CHECK(ran.status == 0);
    }
}

TEST_CASE("every exit status is explained by help and by the manual page") {
    for (const char* status : {"0", "1", "2"}) {
        CHECK_THAT(run_here({"--help"}).out,
                   ContainsSubstring("\n  " + std::string(status) + "  "));
        CHECK_THAT(reference("man"), ContainsSubstring("\n" + std::string(status) + "\n"));
    }
}
