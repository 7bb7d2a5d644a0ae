// One seed, one paper, on every platform: a paper of a small bank, word for word.

#include "catch.h"
#include "problems/question/generator.h"
#include "problems/small_bank.h"

#include <string>

using namespace steelyard::problems;

namespace {

const char* const kLeverFamily = R"toml(id = "plank"
title = "Effort on a plank"
skill = "arms"
strategy = "balance"
kind = "numeric"
prompt = "{thing} of {load_mass} hangs {load_arm} from the pin. You push down {effort_arm} from it. How hard?"
scene = [ { thing = "A sack" }, { thing = "A keg" } ]

[draw]
load_mass = "10..60 kg step 2.5"
load_arm = "20, 25, 40 cm"
effort_arm = "0.6..1.2 m step 0.1"

[setup]
length = "load_arm + effort_arm"
axis = "load_arm"
axis_name = "the pin"
effort = { name = "your push", at = "load_arm + effort_arm", direction = "down" }

[[setup.load]]
name = "{thing}"
at = 0
mass = "load_mass"

[ask]
find = "effort_force"

[[step]]
find = "effort_force"
by = "load_mass * g * load_arm / effort_arm"
says = "Balance the torques."
)toml";

/// A straight arm level in front of the shoulder, held against a cable.
const char* const kCableFamily = R"toml(id = "cable"
title = "A cable at the shoulder"
skill = "arms"
strategy = "line"
kind = "numeric"
prompt = "{who} holds a handle {load_distance} from the shoulder, straight forward; the pulley is {pulley_below} straight below the shoulder and pulls with {load_force}. What torque?"
scene = [ { who = "Ines" }, { who = "Otto" } ]

[draw]
load_distance = "56..68 cm step 1"
pulley_below = "60..120 cm step 5"
load_force = "30..120 N step 5"

[setup]
axes = { shoulder = "right_shoulder_flexion" }
pose = { right_shoulder_flexion = "90 deg" }

[[setup.part]]
is = "upper_arm"
length = "30 cm"

[[setup.part]]
is = "forearm"
length = "load_distance - 37 cm"

[[setup.part]]
is = "hand"
grip = "7 cm"

[[setup.resistance]]
kind = "cable"
name = "cable"
force = "load_force"
at = { segment = "right_hand", spot = "grip" }
pulley = { from = "right_shoulder", forward = 0, up = "-pulley_below" }

[ask]
find = "load_torque"
unit = "N·m"

[[step]]
find = "load_torque"
by = "load_force * load_distance * pulley_below / sqrt(load_distance^2 + pulley_below^2)"
says = "Pull times arm."
)toml";

/// A body that stands on both feet and leans, about two joints at once.
const char* const kHingeFamily = R"toml(id = "hinge"
title = "A hinge"
skill = "arms"
strategy = "sum"
kind = "numeric"
prompt = "{own_mass} of trunk lean {trunk_angle} above the horizontal, centre {own_distance} from the hips; a bar of {load_mass} hangs at the shoulders, 50 cm from the hips. What torque about the hips?"

[draw]
trunk_angle = "25..60 ° step 1"
own_mass = "30..44 kg step 1"
own_distance = "28..34 cm step 1"
load_mass = "20..60 kg step 2.5"

[setup]
axes = { hip = "hip_flexion", low_back = "lumbar_flexion" }
stands = "feet"
pose = { hip_flexion = "114 deg - trunk_angle", knee_flexion = "20 deg", ankle_flexion = "-4 deg", shoulder_flexion = "90 deg - trunk_angle" }
person = { sex = "male", height = "1.78 m", mass = "own_mass / 0.6" }
part = [
  { is = "pelvis", length = "10 cm", mass = 0 },
  { is = "trunk", shoulders = "40 cm", mass = "own_mass", centre = "own_distance - 10 cm" },
  { is = "head", mass = 0 },
  { is = "upper_arm", mass = 0 },
  { is = "forearm", mass = 0 },
  { is = "hand", mass = 0 },
]
resistance = [ { kind = "barbell", name = "barbell", mass = "load_mass" } ]

[ask]
find = "hip_torque"
unit = "N·m"

[[step]]
find = "hip_torque"
by = "g * (load_mass * 50 cm + own_mass * own_distance) * cos(trunk_angle)"
says = "Both turn the trunk forward: add them."

[wrong]
distance-for-arm = "low_back_torque"
)toml";

std::string sheet(const std::vector<Question>& questions) {
    std::string text;
    for (const Question& question : questions)
        text += question.code + " " + question.prompt + " " + question.answer_text + "\n";
    return text;
}

} // namespace

TEST_CASE("a seed gives the paper that it always gave") {
    const SmallBank files;
    std::string rope = replaced(kRopeFamily, "\"1 m\"", "\"0.4..2 m step 0.05\"");
    rope = replaced(rope, "\"30 °\"", "\"20, 25, 30, 35 °\"");
    files.write("families/rope.toml", rope);
    files.write("families/plank.toml", kLeverFamily);
    const Bank bank = files.load();
    REQUIRE(bank.faults.empty());
    PaperPlan plan;
    plan.count = 6;
    plan.seed = 2026;
    const auto paper = make_paper(bank, plan);
    REQUIRE(paper.has_value());
    const std::string golden = "CA7J8-WG9JW A keg of 10.0\u00a0kg hangs 25\u00a0cm from the pin. "
                               "You push down 0.9\u00a0m from it. "
                               "How hard? Take g\u00a0=\u00a09.81\u00a0m/s². 27.3\u00a0N\n"
                               "DNXG0-C1QYT A rope pulls 1.10\u00a0m from the pin at 25° to the "
                               "bar. How long is its moment "
                               "arm? 46.5\u00a0cm\n"
                               "CA7J9-VVWJ8 A sack of 17.5\u00a0kg hangs 25\u00a0cm from the pin. "
                               "You push down 1.1\u00a0m from it. "
                               "How hard? Take g\u00a0=\u00a09.81\u00a0m/s². 39.0\u00a0N\n"
                               "DNXG4-80T50 A rope pulls 1.95\u00a0m from the pin at 30° to the "
                               "bar. How long is its moment "
                               "arm? 97.5\u00a0cm\n"
                               "CA7J9-JBXW2 A keg of 15.0\u00a0kg hangs 25\u00a0cm from the pin. "
                               "You push down 0.9\u00a0m from it. "
                               "How hard? Take g\u00a0=\u00a09.81\u00a0m/s². 40.9\u00a0N\n"
                               "DNXG1-4APNK A rope pulls 1.95\u00a0m from the pin at 35° to the "
                               "bar. How long is its moment "
                               "arm? 112\u00a0cm\n";
    CHECK(sheet(*paper) == golden);
}

TEST_CASE("a seed gives the paper about bodies that it always gave") {
    const SmallBank files;
    files.write("families/cable.toml", kCableFamily);
    files.write("families/hinge.toml", kHingeFamily);
    const Bank bank = files.load();
    REQUIRE(bank.faults.empty());
    PaperPlan plan;
    plan.count = 6;
    plan.seed = 2026;
    const auto paper = make_paper(bank, plan);
    REQUIRE(paper.has_value());
    const std::string golden =
        "DRZPR-WG9J8 Otto holds a handle 60\u00a0cm from the shoulder, "
        "straight forward; the pulley is 105\u00a0cm straight below the shoulder "
        "and pulls with 55\u00a0N. What torque? 28.7\u00a0N·m\n"
        "CS5T0-C1QY1 44\u00a0kg of trunk lean 52° above the horizontal, "
        "centre 33\u00a0cm from the hips; a bar of 20.0\u00a0kg hangs at the "
        "shoulders, 50 cm from the hips. What torque about the hips? "
        "Take g\u00a0=\u00a09.81\u00a0m/s². 148\u00a0N·m\n"
        "DRZPS-VVWJK Otto holds a handle 60\u00a0cm from the shoulder, "
        "straight forward; the pulley is 95\u00a0cm straight below the shoulder "
        "and pulls with 105\u00a0N. What torque? 53.3\u00a0N·m\n"
        "CS5T4-80T56 43\u00a0kg of trunk lean 48° above the horizontal, "
        "centre 29\u00a0cm from the hips; a bar of 42.5\u00a0kg hangs at the "
        "shoulders, 50 cm from the hips. What torque about the hips? "
        "Take g\u00a0=\u00a09.81\u00a0m/s². 221\u00a0N·m\n"
        "DRZPS-JBXWD Ines holds a handle 68\u00a0cm from the shoulder, "
        "straight forward; the pulley is 70\u00a0cm straight below the shoulder "
        "and pulls with 65\u00a0N. What torque? 31.7\u00a0N·m\n"
        "CS5T1-4APNS 35\u00a0kg of trunk lean 34° above the horizontal, "
        "centre 31\u00a0cm from the hips; a bar of 45.0\u00a0kg hangs at the "
        "shoulders, 50 cm from the hips. What torque about the hips? "
        "Take g\u00a0=\u00a09.81\u00a0m/s². 271\u00a0N·m\n";
    CHECK(sheet(*paper) == golden);
}
