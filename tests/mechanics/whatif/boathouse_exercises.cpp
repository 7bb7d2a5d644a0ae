#include "mechanics/whatif/boathouse_exercises.h"

#include "mechanics/body/published_tables.h"

namespace steelyard::mechanics {
namespace {

/// Seated upright on a bench that holds the pelvis.
Exercise seated() {
    Exercise exercise;
    exercise.body_case = standing(winter_body());
    exercise.body_case.support = Held{Segment::pelvis};
    exercise.body_case.pose.anchor.point = {Segment::pelvis, Spot::seat, 0.0, Vec3::Zero()};
    return exercise;
}

BodyPoint right_grip() {
    return {Segment::right_hand, Spot::grip, 0.0, Vec3::Zero()};
}

/// Where the right hand grips in the exercise's pose.
Vec3 grip_place(const Exercise& exercise) {
    const Body& body = exercise.body_case.body;
    return place(body, exercise.body_case.pose)[Segment::right_hand].at(
        *local_point(body, right_grip()));
}

} // namespace

Exercise curl() {
    Exercise exercise = seated();
    exercise.body_case.pose[Hinge::right_elbow_flexion] = degrees(10.0);
    exercise.body_case.resistances = {{"dumbbell", Dumbbell{Segment::right_hand, 8.0}}};
    exercise.path = PosePath{exercise.body_case.pose.angle_rad};
    exercise.path->end_angle_rad[index_of(Hinge::right_elbow_flexion)] = degrees(130.0);
    return exercise;
}

Exercise curl_with_tempo() {
    Exercise exercise = curl();
    exercise.tempo = Tempo{2.0, 0.0, 2.0};
    return exercise;
}

Exercise stoop() {
    Exercise exercise = seated();
    Pose& pose = exercise.body_case.pose;
    pose[Hinge::lumbar_flexion] = degrees(50.0);
    for (const Hinge shoulder : {Hinge::right_shoulder_flexion, Hinge::left_shoulder_flexion})
        pose[shoulder] = degrees(65.0); // 15 degrees forward of hanging
    exercise.body_case.resistances = {{"right dumbbell", Dumbbell{Segment::right_hand, 10.0}},
                                      {"left dumbbell", Dumbbell{Segment::left_hand, 10.0}}};
    return exercise;
}

Exercise cable_hold() {
    Exercise exercise = seated();
    exercise.body_case.pose[Hinge::right_elbow_flexion] = degrees(90.0);
    const Vec3 pulley_m = grip_place(exercise) + Vec3(0.8, -0.4, 0.0);
    exercise.body_case.resistances = {{"cable", Cable{right_grip(), pulley_m, 60.0}}};
    return exercise;
}

Exercise band_hold() {
    Exercise exercise = seated();
    exercise.body_case.pose[Hinge::right_elbow_flexion] = degrees(90.0);
    Band band;
    band.at = right_grip();
    band.anchor = Vec3(grip_place(exercise) + Vec3(0.2, -1.0, 0.0));
    band.slack_length_m = 0.7;
    band.law = LinearBand{150.0};
    exercise.body_case.resistances = {{"band", band}};
    return exercise;
}

} // namespace steelyard::mechanics
