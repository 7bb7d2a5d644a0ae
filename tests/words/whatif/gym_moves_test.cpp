#include "catch.h"
#include "setup/files/data_folder.h"
#include "setup/setup.h"
#include "words/whatif/gym_moves.h"

#include <algorithm>
#include <cmath>
#include <filesystem>

using namespace steelyard;
using namespace steelyard::setup;
using namespace steelyard::words;
using mechanics::Hinge;
using mechanics::JointAngle;

namespace {

std::vector<BodySetup> all_shipped() {
    std::vector<BodySetup> all;
    for (const auto& entry :
         std::filesystem::directory_iterator(data_folder() / "assets/setups/body"))
        if (auto read = read_setup(entry.path()))
            all.push_back(std::get<BodySetup>(std::move(*read)));
    REQUIRE(all.size() > 40);
    return all;
}

BodySetup shipped(const std::string& name) {
    auto read = read_setup(data_folder() / "assets/setups/body" / (name + ".setup.toml"));
    REQUIRE(read);
    return std::get<BodySetup>(std::move(*read));
}

bool has_angle_of(const std::vector<mechanics::Change>& changes, Hinge hinge) {
    return std::any_of(changes.begin(), changes.end(), [&](const mechanics::Change& change) {
        const auto* angle = std::get_if<JointAngle>(&change);
        return angle != nullptr && angle->hinge == hinge;
    });
}

} // namespace

TEST_CASE("no exercise is offered a change that nobody says in a gym") {
    for (const BodySetup& setup : all_shipped())
        for (const Hinge asked : setup.axes)
            for (const mechanics::Change& change : gym_changes(setup.exercise, asked)) {
                const std::string name = gym_name(change, setup.exercise);
                INFO(setup.head.name << ": " << name);
                for (const char* strange :
                     {"flexion", "abduction", "inversion", "deviation", "forearm rotation", "toe"})
                    CHECK(name.find(strange) == std::string::npos);
            }
}

TEST_CASE("who stands on both feet moves both legs; who asks of the hip is offered the stance") {
    const BodySetup squat = shipped("squat-bar-back");
    const auto about_hip = gym_changes(squat.exercise, Hinge::right_hip_flexion);
    CHECK(has_angle_of(about_hip, Hinge::right_knee_flexion));
    CHECK(has_angle_of(about_hip, Hinge::right_hip_abduction));
    for (const mechanics::Change& change : about_hip)
        if (const auto* angle = std::get_if<JointAngle>(&change))
            CHECK((angle->both_sides || angle->hinge == Hinge::lumbar_flexion));
    CHECK_FALSE(has_angle_of(gym_changes(squat.exercise, Hinge::lumbar_flexion),
                             Hinge::right_hip_abduction));
}

TEST_CASE("a change is said with its step, its way and, where they mean something, its values") {
    const BodySetup curl = shipped("curl-dumbbell");
    const mechanics::Change load = mechanics::LoadSize{{0}};
    const auto range = range_of(load, curl.exercise);
    REQUIRE(range);
    CHECK(gym_text(load, *range, range->present - 2.0, curl.exercise, UnitSystem::si) ==
          "Dumbbell 2.00\u00A0kg lighter: 6.00\u00A0kg instead of 8.00\u00A0kg");
    const mechanics::Change elbow = JointAngle{Hinge::right_elbow_flexion, false};
    const auto angle = range_of(elbow, curl.exercise);
    REQUIRE(angle);
    const double step = 10.0 * std::acos(-1.0) / 180.0;
    CHECK(gym_text(elbow, *angle, angle->present + step, curl.exercise, UnitSystem::si) ==
          "Elbow 10.0° more bent through the whole range");
}

TEST_CASE("what comes first is the load, and no step is too small to be held") {
    const BodySetup squat = shipped("squat-bar-back");
    mechanics::Goal goal;
    goal.wanted.hinge = Hinge::right_knee_flexion;
    goal.wanted.torque_Nm = *peak_less(squat.exercise, goal.wanted.hinge, 0.2);
    auto ways = ranked_ways(squat.exercise, goal, gym_changes(squat.exercise, goal.wanted.hinge));
    REQUIRE(ways);
    order_for_the_gym(*ways, squat.exercise);
    REQUIRE(ways->ways.size() >= 2);
    CHECK(std::holds_alternative<mechanics::LoadSize>(ways->ways.front().change));
    for (const mechanics::Way& way : ways->ways)
        if (way.range.unit == mechanics::ChangeUnit::radian)
            CHECK(std::abs(way.reached.value - way.range.present) > 0.05);
}
