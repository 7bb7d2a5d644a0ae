// How a family's lever is laid out.

#include "catch.h"
#include "problems/question/generator.h"
#include "problems/small_bank.h"

using namespace steelyard::problems;
using steelyard::mechanics::Vec2;

namespace {

/// A handle, 3 m along and 1 m up at its end, turned by a quarter turn.
const char* const kBentHandle = R"toml(id = "handle"
title = "Rope on a bent handle"
skill = "arms"
strategy = "sine"
kind = "numeric"
prompt = "A rope pulls {effort_distance} from the pin at {effort_angle} to the bar. How long is its moment arm?"
labels = ["effort_distance"]
draw = { effort_distance = "1 m", effort_angle = "30 °" }
ask = { find = "effort_arm", unit = "cm" }

[setup]
axis = 0
axis_name = "the pin"
from_above = true
tilt = "pi / 2"
effort = { name = "the rope", at = "effort_distance", direction = "pi / 2 + pi - effort_angle" }

[[setup.corner]]
x = 0
y = 0
[[setup.corner]]
x = 3
y = 0
[[setup.corner]]
x = 3
y = 1

[[step]]
find = "effort_arm"
by = "effort_distance * sin(effort_angle)"
says = "Distance times sine."

[wrong]
distance-for-arm = "effort_distance"
sine-cosine-swapped = "effort_distance * cos(effort_angle)"
)toml";

} // namespace

TEST_CASE("a bent lever is turned counter-clockwise as a whole, its corners with it") {
    const SmallBank files;
    files.write("families/handle.toml", kBentHandle);
    const Bank bank = files.load();
    for (const auto& fault : bank.faults)
        FAIL_CHECK(to_text(fault));
    REQUIRE(bank.families.size() == 1);
    const auto question = question_of_family(bank, bank.families.front(), 1);
    REQUIRE(question);
    const auto& path_m = std::get<LeverPicture>(question->picture).lever.path_m;
    REQUIRE(path_m.size() == 3);
    // What lay to the right points up, what stood up points to the left; rounding of a sine.
    CHECK((path_m[1] - path_m[0] - Vec2(0.0, 3.0)).norm() < 1e-12);
    CHECK((path_m[2] - path_m[1] - Vec2(-1.0, 0.0)).norm() < 1e-12);
}

namespace {

/// A level forearm, an elbow's width of it behind the axis, which some scenes draw as a limb.
const char* const kForearm = R"toml(id = "forearm"
title = "Torque of a dumbbell"
skill = "arms"
strategy = "product"
kind = "numeric"
prompt = "{who} holds {load_force} at {load_arm}. How large is its torque?"
scene = [ { who = "Pia", shape = "forearm" }, { who = "A crane", shape = "none" } ]
draw = { load_force = "50 N", load_arm = "30 cm" }
ask = { find = "load_torque", unit = "N·m" }

[setup]
length = "load_arm + 10 cm"
axis = "10 cm"
axis_name = "the elbow"
limb = { is = "{shape}", from = "10 cm" }

[[setup.load]]
name = "the load"
at = "load_arm + 10 cm"
force = "load_force"

[[step]]
find = "load_torque"
by = "load_force * load_arm"
says = "Force times arm."

[wrong]
distance-for-arm = { gives = "load_force / load_arm", parts_at = "load_torque" }
)toml";

} // namespace

TEST_CASE("a lever is drawn as the limb that its scene says, from where the family says") {
    const SmallBank files;
    files.write("families/forearm.toml", kForearm);
    const Bank bank = files.load();
    for (const auto& fault : bank.faults)
        FAIL_CHECK(to_text(fault));
    REQUIRE(bank.families.size() == 1);
    int limbs = 0;
    int beams = 0;
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        const auto question = question_of_family(bank, bank.families.front(), seed);
        REQUIRE(question);
        const auto& picture = std::get<LeverPicture>(question->picture);
        const bool is_person = question->prompt.rfind("Pia", 0) == 0;
        CHECK(picture.limb.has_value() == is_person);
        CHECK_FALSE(picture.has_effort);
        limbs += picture.limb ? 1 : 0;
        beams += picture.limb ? 0 : 1;
        if (!picture.limb)
            continue;
        CHECK(picture.limb->shape == steelyard::setup::LimbShape::forearm);
        CHECK(picture.limb->from == Approx(0.25)); // 10 of 40 cm
        CHECK(picture.limb->to == Approx(1.0));
    }
    CHECK(limbs > 0);
    CHECK(beams > 0);
}

TEST_CASE("a limb that nobody has is refused by name") {
    std::string tentacle = kForearm;
    tentacle.replace(tentacle.find("\"forearm\" }"), 11, "\"tentacle\" }");
    const SmallBank files;
    files.write("families/forearm.toml", tentacle);
    const Bank bank = files.load();
    REQUIRE_FALSE(bank.faults.empty());
    CHECK_THAT(to_text(bank.faults.front()), ContainsSubstring("tentacle"));
    CHECK_THAT(to_text(bank.faults.front()), ContainsSubstring("lower_leg"));
}
