#include "catch.h"
#include "scene/body/posed_exercise.h"
#include "scene/body/support_pad.h"

#include <algorithm>

using namespace steelyard;
using namespace steelyard::scene;
using mechanics::Segment;

namespace {

std::optional<Rect> pad_of(const PosedExercise& posed) {
    return support_pad(posed.here, posed.result.placement, posed.stage, posed.stage.lowest_tip_px);
}

} // namespace

TEST_CASE("who lies or sits has something to lie or sit on, down to the floor", "[support-pad]") {
    for (const char* const name :
         {"bench-press", "leg-curl-machine", "leg-extension-machine", "seated-row",
          "back-extension", "hip-abduction-lying", "outward-rotation-lying"}) {
        INFO(name);
        const PosedExercise posed(name, 0.0);
        const auto pad = pad_of(posed);
        REQUIRE(pad);
        const auto held = std::get<mechanics::Held>(posed.here.support).segment;
        const Point carried = posed.stage.to_sheet(posed.result.placement[held].joint_m);
        CHECK(pad->low.y() > carried.y());
        CHECK(pad->low.x() < carried.x() + 1.0);
        CHECK(pad->high.x() > carried.x() - 1.0);
        CHECK(pad->high.y() ==
              Approx(std::min(posed.stage.to_sheet(Vec3::Zero()).y(), posed.stage.lowest_tip_px)));
    }
}

TEST_CASE("who stands or lies on the floor has no bench, and from above none is seen",
          "[support-pad]") {
    for (const char* const name : {"squat-bar-back", "curl-dumbbell", "hip-abduction-cable",
                                   "leg-raise-straight", "lateral-raise-leaning"}) {
        INFO(name);
        CHECK_FALSE(pad_of(PosedExercise(name, 0.0)));
    }
    PosedExercise press("bench-press", 0.0);
    press.stage.camera = above_camera();
    CHECK_FALSE(pad_of(press));
}

TEST_CASE("who is held by the thighs has nothing under the trunk, which moves", "[support-pad]") {
    const PosedExercise raise("back-extension", 1.0);
    const auto pad = pad_of(raise);
    REQUIRE(pad);
    CHECK(pad->high.x() < raise.stage.to_sheet(raise.result.placement[Segment::head].joint_m).x());
}

TEST_CASE("no one in a shipped exercise has a foot under the floor", "[support-pad]") {
    for (const char* const name :
         {"bench-press", "leg-extension-machine", "pull-down", "seated-row", "leg-raise-bent",
          "neck-forward", "neck-partner", "wrist-curl", "leg-extension-cuff", "step-up"})
        for (const double progress : {0.0, 0.5, 1.0}) {
            const PosedExercise posed(name, progress);
            for (const Segment foot : {Segment::right_foot, Segment::left_foot}) {
                INFO(name << " at " << progress);
                const auto& frame = posed.result.placement[foot];
                CHECK(frame.at(posed.here.body[foot].tip_m).y() > -0.02); // within the sole
                CHECK(frame.joint_m.y() > 0.0);
            }
        }
}

TEST_CASE("who stands on something above the floor has a box to stand on", "[support-pad]") {
    const PosedExercise up("step-up", 0.5);
    const auto steps = raised_steps(up.here, up.result.placement, up.stage, 1e9);
    REQUIRE(steps.size() == 1);
    CHECK(steps.front().low.y() == Approx(up.stage.to_sheet(Vec3(0.0, 0.3, 0.0)).y()));
    CHECK(steps.front().high.y() == Approx(up.stage.to_sheet(Vec3::Zero()).y()));
    const double ankle_px = up.stage.to_sheet(up.result.placement[Segment::right_foot].joint_m).x();
    CHECK(steps.front().low.x() < ankle_px);
    CHECK(steps.front().high.x() > ankle_px);
    const PosedExercise squat("squat-bar-back", 0.5);
    CHECK(raised_steps(squat.here, squat.result.placement, squat.stage, 1e9).empty());
}
