#include "catch.h"
#include "scene/body/muscle_spindle.h"
#include "scene/body/posed_exercise.h"
#include "setup/muscle/muscle_file.h"

using namespace steelyard;
using namespace steelyard::scene;
using mechanics::Hinge;

namespace {

constexpr Hinge kElbow = Hinge::right_elbow_flexion;

mechanics::HingeMuscles muscles_of(const PosedExercise& posed) {
    const auto known = setup::shipped_muscles();
    REQUIRE(known);
    auto solved = mechanics::solve_muscles_at(posed.here, posed.result, kElbow,
                                              mechanics::muscles_at(*known, kElbow),
                                              mechanics::SharingRule::equal_stress);
    REQUIRE(solved);
    return *std::move(solved);
}

std::vector<Spindle> drawn(const PosedExercise& posed, const mechanics::HingeMuscles& muscles) {
    return spindles_of(muscles, posed.here.body, posed.result.placement, kElbow, posed.stage);
}

} // namespace

TEST_CASE("the area of a muscle's belly grows with its force", "[muscle-spindle]") {
    const PosedExercise curl("curl-dumbbell", 0.65);
    mechanics::HingeMuscles muscles = muscles_of(curl);
    for (auto& muscle : muscles.solution.muscles)
        if (muscle.tension_N > 0.0)
            muscle.tension_N = 500.0;
    const std::vector<Spindle> before = drawn(curl, muscles);
    REQUIRE_FALSE(before.empty());
    for (auto& muscle : muscles.solution.muscles)
        muscle.tension_N *= 4.0;
    const std::vector<Spindle> after = drawn(curl, muscles);
    REQUIRE(after.size() == before.size());
    for (std::size_t i = 0; i < before.size(); ++i)
        CHECK(after[i].belly_px == Approx(2.0 * before[i].belly_px)); // four times the area
}

TEST_CASE("a muscle lies on the side of the joint on which its pull passes", "[muscle-spindle]") {
    // The elbow bends to the front: seen from the right, its flexors lie in front of the upper arm,
    // to the right of it while it hangs.
    const PosedExercise curl("curl-dumbbell", 0.5);
    const Point elbow = curl.stage.to_sheet(curl.result.placement.axis_point_m(kElbow));
    const std::vector<Spindle> spindles = drawn(curl, muscles_of(curl));
    REQUIRE_FALSE(spindles.empty());
    for (const Spindle& spindle : spindles) {
        CHECK(spindle.over.x() > elbow.x());
        CHECK(spindle.end.y() < elbow.y()); // up along the upper arm
    }
}

TEST_CASE("a muscle that does not pull, or whose line is not known, is not drawn",
          "[muscle-spindle]") {
    const PosedExercise curl("curl-dumbbell", 0.65);
    mechanics::HingeMuscles muscles = muscles_of(curl);
    const std::size_t all = drawn(curl, muscles).size();
    REQUIRE(all > 0);
    for (std::size_t i = 0; i < muscles.pulls.size(); ++i)
        if (muscles.pulls[i].line && muscles.solution.muscles[i].tension_N > 0.0) {
            mechanics::HingeMuscles fewer = muscles;
            fewer.pulls[i].line.reset();
            CHECK(drawn(curl, fewer).size() == all - 1);
            fewer = muscles;
            fewer.solution.muscles[i].tension_N = 0.0;
            CHECK(drawn(curl, fewer).size() == all - 1);
        }
}

TEST_CASE("no muscle is drawn where no force is said", "[muscle-spindle]") {
    const PosedExercise curl("curl-dumbbell", 0.65);
    mechanics::HingeMuscles muscles = muscles_of(curl);
    muscles.solution.outcome = mechanics::MuscleOutcome::beyond_cross_section;
    CHECK(drawn(curl, muscles).empty());
}
