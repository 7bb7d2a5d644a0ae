// What is asked for as JSON is JSON and nothing else, whatever has to be said beside it.

#include "cli/reports/json_text.h"
#include "cli/run_here.h"
#include "cli/verbs/verb.h"
#include "temp_folder.h"

#include <nlohmann/json.hpp>

#include <set>
#include <sstream>

using namespace steelyard::cli;

namespace {

bool has_json(const Verb& verb) {
    return run_here({std::string(verb.name), "--help"}).out.find("--json") != std::string::npos;
}

std::string some_code() {
    return run_here({"generate", "--count", "1"}).out.substr(0, 11);
}

} // namespace

TEST_CASE("every verb that has --json writes JSON alone") {
    const TempFolder folder;
    const std::string data = folder / "record";
    const std::vector<std::vector<std::string>> commands{
        {"solve", "launch-trolley"},
        {"solve", "curl-dumbbell"},
        {"solve", "curl-dumbbell", "--sweep"},
        {"whatif", "curl-dumbbell", "--joint", "elbow_flexion", "--torque", "20Nm", "--change",
         "load"},
        {"whatif", "crate-far", "--joint", "lumbar", "--less", "20 %"},
        {"whatif", "curl-dumbbell", "--joint", "elbow", "--feasible", "--change", "load", "--cap",
         "elbow_flexion=30 Nm"},
        {"progress", "--data", data, "--learner", "Ada", "--new"},
        {"progress", "--data", data},
        {"--data", data, "progress"},
        {"progress", "--data", data, "--learner", "Zo\xC3\xAB", "--new"},
        {"generate", "--count", "3"},
        {"generate", "--count", "0"},
        {"generate", "--count", "40", "--seed", "3"},
        {"list", "units"},
        {"bank", "list"},
        {"bank", "check", "--instances", "1"},
        {"mark", some_code(), "B"},
        {"mark", some_code(), "no \xFF number"},
    };
    std::set<std::string> tried;
    for (std::vector<std::string> command : commands) {
        tried.insert(command[command.front() == "--data" ? 2 : 0]);
        command.emplace_back("--json");
        const Run run = run_here(command);
        std::string said;
        for (const std::string& word : command)
            said += word + " ";
        INFO(said);
        INFO(run.err);
        CHECK(run.status == 0);
        const auto json = nlohmann::json::parse(run.out, nullptr, false);
        REQUIRE_FALSE(json.is_discarded());
        CHECK_THAT(json["format"].get<std::string>(), ContainsSubstring("steelyard."));
    }
    for (const Verb& verb : all_verbs()) {
        INFO(verb.name);
        CHECK(has_json(verb) == (tried.count(std::string(verb.name)) == 1));
    }
}

TEST_CASE("JSON Lines are a document's rows, each with its format") {
    const Run document = run_here({"list", "units", "--json"});
    const Run lines = run_here({"list", "units", "--jsonl"});
    CHECK(lines.status == 0);
    std::istringstream in(lines.out);
    std::string line;
    auto json = nlohmann::json::parse(document.out);
    for (auto& row : json["units"]) {
        REQUIRE(std::getline(in, line));
        row["format"] = "steelyard.list.row/1";
        CHECK(nlohmann::json::parse(line) == row);
    }
    CHECK_FALSE(std::getline(in, line));
    CHECK(run_here({"list", "units", "--json", "--jsonl"}).status == 2);
}

TEST_CASE("numbers are written in the fewest digits that are exact, and none is -0") {
    CHECK(json_line({0.1 + 0.2, 40.0, -0.0, 1e22, 5, 0.1}) ==
          "[0.30000000000000004,40,0,1e+22,5,0.1]");
    CHECK(json_text({{"a", {1.5, 2.0}}, {"b", Json::array()}}) ==
          "{\n  \"a\": [1.5, 2],\n  \"b\": []\n}\n");
}

TEST_CASE("questions that cannot be made are no JSON at all") {
    const Run run = run_here({"generate", "--skill", "juggling", "--json"});
    CHECK(run.status == 2);
    CHECK(run.out.empty());
}

TEST_CASE("progress as JSON asks for a name beside its output, where nobody was named") {
    const TempFolder folder;
    const auto progress = [&](std::vector<std::string> options, const std::string& typed) {
        options.insert(options.begin(), {"progress", "--data", folder / "record", "--json"});
        const Run run = run_here(options, typed);
        CHECK(run.status == 0);
        return std::pair{nlohmann::json::parse(run.out)["learner"], run.err};
    };
    const auto [first, asked_first] = progress({}, "Ada\n");
    CHECK(first == "Ada");
    CHECK_THAT(asked_first, ContainsSubstring("A record for Ada begins"));
    const auto [named, said] = progress({"--learner", "Bo", "--new"}, "");
    CHECK(named == "Bo");
    CHECK_THAT(said, ContainsSubstring("A record for Bo begins"));
    const auto [chosen, asked] = progress({}, "Bo\n");
    CHECK(chosen == "Bo");
    CHECK_THAT(asked, ContainsSubstring("Known here: Ada, Bo."));
}
