// A lever drawn as a limb: its key in files, and whether a person has a joint at its axis.

#include "catch.h"
#include "setup/lever/lever_setup.h"

using namespace steelyard::setup;

namespace {

const std::string kForearm = R"(kind = "lever"
name = "Forearm"
description = "A forearm."
limb = "forearm"
length = "36 cm"
axis = "0 cm"

[effort]
at = "4 cm"
direction = "up"

[[load]]
at = "34 cm"
mass = "5 kg"
)";

} // namespace

TEST_CASE("what a lever is drawn as is read, written and refused by name", "[lever][limb]") {
    const auto setup = parse_lever_setup(kForearm, "forearm.setup.toml");
    REQUIRE(setup);
    CHECK(setup->limb == LimbShape::forearm);
    const auto again = parse_lever_setup(write_lever_setup(*setup), "again");
    REQUIRE(again);
    CHECK(again->limb == LimbShape::forearm);

    std::string tentacle = kForearm;
    tentacle.replace(tentacle.find("\"forearm\""), 9, "\"tentacle\"");
    const auto refused = parse_lever_setup(tentacle, "tentacle.setup.toml");
    REQUIRE_FALSE(refused);
    CHECK_THAT(to_text(refused.error()), ContainsSubstring("line 4, limb"));
}

TEST_CASE("every limb has its name and a joint to turn about", "[lever][limb]") {
    for (std::size_t i = 0; i < limb_shape_names().size(); ++i) {
        const auto limb = static_cast<LimbShape>(i);
        REQUIRE_FALSE(joints_of(limb).empty());
        steelyard::mechanics::Lever lever;
        lever.path_m = {{0.0, 0.0}, {0.3, 0.0}};
        lever.axis_at_m = 0.3 * joints_of(limb).back().along;
        CHECK(joint_at_axis(limb, lever) == joints_of(limb).back().name);
        CHECK(axis_off_joint(limb, lever).empty());
        lever.axis_at_m = 0.3 * 0.5; // no limb has one half-way
        CHECK_FALSE(joint_at_axis(limb, lever));
        CHECK_THAT(axis_off_joint(limb, lever),
                   ContainsSubstring(std::string(joints_of(limb)[0].name)));
    }
}
