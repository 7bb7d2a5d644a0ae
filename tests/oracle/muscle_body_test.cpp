// The muscles that come with the program on the body of the published tables: the lines of pull,
// which come from memory, against the moment arms, which are published; and the size of the forces.

#include "catch.h"
#include "mechanics/muscle/muscle_sweep.h"
#include "setup/body/segment_table_file.h"
#include "setup/muscle/muscle_file.h"

#include <cmath>
#include <string>

using namespace steelyard;
using namespace steelyard::mechanics;

namespace {

double deg(double degrees) {
    return degrees * kPi / 180.0;
}

/// 73.0 kg, 1.741 m: de Leva's male reference body.
BodyCase standing_man() {
    const auto tables = setup::shipped_segment_tables();
    REQUIRE(tables);
    for (const setup::NamedSegmentTable& named : *tables)
        if (named.id == setup::kUsualSegmentTable) {
            BodyCase body_case;
            body_case.body = body_from(named.table, Sex::male, 1.741, 73.0).value();
            body_case.support = Held{Segment::pelvis};
            return body_case;
        }
    FAIL("no table");
    return {};
}

std::vector<Muscle> all_muscles() {
    const auto muscles = setup::shipped_muscles();
    if (!muscles)
        FAIL(to_text(muscles.error()));
    return *muscles;
}

HingeMuscles solved_at(const BodyCase& body_case, Hinge hinge) {
    const auto result = solve_body(body_case);
    REQUIRE(result);
    const auto found = solve_muscles_at(body_case, *result, hinge, muscles_at(all_muscles(), hinge),
                                        SharingRule::equal_stress);
    if (!found)
        FAIL(found.error().key + ": " + found.error().expected);
    return *found;
}

} // namespace

// The lines give only the direction of a force, so they may be rough; but a line that turned the
// joint the other way, or had an arm far from the published one, would put the joint reaction on
// the wrong side. 3 cm: the sources themselves lie up to 2 cm apart (Achilles tendon).
TEST_CASE("every line of pull turns its joint as its published arm does, and about as far out",
          "[oracle][muscle]") {
    BodyCase body_case = standing_man();
    std::size_t compared = 0;
    for (const Muscle& muscle : all_muscles()) {
        if (!muscle.hinge || !muscle.line)
            continue;
        for (const double angle_deg : {10.0, 45.0, 90.0}) {
            const HingeInfo& info = hinge_info(*muscle.hinge);
            if (deg(angle_deg) > info.most_rad)
                continue;
            body_case.pose = Pose{};
            body_case.pose[*muscle.hinge] = deg(angle_deg);
            const auto result = solve_body(body_case);
            REQUIRE(result);
            const auto pull = pull_on_body(muscle, body_case, *result, *muscle.hinge);
            INFO(muscle.name << " of " << info.label << " at " << angle_deg);
            REQUIRE(pull);
            REQUIRE(pull->line);
            if (!muscle.arms.empty() && !pull->source)
                continue; // no table for this position
            ++compared;
            CHECK(pull->line->arm_m * pull->arm_m > 0.0);
            CHECK_THAT(pull->line->arm_m, WithinAbs(pull->arm_m, 0.03));
        }
    }
    CHECK(compared > 50);
}

// Common practice, no source: most muscles work as third-class levers, so their force exceeds the
// weight that they hold many times over.
TEST_CASE("the elbow's flexors pull many times the weight in the hand", "[oracle][muscle]") {
    BodyCase body_case = standing_man();
    body_case.pose[Hinge::right_elbow_flexion] = deg(90.0);
    body_case.resistances = {{"dumbbell", Dumbbell{Segment::right_hand, 10.0}}};
    const HingeMuscles elbow = solved_at(body_case, Hinge::right_elbow_flexion);
    double tension_N = 0.0;
    for (const MuscleReading& reading : elbow.solution.muscles)
        tension_N += reading.tension_N;
    const double weight_N = 10.0 * kStandardGravity;
    CHECK(tension_N > 5.0 * weight_N);
    CHECK(tension_N < 15.0 * weight_N);
    REQUIRE(elbow.solution.joint_reaction_N);
    CHECK(elbow.solution.joint_reaction_N->y() < 0.0); // the upper arm presses the forearm down
    for (std::size_t i = 0; i < elbow.pulls.size(); ++i) {
        const bool extends = elbow.pulls[i].arm_m < 0.0;
        CHECK((elbow.solution.muscles[i].tension_N == 0.0) == extends);
        if (!extends)
            CHECK(elbow.levers[i]->of_whole.lever_class == LeverClass::third);
        else if (elbow.pulls[i].muscle == "triceps")
            CHECK(elbow.levers[i]->of_whole.lever_class == LeverClass::first);
    }
}

// College Physics 2e, Example 9.5, gives 5 times the lifted weight for a long arm of 8 cm; with the
// usual 5 cm it would be 8 times. The open model's fascicles have 4.1 cm on average.
TEST_CASE("a stoop loads the low back by a range that the arms from 4.1 to 8 cm span",
          "[oracle][muscle]") {
    BodyCase body_case = standing_man();
    body_case.pose[Hinge::lumbar_flexion] = deg(60.0);
    for (const Hinge shoulder : {Hinge::right_shoulder_flexion, Hinge::left_shoulder_flexion})
        body_case.pose[shoulder] = deg(60.0);
    body_case.resistances = {{"right dumbbell", Dumbbell{Segment::right_hand, 15.0}},
                             {"left dumbbell", Dumbbell{Segment::left_hand, 15.0}}};
    const HingeMuscles back = solved_at(body_case, Hinge::lumbar_flexion);
    const MuscleReading& extensors = back.solution.muscles[0];
    REQUIRE(extensors.tension_range_N);
    CHECK_THAT(extensors.tension_range_N->high / extensors.tension_range_N->low,
               WithinRel(8.0 / 4.1, 1e-9));
    CHECK(extensors.tension_N > 3000.0);
    CHECK(extensors.tension_N < 9000.0);
    REQUIRE(extensors.parts);
    CHECK(extensors.parts->compressing_N > 0.9 * extensors.tension_N); // parallel to the spine
}

TEST_CASE("every hinge that has muscles can be solved for them, left and right",
          "[oracle][muscle]") {
    BodyCase body_case = standing_man();
    for (const HingeInfo& info : all_hinges()) {
        const auto muscles = muscles_at(all_muscles(), info.hinge);
        if (muscles.empty())
            continue;
        for (const double part : {0.2, 0.5, 0.8}) {
            body_case.pose = Pose{};
            body_case.pose[info.hinge] = info.least_rad + part * (info.most_rad - info.least_rad);
            const HingeMuscles found = [&] {
                const auto result = solve_body(body_case);
                REQUIRE(result);
                const bool single = muscles.size() == 1;
                return solve_muscles_at(body_case, *result, info.hinge, muscles,
                                        single ? SharingRule::equal_force
                                               : SharingRule::equal_stress)
                    .value();
            }();
            for (const MuscleReading& reading : found.solution.muscles) {
                CHECK(std::isfinite(reading.tension_N));
                CHECK(reading.tension_N >= 0.0);
            }
        }
    }
}

// Common practice, no source: a curl is hardest where the forearm is level, but the biceps pulls
// hardest elsewhere, because its own arm changes too.
TEST_CASE("through a curl the torque and the muscle force peak at different angles",
          "[oracle][muscle]") {
    BodyCase body_case = standing_man();
    body_case.resistances = {{"dumbbell", Dumbbell{Segment::right_hand, 8.0}}};
    PosePath path{body_case.pose.angle_rad};
    path.end_angle_rad[index_of(Hinge::right_elbow_flexion)] = deg(140.0);
    const Hinge elbow = Hinge::right_elbow_flexion;
    std::vector<Muscle> biceps; // alone, on our word that nobody else is needed
    for (const Muscle& muscle : muscles_at(all_muscles(), elbow))
        if (muscle.name == "biceps")
            biceps.push_back(muscle);
    REQUIRE(biceps.size() == 1);
    biceps[0].actions.clear();
    const auto rows =
        sweep_muscles(body_case, path, std::nullopt, elbow, biceps, SharingRule::equal_stress, 141);
    REQUIRE(rows);
    std::size_t hardest = 0, strongest = 0;
    for (std::size_t i = 0; i < rows->size(); ++i) {
        const MuscleStep& row = (*rows)[i];
        // Force = torque / published arm, at every degree.
        if (row.solution.outcome == MuscleOutcome::balanced)
            CHECK_THAT(
                row.solution.muscles[0].tension_N,
                WithinRel(row.torque_Nm / arm_at(biceps[0].arms, row.angle_rad).arm_m, 1e-9));
        if (row.torque_Nm > (*rows)[hardest].torque_Nm)
            hardest = i;
        if (row.solution.muscles[0].tension_N > (*rows)[strongest].solution.muscles[0].tension_N)
            strongest = i;
    }
    CHECK_THAT((*rows)[hardest].angle_rad, WithinAbs(deg(90.0), deg(0.51))); // steps of 1 degree
    CHECK(strongest != hardest);
    CHECK_FALSE(
        sweep_muscles(body_case, path, std::nullopt, elbow, biceps, SharingRule::equal_stress, 1));
}
