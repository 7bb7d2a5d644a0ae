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
