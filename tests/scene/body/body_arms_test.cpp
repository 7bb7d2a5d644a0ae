#include "catch.h"
#include "scene/body/body_arms.h"
#include "scene/body/body_forces.h"
#include "scene/body/posed_exercise.h"

using namespace steelyard;
using namespace steelyard::scene;
using mechanics::Hinge;

namespace {

struct Posed : PosedExercise {
    using PosedExercise::PosedExercise;

    std::size_t load(Hinge hinge) const {
        const auto main = main_force(here, result, hinge);
        REQUIRE(main);
        return *main;
    }
    std::vector<BodyArm> arms(double shelf_px = 30.0) const {
        return body_arms(here, result, load(setup.axes[0]), setup.axes, 0, stage, shelf_px);
    }
};

} // namespace

TEST_CASE("a weight's arm is drawn level from the joint to the line of action, true to scale",
          "[body-arms]") {
    const Posed curl("curl-dumbbell", 0.65);
    const std::vector<BodyArm> arms = curl.arms();
    REQUIRE_FALSE(arms.empty());
    for (const BodyArm& arm : arms) {
        // By hand: the arm of a vertical force is the level distance of the joint from it.
        const auto& force = curl.result.forces[curl.load(curl.setup.axes[0])];
        const auto joint_m = curl.result.placement.axis_point_m(arm.hinge);
        CHECK(arm.arm_m == Approx(std::abs(force.point_m.x() - joint_m.x())));
        CHECK(arm.mark.axis.y() == Approx(arm.mark.foot.y()));
        CHECK((arm.mark.foot - arm.mark.axis).norm() == Approx(arm.arm_m * curl.stage.px_per_m));
    }
    CHECK(arms[0].chosen);
}

TEST_CASE("an oblique pull's arm meets its line of action at a right angle", "[body-arms]") {
    const Posed curl("curl-cable", 0.55);
    const auto force = curl.load(Hinge::right_elbow_flexion);
    const Point along = curl.stage.arrow(curl.result.forces[force].force_N).normalized();
    const auto arms = curl.arms();
    REQUIRE(arms.size() >= 2);
    for (const BodyArm& arm : arms) {
        // A level pixel of the arm is no pixel of the pull: rounding only.
        CHECK((arm.mark.foot - arm.mark.axis).dot(along) == Approx(0.0).margin(1e-6));
        CHECK(arm.arm_m == Approx(mechanics::arm_of(curl.result, force, arm.hinge).arm_m));
    }
}

TEST_CASE("arms of joints at one height stand on shelves of their own", "[body-arms]") {
    const Posed raise("front-raise-straight", 1.0); // the arm level: shoulder and elbow in a line
    const auto arms = raise.arms(30.0);
    for (std::size_t i = 0; i < arms.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) {
            const Point one = arms[i].mark.axis + arms[i].mark.shift;
            const Point other = arms[j].mark.axis + arms[j].mark.shift;
            const double side =
                (arms[i].mark.foot - arms[i].mark.axis).dot(arms[j].mark.foot - arms[j].mark.axis);
            if (side > 0.0)
                CHECK(std::abs((one - other).dot(arms[i].mark.along_line)) >= 29.999);
        }
    REQUIRE(arms.size() >= 2);
}

TEST_CASE("the line of action goes past the joints' feet and the force on both sides",
          "[body-arms]") {
    const Posed curl("curl-dumbbell", 0.65);
    const std::size_t load = curl.load(curl.setup.axes[0]);
    const auto line =
        action_line(curl.result.forces[load], curl.setup.axes, curl.result, curl.stage);
    REQUIRE(line);
    const Point way = line->to - line->from;
    for (const BodyArm& arm : curl.arms()) {
        const double share = (arm.mark.foot - line->from).dot(way) / way.squaredNorm();
        CHECK(share > 0.0);
        CHECK(share < 1.0);
    }
}

TEST_CASE("a force that points at the eye has neither line nor arms", "[body-arms]") {
    Posed curl("curl-dumbbell", 0.65);
    curl.stage.camera = above_camera(); // a weight is seen end on
    const std::size_t load = curl.load(curl.setup.axes[0]);
    CHECK_FALSE(action_line(curl.result.forces[load], curl.setup.axes, curl.result, curl.stage));
    CHECK(curl.arms().empty());
}
