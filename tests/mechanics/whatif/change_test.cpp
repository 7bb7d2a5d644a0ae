#include "catch.h"
#include "mechanics/body/published_tables.h"
#include "mechanics/whatif/boathouse_exercises.h"
#include "mechanics/whatif/change.h"
#include "mechanics/whatif/reach.h"

#include <cmath>

using namespace steelyard::mechanics;

namespace {

ChangeRange range(const Change& change, const Exercise& exercise) {
    const auto found = range_of(change, exercise);
    REQUIRE(found);
    return *found;
}

Exercise changed(const Exercise& exercise, const Change& change, double value) {
    const auto found = with_change(exercise, change, value);
    REQUIRE(found);
    return *found;
}

double hand_ahead_of_lumbar(const Exercise& exercise, Segment hand) {
    const Body& body = exercise.body_case.body;
    const Placement placement = place(body, exercise.body_case.pose);
    const Vec3 grip_m =
        placement[hand].at(*local_point(body, {hand, Spot::grip, 0.0, Vec3::Zero()}));
    return grip_m.x() - placement.axis_point_m(Hinge::lumbar_flexion).x();
}

} // namespace

TEST_CASE("setting a change to its present value leaves the exercise as it is",
          "[whatif][change]") {
    for (const Exercise& exercise :
         {curl(), curl_with_tempo(), stoop(), cable_hold(), band_hold()}) {
        const auto before = read_repetition(exercise, {Hinge::right_elbow_flexion});
        for (const Change& change : possible_changes(exercise, Hinge::lumbar_flexion)) {
            INFO(describe(change, exercise));
            const ChangeRange now = range(change, exercise);
            CHECK(now.allowed.low <= now.present);
            CHECK(now.allowed.high >= now.present);
            const auto after = read_repetition(changed(exercise, change, now.present),
                                               {Hinge::right_elbow_flexion});
            REQUIRE(after);
            CHECK_THAT(after->peaks[0].torque_Nm,
                       WithinAbs(before->peaks[0].torque_Nm, 1e-10)); // rounding of the swing
        }
    }
}

TEST_CASE("a changed exercise reads back the value that was set", "[whatif][change]") {
    for (const Exercise& exercise : {curl(), curl_with_tempo(), stoop(), cable_hold(), band_hold()})
        for (const Change& change : possible_changes(exercise, Hinge::lumbar_flexion)) {
            INFO(describe(change, exercise));
            const ChangeRange now = range(change, exercise);
            for (const double part : {0.1, 0.5, 0.9}) {
                const double value = now.allowed.low + part * (now.allowed.high - now.allowed.low);
                const Exercise other = changed(exercise, change, value);
                CHECK_THAT(range(change, other).present, WithinAbs(value, 1e-9));
            }
        }
}

TEST_CASE("a reach is the hand's horizontal distance, and both arms swing to it",
          "[whatif][change]") {
    const Exercise exercise = stoop();
    const Change reach = LoadReach{0, Hinge::lumbar_flexion};
    CHECK_THAT(range(reach, exercise).present,
               WithinAbs(hand_ahead_of_lumbar(exercise, Segment::right_hand), 1e-12));
    const Exercise nearer = changed(exercise, reach, 0.25);
    CHECK_THAT(hand_ahead_of_lumbar(nearer, Segment::right_hand), WithinAbs(0.25, 1e-12));
    CHECK_THAT(hand_ahead_of_lumbar(nearer, Segment::left_hand), WithinAbs(0.25, 1e-12));
    CHECK(nearer.body_case.pose[Hinge::right_elbow_flexion] ==
          exercise.body_case.pose[Hinge::right_elbow_flexion]);
}

TEST_CASE("dumbbells that are alike change together, a hinge and its mirror image too",
          "[whatif][change]") {
    const Exercise exercise = stoop();
    const std::vector<Change> changes = possible_changes(exercise, Hinge::lumbar_flexion);
    const auto& load = std::get<LoadSize>(changes.front());
    CHECK(load.resistances == std::vector<std::size_t>{0, 1});
    const Exercise heavier = changed(exercise, load, 14.0);
    for (const Resistance& resistance : heavier.body_case.resistances)
        CHECK(std::get<Dumbbell>(resistance.kind).mass_kg == 14.0);
    for (const Change& change : changes)
        if (const auto* angle = std::get_if<JointAngle>(&change))
            CHECK(angle->both_sides == (hinge_info(angle->hinge).mirror != angle->hinge));
}

TEST_CASE("the same change of another exercise is found by the names of the loads, not their order",
          "[whatif][change]") {
    const Exercise here = stoop();
    Exercise there = stoop();
    there.body_case.resistances.insert(there.body_case.resistances.begin(),
                                       {"vest", Dumbbell{Segment::right_hand, 3.0}});
    const Hinge from = Hinge::lumbar_flexion;
    CHECK(same_change(LoadSize{{0, 1}}, here, there, from) == Change(LoadSize{{1, 2}}));
    CHECK(same_change(JointAngle{from, false}, here, there, from) ==
          Change(JointAngle{from, false}));
    CHECK_FALSE(same_change(LoadSize{{0}}, there, here, from)); // it has no vest
    CHECK_FALSE(same_change(LoadSize{{0}}, here, there, from)); // there both change together
    CHECK_FALSE(same_change(RepetitionTempo{}, curl_with_tempo(), there, from));
}

TEST_CASE("an angle changes at the start and at the end of the path alike", "[whatif][change]") {
    const Exercise exercise = curl();
    const Change elbow = JointAngle{Hinge::right_elbow_flexion, false};
    const ChangeRange now = range(elbow, exercise);
    // The path makes 120 of the hinge's 160 degrees (-10 to 150), so 40 are left to shift.
    CHECK_THAT(now.allowed.high - now.allowed.low, WithinAbs(degrees(40.0), 1e-12));
    const Exercise other = changed(exercise, elbow, degrees(20.0));
    CHECK_THAT(other.path->end_angle_rad[index_of(Hinge::right_elbow_flexion)],
               WithinAbs(degrees(140.0), 1e-12));
}

TEST_CASE("a slower repetition keeps the proportion of its ways", "[whatif][change]") {
    Exercise exercise = curl_with_tempo();
    exercise.tempo = Tempo{1.0, 0.5, 3.0};
    const Exercise slower = changed(exercise, RepetitionTempo{}, 2.0);
    CHECK(slower.tempo->out_s == 2.0);
    CHECK(slower.tempo->hold_s == 0.5);
    CHECK(slower.tempo->back_s == 6.0);
}

TEST_CASE("a change that the exercise does not have is refused with the reason",
          "[whatif][change]") {
    CHECK_FALSE(range_of(LoadSize{{3}}, curl()));
    CHECK_FALSE(range_of(LoadSize{{0}}, band_hold()));
    CHECK_FALSE(range_of(PulleyHeight{{0}}, curl()));
    CHECK_FALSE(range_of(BandSlack{{0}}, cable_hold()));
    CHECK_FALSE(range_of(RepetitionTempo{}, stoop()));
    CHECK_FALSE(range_of(LoadAlongLimb{{0}}, curl()));
    CHECK_FALSE(range_of(LoadReach{0, Hinge::right_wrist_flexion}, curl()));
    CHECK_FALSE(range_of(LoadReach{0, Hinge::lumbar_rotation}, curl()));
    CHECK_FALSE(range_of(JointAngle{Hinge::right_elbow_flexion, true}, curl()));
    CHECK_FALSE(with_change(curl(), LoadSize{{0}}, -1.0));
    CHECK_FALSE(with_change(curl(), LoadSize{{0}}, std::nan("")));
}
