#include "catch.h"
#include "mechanics/muscle/muscle_lever.h"
#include "mechanics/muscle/muscle_solve.h"

#include <cmath>

using namespace steelyard::mechanics;

namespace {

/// Forearm level to the right of the elbow, 2 kg in the hand at 0.35 m, massless bone.
FreeBody level_forearm() {
    FreeBody body;
    body.loads = {{"dumbbell", Vec3(0.35, 0.0, 0.0), Vec3(0.0, -20.0, 0.0)}};
    return body;
}

Pull muscle(const char* name, double arm_m, double area_m2) {
    Pull pull = pull_with_arm(name, arm_m);
    pull.area_m2 = area_m2;
    return pull;
}

MuscleSolution solved(const FreeBody& body, const std::vector<Pull>& pulls,
                      SharingRule rule = SharingRule::equal_stress) {
    const auto solution = solve_muscles(body, pulls, rule);
    REQUIRE(solution);
    return *solution;
}

double total_torque(const MuscleSolution& solution) {
    double torque_Nm = 0.0;
    for (const MuscleReading& reading : solution.muscles)
        torque_Nm += reading.torque_Nm;
    return torque_Nm;
}

} // namespace

TEST_CASE("the tensions of a group make the torque that is asked, by every sharing rule",
          "[muscle][share]") {
    const std::vector<Pull> flexors{muscle("one", 0.040, 5e-4), muscle("two", 0.025, 7e-4),
                                    muscle("three", 0.060, 1e-4)};
    for (const SharingRule rule :
         {SharingRule::equal_stress, SharingRule::least_squared_stress, SharingRule::equal_force}) {
        const MuscleSolution solution = solved(level_forearm(), flexors, rule);
        CHECK(solution.outcome == MuscleOutcome::balanced);
        CHECK_THAT(total_torque(solution), WithinAbs(7.0, 1e-12)); // 20 N × 0.35 m
    }
}

TEST_CASE("equal stress means the same force on every square centimetre", "[muscle][share]") {
    const MuscleSolution solution =
        solved(level_forearm(), {muscle("one", 0.040, 5e-4), muscle("two", 0.025, 7e-4)});
    // 7 N·m = σ (0.040·5e-4 + 0.025·7e-4) = σ · 3.75e-5 m³
    CHECK_THAT(solution.muscles[0].tension_N / 5e-4, WithinRel(7.0 / 3.75e-5, 1e-12));
    CHECK_THAT(solution.muscles[1].tension_N / 7e-4, WithinRel(7.0 / 3.75e-5, 1e-12));
}

TEST_CASE("no other split that holds the torque has a smaller sum of squared stresses",
          "[muscle][share]") {
    const std::vector<Pull> flexors{muscle("one", 0.040, 5e-4), muscle("two", 0.025, 7e-4)};
    const MuscleSolution best = solved(level_forearm(), flexors, SharingRule::least_squared_stress);
    const auto cost = [&](double first_N) {
        const double second_N = (7.0 - 0.040 * first_N) / 0.025;
        return std::pow(first_N / 5e-4, 2) + std::pow(second_N / 7e-4, 2);
    };
    const double chosen_N = best.muscles[0].tension_N;
    for (const double step_N : {-5.0, -0.1, 0.1, 5.0})
        CHECK(cost(chosen_N + step_N) > cost(chosen_N));
}

TEST_CASE("a muscle cannot push: a torque the other way is for its antagonists",
          "[muscle][solve]") {
    FreeBody body = level_forearm();
    body.loads[0].force_N = Vec3(0.0, 20.0, 0.0); // a cable pulls the hand up
    const MuscleSolution flexor = solved(body, {pull_with_arm("flexor", 0.04)});
    CHECK(flexor.outcome == MuscleOutcome::antagonists_work);
    CHECK(flexor.muscles[0].tension_N == 0.0);
    CHECK_FALSE(flexor.joint_reaction_N);
    const MuscleSolution extensor = solved(body, {pull_with_arm("extensor", -0.02)});
    CHECK(extensor.outcome == MuscleOutcome::balanced);
    CHECK_THAT(extensor.muscles[0].tension_N, WithinRel(350.0, 1e-12)); // 7 N·m / 0.02 m
}

TEST_CASE("a muscle whose line passes through the axis holds nothing", "[muscle][solve]") {
    const MuscleSolution solution = solved(level_forearm(), {pull_with_arm("long head", 0.0002)});
    CHECK(solution.outcome == MuscleOutcome::no_arm);
    CHECK(solution.muscles[0].tension_N == 0.0);
}

TEST_CASE("without a torque to hold the muscles rest and the joint carries the weight",
          "[muscle][solve]") {
    FreeBody body = level_forearm();
    body.loads[0].point_m = Vec3(0.0, -0.3, 0.0); // hangs straight below the elbow
    const MuscleSolution solution = solved(body, {pull_with_arm("flexor", 0.04)});
    CHECK(solution.outcome == MuscleOutcome::no_torque);
    REQUIRE(solution.joint_reaction_N);
    CHECK_THAT((*solution.joint_reaction_N - Vec3(0.0, 20.0, 0.0)).norm(), WithinAbs(0.0, 1e-12));
}

TEST_CASE("a range of moment arms gives a range of force, the long arm the small force",
          "[muscle][range]") {
    Pull pull = pull_with_arm("extensors", 0.06);
    pull.arm_range_m = {0.05, 0.08};
    const MuscleSolution solution = solved(level_forearm(), {pull});
    REQUIRE(solution.muscles[0].tension_range_N);
    CHECK_THAT(solution.muscles[0].tension_range_N->low, WithinRel(7.0 / 0.08, 1e-12));
    CHECK_THAT(solution.muscles[0].tension_range_N->high, WithinRel(7.0 / 0.05, 1e-12));
}

TEST_CASE("arms that may reach the axis leave the largest force open", "[muscle][range]") {
    Pull pull = pull_with_arm("deltoid", 0.02);
    pull.arm_range_m = {-0.005, 0.03};
    const MuscleSolution solution = solved(level_forearm(), {pull});
    CHECK(solution.outcome == MuscleOutcome::balanced);
    CHECK_FALSE(solution.muscles[0].tension_range_N);
    CHECK_FALSE(solution.joint_reaction_range_N);
}

TEST_CASE("with only a moment arm the joint reaction is bounded, not guessed", "[muscle][range]") {
    const MuscleSolution arm_only = solved(level_forearm(), {pull_with_arm("flexor", 0.04)});
    CHECK_FALSE(arm_only.joint_reaction_N);
    REQUIRE(arm_only.joint_reaction_range_N);
    // 175 N of muscle against 20 N of weight: between opposed and together.
    CHECK_THAT(arm_only.joint_reaction_range_N->low, WithinAbs(155.0, 1e-9));
    CHECK_THAT(arm_only.joint_reaction_range_N->high, WithinAbs(195.0, 1e-9));

    for (double angle = 0.2; angle < 3.0; angle += 0.4) {
        const FreeBody body = level_forearm();
        const Vec3 direction(std::cos(angle), std::sin(angle), 0.0);
        const Vec3 insertion(0.04 / std::sin(angle), 0.0, 0.0); // so that the arm stays 0.04 m
        const MuscleSolution known =
            solved(body, {pull_along("flexor", insertion, direction, body)});
        REQUIRE(known.joint_reaction_N);
        CHECK(known.joint_reaction_N->norm() >= 155.0 - 1e-9);
        CHECK(known.joint_reaction_N->norm() <= 195.0 + 1e-9);
    }
}

TEST_CASE("a group without cross-sections is shared only by a rule that needs none",
          "[muscle][share]") {
    const std::vector<Pull> pair{pull_with_arm("one", 0.04), pull_with_arm("two", 0.03)};
    CHECK_FALSE(solve_muscles(level_forearm(), pair, SharingRule::equal_stress));
    CHECK(solve_muscles(level_forearm(), pair, SharingRule::equal_force));
    CHECK_FALSE(solve_muscles(level_forearm(), {}, SharingRule::equal_force));
}

TEST_CASE("a muscle of the group that pulls the wrong way stays silent", "[muscle][share]") {
    const MuscleSolution solution =
        solved(level_forearm(), {muscle("flexor", 0.04, 5e-4), muscle("extensor", -0.02, 9e-4)});
    CHECK(solution.muscles[1].tension_N == 0.0);
    CHECK_THAT(solution.muscles[0].tension_N, WithinRel(7.0 / 0.04, 1e-12));
}

TEST_CASE("a free body with a bad number is refused by name", "[muscle][free body]") {
    FreeBody body = level_forearm();
    body.segments = {{"forearm", -1.0, Vec3::Zero(), Vec3::Zero()}};
    CHECK(demand_on_joint(body).error().key == "segments[0].mass");
    body = level_forearm();
    body.loads[0].force_N.y() = std::nan("");
    CHECK(demand_on_joint(body).error().key == "loads[0]");
    body = level_forearm();
    body.axis_direction = Vec3(0.0, 0.0, 2.0);
    CHECK(demand_on_joint(body).error().fault == Fault::inconsistent);
}

TEST_CASE("a segment in free fall asks nothing of the joint", "[muscle][free body]") {
    FreeBody body;
    body.segments = {{"forearm", 1.5, Vec3(0.12, 0.0, 0.0), body.gravity_m_s2}};
    const auto demand = demand_on_joint(body);
    REQUIRE(demand);
    CHECK(demand->torque_Nm == 0.0);
    CHECK(demand->force_N.norm() == 0.0);
}

TEST_CASE("the class of a muscle and its bone follows where the muscle is attached",
          "[muscle][class]") {
    const FreeBody body = level_forearm();
    const auto class_of = [&](double insertion_x_m) {
        const double up = insertion_x_m > 0.0 ? 1.0 : -1.0; // behind the axis it must pull down
        const std::vector<Pull> pulls{
            pull_along("muscle", Vec3(insertion_x_m, 0.0, 0.0), Vec3(0.0, up, 0.0), body)};
        const auto lever = lever_about_joint(body, pulls, solved(body, pulls), 0);
        REQUIRE(lever);
        return *lever;
    };
    CHECK(class_of(0.04).of_whole.lever_class == LeverClass::third);
    CHECK(class_of(-0.03).of_whole.lever_class == LeverClass::first);
    CHECK(class_of(0.50).of_whole.lever_class == LeverClass::second);
    CHECK(class_of(0.35).of_whole.reason == ClassReason::effort_at_load);
    CHECK_THAT(class_of(0.04).net_torque_Nm, WithinAbs(0.0, 1e-12));
}

TEST_CASE("the segment's own weight counts as the load only when there is no other",
          "[muscle][class]") {
    // A muscle that attaches far out, beyond the forearm's own centre of mass but short of the
    // hand.
    FreeBody body = level_forearm();
    body.segments = {{"forearm", 1.5, Vec3(0.12, 0.0, 0.0), Vec3::Zero()}};
    const auto class_now = [&body] {
        const std::vector<Pull> pulls{
            pull_along("brachioradialis", Vec3(0.24, 0.0, 0.0), Vec3(-0.8, 0.6, 0.0), body)};
        return lever_about_joint(body, pulls, solved(body, pulls), 0)->of_whole.lever_class;
    };
    CHECK(class_now() == LeverClass::third);
    body.loads.clear();
    CHECK(class_now() == LeverClass::second);
}

TEST_CASE("a muscle of which only the arm is known has no place on the bone and so no class",
          "[muscle][class]") {
    const FreeBody body = level_forearm();
    const std::vector<Pull> pulls{pull_with_arm("flexor", 0.04)};
    CHECK_FALSE(lever_about_joint(body, pulls, solved(body, pulls), 0));
}
