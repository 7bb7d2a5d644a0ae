#include "catch.h"
#include "cli/run_here.h"
#include "mechanics/lever/lever_solve.h"
#include "setup/setup.h"

#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>

using namespace steelyard;
namespace fs = std::filesystem;

namespace {

/// A setup file with a text in it that is gone when the test ends.
class TempSetup {
public:
    explicit TempSetup(const std::string& text)
        : path_(fs::temp_directory_path() / "steelyard_solve_test.setup.toml") {
        std::ofstream(path_, std::ios::binary) << text;
    }
    ~TempSetup() { fs::remove(path_); }
    TempSetup(const TempSetup&) = delete;
    TempSetup& operator=(const TempSetup&) = delete;

    std::string path() const { return path_.string(); }

private:
    fs::path path_;
};

nlohmann::json solve_json(const std::string& file) {
    const Run run = run_here({"solve", file, "--json"});
    INFO(run.err);
    REQUIRE(run.status == 0);
    return nlohmann::json::parse(run.out); // throws on NaN and inf, which JSON does not have
}

/// Uniform plank, 100 N at its end, 0.8 m from the axis; effort at 2 m from it, straight down.
const char* const kPlank = R"(
kind = "lever"
name = "Plank"
description = "A plank on a block."
length = "2.8 m"
axis = "0.8 m"
[effort]
at = "2.8 m"
direction = "down"
[[load]]
at = "0 m"
force = "100 N"
)";

} // namespace

TEST_CASE("solve --json has the promised keys with the solver's numbers") {
    const TempSetup file(kPlank);
    const auto json = solve_json(file.path());
    // By hand: 100 N × 0.8 m = 80 N·m; 80 N·m ÷ 2 m = 40 N; the support carries both.
    CHECK(json["lever_class"] == 1);
    CHECK(json["outcome"] == "ok");
    CHECK(json["effort_N"].get<double>() == Approx(40.0).epsilon(1e-12));
    CHECK(json["effort_arm_m"].get<double>() == Approx(2.0).epsilon(1e-12));
    CHECK(json["load_arm_m"].get<double>() == Approx(0.8).epsilon(1e-12));
    CHECK(json["ideal_advantage"].get<double>() == Approx(2.5).epsilon(1e-12));
    CHECK(json["actual_advantage"].get<double>() == Approx(2.5).epsilon(1e-12));
    CHECK(json["reaction_vector_N"].size() == 2);
    CHECK(json["reaction_vector_N"][1].get<double>() == Approx(140.0).epsilon(1e-12));
    CHECK(json["reaction_N"].get<double>() == Approx(140.0).epsilon(1e-12));
    REQUIRE(json["forces"].size() == 1);
    CHECK(json["forces"][0]["name"] == "load");
    CHECK(json["forces"][0]["torque_Nm"].get<double>() == Approx(80.0).epsilon(1e-12));
    CHECK(json["forces"][0]["moment_arm_m"].get<double>() == Approx(0.8).epsilon(1e-12));
    CHECK(json["forces"][0]["force_N"][1].get<double>() == Approx(-100.0).epsilon(1e-12));
    CHECK(json["load_torque_Nm"].get<double>() == Approx(80.0).epsilon(1e-12));
    CHECK(json["effort_torque_Nm"].get<double>() == Approx(-80.0).epsilon(1e-12));
    CHECK(json["messages"].is_array());
}

TEST_CASE("every setup that comes with the program is solved, in words and in JSON") {
    const auto setups = setup::list_setups(fs::path(STEELYARD_SOURCE_DIR) / "assets" / "setups");
    REQUIRE(setups);
    REQUIRE(setups->size() >= 12);
    for (const auto& listing : *setups) {
        INFO(listing.path);
        REQUIRE(listing.setup);
        const auto& lever = std::get<setup::LeverSetup>(*listing.setup);
        const auto result = mechanics::solve_lever(lever.lever);
        REQUIRE(result);
        const auto json = solve_json(listing.path.string());
        CHECK(json["effort_N"].is_null() == !result->effort_N);
        if (result->effort_N)
            CHECK(json["effort_N"].get<double>() == *result->effort_N);
        CHECK(json["lever_class"].is_null() == !result->lever_class);
        CHECK(json.contains("lever_class_reason"));
        const Run words = run_here({"solve", listing.path.string()});
        CHECK(words.status == 0);
        CHECK_THAT(words.out, ContainsSubstring(lever.head.name));
        CHECK_THAT(words.out, ContainsSubstring("How it was computed"));
    }
}

TEST_CASE("solve tells a load that is found, what two supports bear, and a stack from its rope") {
    const auto coil = solve_json("weigh-a-coil");
    CHECK(coil["sought_load"] == "coil of rope");
    // (1.5 kg × 44 cm + 1.1 kg × 16 cm) / 6 cm = 13.93 kg
    CHECK(coil["load_found_N"].get<double>() == Approx(13.93333 * 9.80665).epsilon(1e-5));
    CHECK(run_here({"solve", "weigh-a-coil"}).out.find("13.9\u00A0kg (137\u00A0N)") !=
          std::string::npos);

    const auto plank = solve_json("plank-on-trestles");
    CHECK(plank["lever_class_reason"] == "two_supports");
    // 68 + 6 + 18 kg together, of which the right one has 107 kg·m / 2.5 m.
    CHECK(plank["second_support_N"].get<double>() == Approx(42.8 * 9.80665).epsilon(1e-9));
    CHECK(plank["first_support_N"].get<double>() == Approx(49.2 * 9.80665).epsilon(1e-9));

    const auto column = solve_json("triceps-pushdown")["cable_columns"]["cable"];
    CHECK(column["rope_ratio"] == 2);
    CHECK(column["stack_kg"].get<double>() == 15.0);
    CHECK(column["tension_N"].get<double>() == Approx(7.5 * 9.80665).epsilon(1e-12));
    CHECK(run_here({"solve", "triceps-pushdown"}).out.find("rope 2:1: tension 73.5\u00A0N") !=
          std::string::npos);
}

TEST_CASE("a setup that comes with the program can be called by its name") {
    const Run run = run_here({"solve", "wheelbarrow"});
    CHECK(run.status == 0);
    CHECK_THAT(run.out, ContainsSubstring("Second class"));
}

TEST_CASE("an effort through the axis is an outcome with a null effort, not an error") {
    std::string through = kPlank;
    through.replace(through.find("at = \"2.8 m\""), 12, "at = \"0.8 m\"");
    const TempSetup file(through);
    const auto json = solve_json(file.path());
    CHECK(json["outcome"] == "effort_through_axis");
    CHECK(json["effort_N"].is_null());
    CHECK(json["lever_class"].is_null());
    CHECK(json["lever_class_reason"] == "effort_at_axis");
    CHECK_FALSE(json["messages"].empty());
}

TEST_CASE("each kind of bad file is status 2 and one error that names it") {
    const std::vector<std::string> broken{
        "",
        "kind = \"lever\"",
        std::string("\x7F"
                    "ELF\x02\0\0\0",
                    8),
        std::string(kPlank) + "colour = \"red\"\n",
        "kind = \"lever\"\nname = 5\n",
        "[[[",
    };
    for (const std::string& text : broken) {
        const TempSetup file(text);
        const Run run = run_here({"solve", file.path()});
        INFO(run.err);
        CHECK(run.status == 2);
        CHECK(run.out.empty());
        CHECK_THAT(run.err, ContainsSubstring("steelyard_solve_test.setup.toml"));
    }
}

TEST_CASE("a file that is not there, a folder and no file at all are status 2") {
    CHECK(run_here({"solve", "no-such-file"}).status == 2);
    CHECK(run_here({"solve", fs::temp_directory_path().string()}).status == 2);
    CHECK(run_here({"solve"}).status == 2);
    CHECK(run_here({"solve", ""}).status == 2);
}

TEST_CASE("a mistyped exercise is answered with the nearest name") {
    const Run run = run_here({"solve", "squat-bar-bakc"});
    CHECK(run.status == 2);
    CHECK(run.err.find("Did you mean squat-bar-back?") != std::string::npos);
    CHECK(run_here({"solve", "/nowhere/at-all.setup.toml"}).err.find("Did you mean") ==
          std::string::npos);
}
