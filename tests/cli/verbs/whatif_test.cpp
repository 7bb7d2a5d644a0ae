#include "catch.h"
#include "cli/run_here.h"
#include "mechanics/whatif/whatif.h"
#include "setup/files/data_folder.h"
#include "setup/setup.h"

#include <nlohmann/json.hpp>

#include <cmath>

using namespace steelyard;

namespace {

nlohmann::json json_of(std::vector<std::string> arguments) {
    arguments.insert(arguments.begin(), "whatif");
    arguments.push_back("--json");
    const Run run = run_here(arguments);
    INFO(run.err);
    REQUIRE(run.status == 0);
    return nlohmann::json::parse(run.out); // throws on NaN and inf, which JSON does not have
}

mechanics::Exercise shipped_exercise(const std::string& name) {
    const auto setup = setup::read_setup(setup::data_folder() / "assets" / "setups" / "body" /
                                         (name + ".setup.toml"));
    REQUIRE(setup);
    return std::get<setup::BodySetup>(*setup).exercise;
}

} // namespace

// Common practice, no source: the nearer the load, the less the low back has to hold.
TEST_CASE("whatif answers how much nearer the crate must come to take 20 % off the low back") {
    const auto json = json_of(
        {"crate-far", "--joint", "lumbar_flexion", "--less", "20 %", "--change", "distance"});
    CHECK(json["outcome"] == "reached");
    CHECK(json["unit"] == "m");
    const double nearer_m =
        json["present_value"].get<double>() - json["solutions"][0]["value"].get<double>();
    CHECK(nearer_m > 0.05);
    CHECK(nearer_m < 0.30);
    const double present_Nm = std::abs(json["present_torque_Nm"].get<double>());
    CHECK_THAT(std::abs(json["solutions"][0]["torque_Nm"].get<double>()),
               WithinRel(0.8 * present_Nm, 1e-9));

    const Run words = run_here({"whatif", "crate-far", "--joint", "lumbar_flexion", "--less", "20%",
                                "--change", "distance"});
    CHECK(words.status == 0);
    CHECK(words.out.find("nearer") != std::string::npos);
    CHECK(words.out.find("not medical advice") != std::string::npos);
}

TEST_CASE("whatif --json gives settings that do what they say when put into the exercise") {
    const auto json =
        json_of({"crate-far", "--joint", "lumbar", "--torque", "60 Nm", "--change", "load"});
    CHECK(json["joint"] == "lumbar_flexion");
    const auto changed = with_change(shipped_exercise("crate-far"), mechanics::LoadSize{{0}},
                                     json["solutions"][0]["value"].get<double>());
    REQUIRE(changed);
    CHECK_THAT(*peak_less(*changed, mechanics::Hinge::lumbar_flexion, 0.0), WithinRel(60.0, 1e-9));
}

TEST_CASE("whatif makes one exercise as hard as another at a joint") {
    const auto json = json_of(
        {"crate-far", "--joint", "lumbar_flexion", "--equal", "crate-near", "--change", "load"});
    CHECK_THAT(
        json["wanted_torque_Nm"].get<double>(),
        WithinRel(*peak_less(shipped_exercise("crate-near"), mechanics::Hinge::lumbar_flexion, 0.0),
                  1e-12));
    CHECK(json["outcome"] == "reached");
}

TEST_CASE("whatif without a change ranks those of the gym, and keeps another joint") {
    const auto json = json_of({"crate-far", "--joint", "lumbar", "--less", "10 %", "--keep",
                               "elbow_flexion", "--within", "20 %"});
    REQUIRE(json["ways"].size() > 2);
    CHECK(json["ways"][0]["change"] == "load");
    for (std::size_t i = 0; i < json["ways"].size(); ++i) {
        const auto& way = json["ways"][i];
        const double before_Nm = way["keep_before_Nm"].get<double>();
        CHECK(std::abs(way["keep_after_Nm"].get<double>() - before_Nm) <= 0.2 * before_Nm + 1e-9);
        CHECK_FALSE(way["says"].get<std::string>().empty());
    }
}

TEST_CASE("whatif says what cannot be reached and why") {
    const auto json =
        json_of({"crate-far", "--joint", "lumbar", "--torque", "500 Nm", "--change", "distance"});
    CHECK(json["outcome"] == "nearest_only");
    CHECK(json["solutions"].empty());
    CHECK(json["limit"]["kind"] == "range_end");
    CHECK(json["nearest"]["torque_Nm"].is_number());
}

TEST_CASE("where no single change does it, whatif tells what comes nearest and what stops it") {
    const Run run = run_here({"whatif", "split-squat", "--joint", "knee", "--less", "10 %"});
    CHECK(run.status == 0);
    CHECK(run.out.find("No single change gives it.") != std::string::npos);
    CHECK(run.out.find("What comes nearest:") != std::string::npos);
    CHECK(run.out.find("It ends there: the body would topple.") != std::string::npos);
}

TEST_CASE("whatif --feasible gives the loads that keep a cap") {
    const auto json = json_of({"crate-far", "--joint", "lumbar", "--feasible", "--change", "load",
                               "--cap", "lumbar_flexion=60 Nm"});
    REQUIRE(json["feasible"].size() == 1);
    CHECK(json["feasible"][0]["from"] == 0.0);
    CHECK(json["feasible"][0]["above"]["kind"] == "cap");
    CHECK(json["feasible"][0]["above"]["joint"] == "lumbar_flexion");
}

TEST_CASE("whatif takes a plain number in the unit of the exercise's readings") {
    const auto said =
        json_of({"crate-far", "--joint", "lumbar", "--torque", "60 Nm", "--change", "load"});
    CHECK(json_of({"crate-far", "--joint", "lumbar", "--torque", "60", "--change", "load"}) ==
          said);
    // An exercise in US customary units reads in ft·lbf.
    const auto pounds = json_of(
        {"side-bend", "--joint", "lumbar_side_bend", "--torque", "20 ft·lbf", "--change", "load"});
    CHECK(json_of({"side-bend", "--joint", "lumbar_side_bend", "--torque", "20", "--change",
                   "load"}) == pounds);
}

TEST_CASE("whatif refuses what it does not understand, and says what to do") {
    struct Case {
        std::vector<std::string> arguments;
        const char* says;
    };
    const std::vector<Case> cases{
        {{"crate-far", "--joint", "lumbarr", "--less", "20 %"}, "Did you mean \"lumbar\"?"},
        {{"crate-far", "--joint", "lumbar", "--torque", "5 kg"}, "is a unit of mass"},
        {{"crate-far", "--joint", "lumbar", "--torque", "-5 Nm"}, "0 N·m or more"},
        {{"crate-far", "--joint", "lumbar"}, "one of --torque, --less, --equal"},
        {{"crate-far", "--joint", "lumbar", "--torque", "5 Nm", "--less", "5 %"}, "one of"},
        {{"crate-far", "--joint", "lumbar", "--less", "150 %"}, "at most 1"},
        // Lying on the side, the trunk is held: nothing turns the low back.
        {{"outward-rotation-lying", "--joint", "lumbar_flexion", "--less", "20 %"},
         "this one has none"},
        {{"crate-far", "--joint", "lumbar", "--less", "5 %", "--change", "lod"}, "\"load\""},
        {{"crate-far", "--joint", "lumbar", "--less", "5 %", "--change", "pulley"}, "It has load"},
        {{"crate-far", "--joint", "lumbar", "--less", "5 %", "--cap", "hip"},
         "a joint and a torque"},
        {{"crate-far", "--joint", "lumbar", "--feasible"}, "needs --change"},
        {{"launch-trolley", "--joint", "lumbar", "--less", "5 %"}, "found a lever"},
        {{"no-such-file", "--joint", "lumbar", "--less", "5 %"}, "no-such-file"},
    };
    for (const Case& one : cases) {
        std::vector<std::string> arguments = one.arguments;
        arguments.insert(arguments.begin(), "whatif");
        const Run run = run_here(arguments);
        INFO(one.says << " / " << run.err);
        CHECK(run.status == 2);
        CHECK(run.out.empty());
        CHECK(run.err.find(one.says) != std::string::npos);
    }
}
