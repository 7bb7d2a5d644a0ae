#include "catch.h"
#include "setup/body/body_setup.h"
#include "setup/setup.h"
#include "words/body/axis_shares.h"

#include <cmath>

using namespace steelyard;
using namespace steelyard::setup;
using namespace steelyard::words;
using mechanics::Hinge;

namespace {

struct Solved {
    BodySetup setup;
    mechanics::BodyResult result;
};

Solved at_start(const std::string& name) {
    const auto read = read_setup(std::string(STEELYARD_SOURCE_DIR) + "/assets/setups/body/" + name +
                                 ".setup.toml");
    REQUIRE(read);
    const auto& body = std::get<BodySetup>(*read);
    return {body, mechanics::solve_body(body.exercise.body_case).value()};
}

} // namespace

TEST_CASE("both hips stand against the one low back", "[axis-shares]") {
    const Solved hinge = at_start("hinge-bar-near");
    const auto shares = axis_shares(hinge.setup.axes, hinge.result);
    REQUIRE(shares.size() == 4);
    CHECK(shares[0].name == "both hips");
    CHECK(shares[0].one == "each hip");
    CHECK(shares[0].torque_Nm ==
          Approx(2.0 * std::abs(hinge.result.muscle(Hinge::right_hip_flexion))));
    CHECK(shares[1].name == "low back");
    CHECK_FALSE(shares[1].both);
    CHECK(shares[1].torque_Nm == std::abs(hinge.result.muscle(Hinge::lumbar_flexion)));
    CHECK(shares[2].name == "both knees");
    CHECK(most_loaded(shares) == 0);
    // By one hip alone the low back would have seemed to carry more.
    CHECK(shares[1].torque_Nm > 0.5 * shares[0].torque_Nm);
    CHECK(one_side_word(hinge.setup.axes, Hinge::right_hip_flexion) == "one hip");
    CHECK(one_side_word(hinge.setup.axes, Hinge::lumbar_flexion) == "low back");
}

TEST_CASE("paired joints among themselves are compared side by side, each with its own torque",
          "[axis-shares]") {
    const Solved raise = at_start("leg-raise-straight");
    const auto shares = axis_shares(raise.setup.axes, raise.result);
    for (std::size_t i = 0; i < shares.size(); ++i) {
        CHECK_FALSE(shares[i].both);
        CHECK(shares[i].torque_Nm == std::abs(raise.result.muscle(raise.setup.axes[i])));
    }
    CHECK(one_side_word(raise.setup.axes, Hinge::right_hip_flexion) == "hip");
}

TEST_CASE("a joint of which only one side works is not counted twice", "[axis-shares]") {
    const Solved curl = at_start("curl-dumbbell"); // one hand, and the low back among the axes
    const auto shares = axis_shares(curl.setup.axes, curl.result);
    CHECK_FALSE(shares[0].both);
    CHECK(shares[0].name == "elbow");
}
