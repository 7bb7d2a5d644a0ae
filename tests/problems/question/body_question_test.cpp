// Questions drawn from the body solver.

#include "catch.h"
#include "problems/bank/bank.h"
#include "problems/question/generator.h"
#include "problems/small_bank.h"

#include <algorithm>
#include <cmath>

using namespace steelyard;
using namespace steelyard::problems;

namespace {

const Bank& our_bank() {
    static const Bank bank = load_bank(std::string(STEELYARD_SOURCE_DIR) + "/question_bank");
    return bank;
}

/// A forearm held level: a body of one joint, one part and one load.
const char* const kForearmFamily = R"toml(id = "forearm"
title = "Forearm"
skill = "arms"
strategy = "sum"
kind = "numeric"
gravity = "9.80 m/s²"
prompt = "A forearm of {forearm_mass}, centre {forearm_centre} from the elbow, lies level; {load_mass} is held {elbow_load_distance} from it. What torque?"
draw = { forearm_mass = "2.5 kg", forearm_centre = "16 cm", load_mass = "4 kg", elbow_load_distance = "38 cm" }
ask = { find = "elbow_torque", unit = "N·m" }

[setup]
axes = { elbow = "right_elbow_flexion" }
pose = { right_elbow_flexion = "90 deg" }

[[setup.part]]
is = "forearm"
mass = "forearm_mass"
centre = "forearm_centre"
length = "elbow_load_distance - 7 cm"

[[setup.part]]
is = "hand"
mass = 0
grip = "7 cm"

[[setup.resistance]]
kind = "dumbbell"
name = "book"
mass = "load_mass"

[[step]]
find = "elbow_torque"
by = "g * (load_mass * elbow_load_distance + forearm_mass * forearm_centre)"
says = "Add both."

[wrong]
distance-for-arm = "g * (load_mass + forearm_mass) * elbow_load_distance"
)toml";

tl::expected<Question, NoQuestion> forearm_question(const std::string& from = "id = \"forearm\"",
                                                    const std::string& to = "id = \"forearm\"") {
    const SmallBank files;
    files.write("families/forearm.toml", replaced(kForearmFamily, from, to));
    const Bank bank = files.load();
    if (!bank.faults.empty())
        return tl::unexpected(NoQuestion{setup::to_text(bank.faults.front())});
    return question_of_family(bank, bank.families.front(), 1);
}

} // namespace

TEST_CASE("a forearm with a book has the torque of the textbook") {
    // Source: OpenStax College Physics 2e, example 9.4: forearm 2.50 kg at 16.0 cm, book 4.00 kg at
    // 38.0 cm, g = 9.80 m/s²; the biceps at 4.00 cm pulls with 470 N, so the torque is 18.8 N·m.
    const auto question = forearm_question();
    REQUIRE(question.has_value());
    CHECK(wanted_number(*question)->value ==
          Approx(470.4 * 0.04).epsilon(1e-9)); // the example unrounded
    CHECK(question->answer_text == "18.8\u00a0N·m");
}

TEST_CASE("a body that does not have what its prompt states makes no question") {
    // Half the stated mass in the setup: every draw contradicts the prompt.
    const auto question =
        forearm_question("mass = \"forearm_mass\"", "mass = \"forearm_mass / 2\"");
    REQUIRE_FALSE(question.has_value());
    CHECK(question.error().message.find("solver's") != std::string::npos);
}

TEST_CASE("a fault in a body setup is told with its mend") {
    const auto joint = forearm_question("axes = { elbow", "axes = { elbw");
    REQUIRE_FALSE(joint.has_value());
    CHECK(joint.error().message.find("elbow") != std::string::npos);
    const auto hinge =
        forearm_question("pose = { right_elbow_flexion", "pose = { right_elbow_flex");
    REQUIRE_FALSE(hinge.has_value());
    CHECK(hinge.error().message.find("right_elbow_flexion") != std::string::npos);
    CHECK_FALSE(forearm_question("centre = \"forearm_centre\"", "centre = \"elbow_torque\""));
}

TEST_CASE("an impossible body is refused, not drawn") {
    CHECK_FALSE(forearm_question("\"elbow_load_distance - 7 cm\"", "\"0 - elbow_load_distance\""));
    CHECK_FALSE(forearm_question("\"90 deg\"", "\"400 deg\""));
    CHECK_FALSE(forearm_question("\"90 deg\"", "\"1 / (load_mass - 4)\""));
}

TEST_CASE("body families serve all three planes and many kinds") {
    std::size_t bodies = 0;
    for (const auto view :
         {setup::BodyView::side, setup::BodyView::front, setup::BodyView::above}) {
        std::size_t of_view = 0;
        for (const Family& family : our_bank().families)
            if (family.body && family.body->view == view)
                ++of_view;
        CHECK(of_view >= 2);
        bodies += of_view;
    }
    CHECK(bodies >= 12);
}

TEST_CASE("a weight has no torque about the upright axis of the trunk, a level cable has") {
    const Family* const family = our_bank().find_family("trunk-rotation-on-a-cable");
    REQUIRE(family);
    for (std::uint64_t seed = 0; seed < 10; ++seed) {
        const auto question = question_of_family(our_bank(), *family, seed);
        REQUIRE(question.has_value());
        const auto given = [&](const std::string& name) {
            const auto found = std::find_if(question->given.begin(), question->given.end(),
                                            [&](const Given& each) { return each.name == name; });
            REQUIRE(found != question->given.end());
            return found->value_si;
        };
        // By hand: force × distance × sine of the angle between them.
        CHECK(wanted_number(*question)->value_si ==
              Approx(given("load_force") * given("hand_distance") * std::sin(given("load_angle"))));
    }
}
