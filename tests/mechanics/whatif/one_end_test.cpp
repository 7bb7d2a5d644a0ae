// Start and end of a path posed apart.

#include "catch.h"
#include "mechanics/whatif/one_end.h"

namespace steelyard::mechanics {

namespace {

Exercise curl() {
    Exercise exercise;
    exercise.body_case.pose[Hinge::right_elbow_flexion] = 0.2;
    exercise.path = PosePath{exercise.body_case.pose.angle_rad};
    exercise.path->end_angle_rad[index_of(Hinge::right_elbow_flexion)] = 2.0;
    exercise.path->halfway_rad =
        even_halfway_rad(exercise.body_case.pose.angle_rad, *exercise.path);
    return exercise;
}

double end_rad(const Exercise& exercise) {
    return exercise.path->end_angle_rad[index_of(Hinge::right_elbow_flexion)];
}

} // namespace

TEST_CASE("Posing one end leaves the other where it was", "[whatif]") {
    const Exercise exercise = curl();
    Exercise held = held_at(exercise, PoseEnds::end);
    CHECK_FALSE(held.path);
    CHECK(held.body_case.pose[Hinge::right_elbow_flexion] == 2.0);
    held.body_case.pose[Hinge::right_elbow_flexion] = 1.4;
    const Exercise changed = with_end_of(exercise, PoseEnds::end, held);
    CHECK(end_rad(changed) == 1.4);
    CHECK(changed.body_case.pose[Hinge::right_elbow_flexion] == 0.2);
    CHECK((*changed.path->halfway_rad)[index_of(Hinge::right_elbow_flexion)] == Approx(0.8));

    held = held_at(exercise, PoseEnds::start);
    held.body_case.pose[Hinge::right_elbow_flexion] = 0.6;
    const Exercise later = with_end_of(exercise, PoseEnds::start, held);
    CHECK(later.body_case.pose[Hinge::right_elbow_flexion] == 0.6);
    CHECK(end_rad(later) == 2.0);
    CHECK((*later.path->halfway_rad)[index_of(Hinge::right_elbow_flexion)] == Approx(1.3));
}

TEST_CASE("Posing both ends, or an exercise that is held, changes the whole of it", "[whatif]") {
    const Exercise exercise = curl();
    CHECK(held_at(exercise, PoseEnds::both).path);
    Exercise still = exercise;
    still.path.reset();
    Exercise other = still;
    other.body_case.pose[Hinge::right_elbow_flexion] = 1.0;
    CHECK(with_end_of(still, PoseEnds::end, other).body_case.pose[Hinge::right_elbow_flexion] ==
          1.0);
}

} // namespace steelyard::mechanics
