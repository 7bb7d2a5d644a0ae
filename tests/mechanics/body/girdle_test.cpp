#include "catch.h"
#include "mechanics/body/published_tables.h"
#include "mechanics/body/solve_body.h"

#include <cmath>

namespace steelyard::mechanics {

namespace {

/// Rounding in sums of torques of a hundred N·m.
constexpr double kRounding_Nm = 1.0e-10;

constexpr double kDumbbell_kg = 5.0;

/// A person who holds a dumbbell in the right hand.
BodyCase holding(std::initializer_list<std::pair<Hinge, double>> angles_deg) {
    BodyCase body_case = standing(winter_body());
    for (const auto& [hinge, angle_deg] : angles_deg)
        body_case.pose[hinge] = degrees(angle_deg);
    body_case.resistances = {{"dumbbell", Dumbbell{Segment::right_hand, kDumbbell_kg}}};
    return body_case;
}

double muscle_Nm(const BodyCase& body_case, Hinge hinge) {
    return solve_body(body_case).value().muscle(hinge);
}

double arm_kg(const Body& body) {
    return body[Segment::right_upper_arm].mass_kg + body[Segment::right_forearm].mass_kg +
           body[Segment::right_hand].mass_kg;
}

} // namespace

TEST_CASE("The shoulder girdle at rest leaves the shoulders where the table has them", "[body]") {
    const Body body = winter_body();
    const Placement placement = place(body, Pose{});
    const Vec3 right_m = placement[Segment::right_upper_arm].joint_m;
    const Vec3 left_m = placement[Segment::left_upper_arm].joint_m;
    CHECK_THAT(right_m.x(), WithinAbs(placement[Segment::trunk].joint_m.x(), 1e-12));
    CHECK_THAT(right_m.y(), WithinAbs(left_m.y(), 1e-12));
    CHECK((placement[Segment::right_girdle].joint_m - right_m).norm() > 0.1);
    CHECK(body[Segment::right_girdle].mass_kg == 0.0);
}

TEST_CASE(
    "A hanging load asks the girdle for its weight and the arm's times the collar bone's breadth",
    "[body]") {
    const BodyCase body_case = holding({});
    // Everything hangs straight below the shoulder, so that all has its distance from the joint.
    const double breadth_m = body_case.body[Segment::right_girdle].tip_m.z();
    const double weight_N = (kDumbbell_kg + arm_kg(body_case.body)) * kStandardGravity;
    CHECK_THAT(muscle_Nm(body_case, Hinge::right_girdle_elevation),
               WithinAbs(weight_N * breadth_m, kRounding_Nm));
    CHECK_THAT(muscle_Nm(body_case, Hinge::right_girdle_protraction), WithinAbs(0.0, kRounding_Nm));
}

TEST_CASE("With the arm level at the side the girdle holds the shoulder's torque and more",
          "[body]") {
    const BodyCase level = holding({{Hinge::right_shoulder_abduction, 90}});
    const double shoulder_Nm = muscle_Nm(level, Hinge::right_shoulder_abduction);
    const double hanging_Nm = muscle_Nm(holding({}), Hinge::right_girdle_elevation);
    // The lever grows by the collar bone: the same weight at its end, as when the arm hangs.
    CHECK_THAT(muscle_Nm(level, Hinge::right_girdle_elevation),
               WithinAbs(shoulder_Nm + hanging_Nm, kRounding_Nm));
}

TEST_CASE("Bending the elbow saves the girdle what it saves the shoulder", "[body]") {
    const auto raised = [](double elbow_deg) {
        return holding({{Hinge::right_shoulder_abduction, 90},
                        {Hinge::right_shoulder_rotation, 0},
                        {Hinge::right_elbow_flexion, elbow_deg}});
    };
    const double saved_at_shoulder_Nm = muscle_Nm(raised(0), Hinge::right_shoulder_abduction) -
                                        muscle_Nm(raised(90), Hinge::right_shoulder_abduction);
    const double saved_at_girdle_Nm = muscle_Nm(raised(0), Hinge::right_girdle_elevation) -
                                      muscle_Nm(raised(90), Hinge::right_girdle_elevation);
    CHECK(saved_at_shoulder_Nm > 10.0); // 5 kg come some 35 cm nearer
    CHECK_THAT(saved_at_girdle_Nm, WithinAbs(saved_at_shoulder_Nm, kRounding_Nm));
}

TEST_CASE("A load held forward tips the girdle forward by the shoulder's torque", "[body]") {
    const BodyCase forward = holding({{Hinge::right_shoulder_flexion, 90}});
    const Body& body = forward.body;
    // The joint at the breastbone lies before the shoulder, so that the arm is shorter by as much.
    const double nearer_m = body[Segment::right_girdle].joint_m.x();
    const double weight_N = (kDumbbell_kg + arm_kg(body)) * kStandardGravity;
    CHECK_THAT(muscle_Nm(forward, Hinge::right_girdle_rotation),
               WithinAbs(muscle_Nm(forward, Hinge::right_shoulder_flexion) - weight_N * nearer_m,
                         kRounding_Nm));
}

} // namespace steelyard::mechanics
