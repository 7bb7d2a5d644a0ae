#include "catch.h"
#include "cli/run_here.h"

#include <nlohmann/json.hpp>

using namespace steelyard;

TEST_CASE("everything that is listed can be called by the name it is listed with") {
    const auto names_of = [](const std::string& what) {
        const Run run = run_here({"list", what, "--json"});
        REQUIRE(run.status == 0);
        const auto json = nlohmann::json::parse(run.out);
        CHECK(json["format"] == "steelyard.list/1");
        std::vector<std::string> names;
        for (const auto& one : json[what]) {
            CHECK_FALSE(one["title"].get<std::string>().empty());
            names.push_back(one["name"].get<std::string>());
        }
        REQUIRE_FALSE(names.empty());
        return names;
    };
    for (const char* kind : {"setups", "exercises"})
        for (const std::string& name : names_of(kind))
            CHECK(run_here({"solve", name}).status == 0);
    // Each run reads the whole bank, in which every name is found alike: some stand for all.
    const std::vector<std::string> families = names_of("families");
    for (std::size_t i = 0; i < families.size(); i += 16)
        CHECK(
            run_here({"generate", "--family", families[i], "--count", "1", "--seed", "3"}).status ==
            0);
    for (const std::string& name : names_of("skills"))
        CHECK_FALSE(name.empty());
    CHECK(names_of("blueprints").front() == "boathouse");
    CHECK(names_of("lessons").size() > 4);
    CHECK(names_of("units").size() > 20);
}

TEST_CASE("a list is a name and a title on each line, and an unknown list is refused") {
    const Run run = run_here({"list", "exercises"});
    CHECK(run.out.find("curl-dumbbell") != std::string::npos);
    CHECK(run.out.find("Dumbbell curl") != std::string::npos);
    CHECK(run_here({"list", "poems"}).status == 2);
}
