#include "catch.h"
#include "setup/body/body_setup.h"
#include "setup/setup.h"

#include <filesystem>

using namespace steelyard;
using namespace steelyard::setup;

namespace {

BodySetup shipped(const std::string& name) {
    const auto read = read_setup(std::string(STEELYARD_SOURCE_DIR) + "/assets/setups/body/" + name +
                                 ".setup.toml");
    REQUIRE(read);
    return std::get<BodySetup>(*read);
}

BodyView best(const std::string& name) {
    const BodySetup setup = shipped(name);
    return best_view(setup.exercise, setup.axes.front());
}

} // namespace

// Common practice, no source: a movement is watched along its axis, so across its plane.
TEST_CASE("flexion is best seen from the side, abduction from the front, rotation from above",
          "[body-view]") {
    CHECK(best("curl-dumbbell") == BodyView::side);
    CHECK(best("front-raise-straight") == BodyView::side);
    CHECK(best("hinge-bar-near") == BodyView::side);
    CHECK(best("lateral-raise-straight") == BodyView::front);
    CHECK(best("hip-abduction-cable") == BodyView::front);
    CHECK(best("side-bend") == BodyView::front);
    CHECK(best("trunk-rotation-cable-far") == BodyView::above);
    CHECK(best("outward-rotation-cable") == BodyView::above);
}

TEST_CASE("lying on the side, a rotation of the upright arm is seen from elsewhere",
          "[body-view]") {
    CHECK(best("outward-rotation-lying") != BodyView::above);
}

TEST_CASE("an axis far from end on in every plane is looked at obliquely", "[body-view]") {
    BodySetup setup = shipped("curl-dumbbell");
    // A shoulder swung out by 45° and forward by as much: the elbow's axis lies across all planes.
    auto& pose = setup.exercise.body_case.pose;
    pose[mechanics::Hinge::right_shoulder_abduction] = 0.8;
    pose[mechanics::Hinge::right_shoulder_rotation] = 0.65;
    setup.exercise.path.reset();
    // Turned by 0.65 about the arm and by 0.8 about the front-back line, the elbow's left-right
    // axis has the parts sin 0.65 = 0.61, cos 0.65 sin 0.8 = 0.57 and cos 0.65 cos 0.8 = 0.55.
    CHECK(best_view(setup.exercise, mechanics::Hinge::right_elbow_flexion) == BodyView::oblique);
}

TEST_CASE("the views of files are those of the enumeration", "[body-view]") {
    REQUIRE(body_view_names().size() == 4);
    CHECK(body_view_names()[static_cast<std::size_t>(BodyView::oblique)] == "oblique");
    CHECK(plane_view_names().size() == 3);
    for (std::size_t i = 0; i < plane_view_names().size(); ++i)
        CHECK(plane_view_names()[i] == body_view_names()[i]);
}
