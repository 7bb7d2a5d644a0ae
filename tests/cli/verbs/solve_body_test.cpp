#include "catch.h"
#include "cli/run_here.h"

#include <nlohmann/json.hpp>

#include <cmath>

namespace {

nlohmann::json json_of(std::vector<std::string> arguments) {
    arguments.insert(arguments.begin(), "solve");
    arguments.push_back("--json");
    const Run run = run_here(arguments);
    INFO(run.err);
    REQUIRE(run.status == 0);
    return nlohmann::json::parse(run.out); // throws on NaN and inf, which JSON does not have
}

} // namespace

TEST_CASE("solve --json of an exercise has the promised keys for every joint") {
    const auto json = json_of({"crate-far"});
    CHECK(json["joints"].size() == 40);
    for (const auto& [name, joint] : json["joints"].items()) {
        INFO(name);
        CHECK(joint["effort_torque_Nm"].is_number());
        CHECK(joint["forces"].back()["name"] == "own weight");
        CHECK(joint.contains("muscle_force_N"));
        CHECK(joint.contains("reaction_N"));
        // At rest the muscles hold what the forces make.
        double sum_Nm = joint["effort_torque_Nm"].get<double>();
        for (const auto& force : joint["forces"])
            sum_Nm += force["torque_Nm"].get<double>();
        CHECK_THAT(sum_Nm, WithinAbs(0.0, 1e-9)); // no couples act in this exercise
    }
    const auto& back = json["joints"]["lumbar_flexion"];
    const double force_N = back["muscle_force_N"]["lumbar extensors"].get<double>();
    // Torque over the arm of 5 cm that the first source states.
    CHECK_THAT(force_N, WithinRel(std::abs(back["effort_torque_Nm"].get<double>()) / 0.05, 1e-12));
    CHECK(back["reaction_N"].get<double>() > force_N);
    CHECK(back["muscles"]["lumbar extensors"]["mark"] == "verified");
}

// Behnke, Kinetic Anatomy 3e, Fig. 1.22 (ball of the foot, second class); OpenStax College Physics
// 2e, problem 9.33 (ankle, a first-class layout).
TEST_CASE("solve shows both classes of the calf raise") {
    const auto json = json_of({"calf-raise"});
    const auto& calf = json["joints"]["right_ankle_flexion"]["muscles"]["calf"];
    CHECK(calf["lever_class"] == 1);
    CHECK(calf["lever_class_about_support"] == 2);
    const Run words = run_here({"solve", "calf-raise"});
    CHECK(words.out.find("first class about the right ankle, second") != std::string::npos);
}

TEST_CASE("solve --sweep gives the curves along the path") {
    const auto json = json_of({"curl-dumbbell", "--sweep"});
    const auto& elbow = json["sweep"]["right_elbow_flexion"];
    REQUIRE(elbow["progress"].size() == 101);
    CHECK(elbow["muscle_force_N"]["biceps"].size() == 101);
    CHECK(elbow["reaction_N"].size() == 101);
    for (std::size_t i = 1; i < 101; ++i)
        CHECK(elbow["time_s"][i].get<double>() > elbow["time_s"][i - 1].get<double>());
}

TEST_CASE("solve says that an exercise is an estimate and no medical advice") {
    const Run run = run_here({"solve", "crate-far"});
    CHECK(run.status == 0);
    CHECK(run.out.find("lumbar extensors") != std::string::npos);
    CHECK(run.out.find("over the sources") != std::string::npos);
    CHECK(run.out.find("not medical advice") != std::string::npos);
}
