// What is asked for as JSON is JSON and nothing else, whatever has to be said beside it.

#include "cli/run_here.h"
#include "cli/verb.h"
#include "temp_folder.h"

#include <nlohmann/json.hpp>

#include <set>

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
        {"progress", "--data", data, "--learner", "Zo\xC3\xAB \xFF", "--new"},
        {"generate", "--count", "3"},
        {"generate", "--count", "0"},
        {"generate", "--count", "40", "--seed", "3"},
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
        CHECK_FALSE(nlohmann::json::parse(run.out, nullptr, false).is_discarded());
    }
    for (const Verb& verb : all_verbs()) {
        INFO(verb.name);
        CHECK(has_json(verb) == (tried.count(std::string(verb.name)) == 1));
    }
}

TEST_CASE("progress as JSON asks for a name beside its output, where nobody was named") {
    const TempFolder folder;
    const Run run = run_here({"progress", "--data", folder / "record", "--json"}, "Ada\n");
    const Run named =
        run_here({"progress", "--data", folder / "record", "--learner", "Ada", "--new", "--json"});
    CHECK(named.status == 0);
    CHECK_THAT(named.err, ContainsSubstring("A record for Ada begins"));
    const Run both =
        run_here({"progress", "--data", folder / "record", "--learner", "Bo", "--new", "--json"});
    CHECK(both.status == 0);
    const Run asked = run_here({"progress", "--data", folder / "record", "--json"}, "Bo\n");
    CHECK(asked.status == 0);
    CHECK(nlohmann::json::parse(asked.out)["learner"] == "Bo");
    CHECK_THAT(asked.err, ContainsSubstring("Known here: Ada, Bo."));
    CHECK(run.out.empty());
}
