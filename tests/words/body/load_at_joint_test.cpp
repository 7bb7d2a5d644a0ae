#include "catch.h"
#include "mechanics/constants.h"
#include "setup/body/body_setup.h"
#include "setup/setup.h"
#include "words/body/load_at_joint.h"

using namespace steelyard;
using namespace steelyard::setup;
using namespace steelyard::words;
using mechanics::Hinge;

namespace {

constexpr double kG = mechanics::kStandardGravity;

std::optional<LoadAtJoint> load_of(const std::string& name, Hinge hinge) {
    const auto read = read_setup(std::string(STEELYARD_SOURCE_DIR) + "/assets/setups/body/" + name +
                                 ".setup.toml");
    REQUIRE(read);
    const auto& body = std::get<BodySetup>(*read);
    return load_at_joint(mechanics::solve_body(body.exercise.body_case).value(), hinge);
}

} // namespace

TEST_CASE("a shoulder bears its own dumbbell, not the other hand's", "[load-at-joint]") {
    const auto load = load_of("lateral-raise-straight", Hinge::right_shoulder_abduction);
    REQUIRE(load);
    CHECK(load->size_N() == Approx(5.0 * kG));
}

TEST_CASE("the low back bears what both hands hold", "[load-at-joint]") {
    CHECK(load_of("hinge-bar-near", Hinge::lumbar_flexion)->size_N() == Approx(40.0 * kG));
}

TEST_CASE("each hip bears its half of a bar that comes down through both legs", "[load-at-joint]") {
    const auto load = load_of("hinge-bar-near", Hinge::right_hip_flexion);
    REQUIRE(load);
    CHECK(load->force_N.norm() == Approx(40.0 * kG));
    CHECK(load->size_N() == Approx(20.0 * kG));
}

TEST_CASE("without a resistance there is no load", "[load-at-joint]") {
    CHECK_FALSE(load_of("neck-forward", Hinge::neck_flexion));
}
