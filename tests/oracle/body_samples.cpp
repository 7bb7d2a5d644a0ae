// Prints cases that have a closed form, and our torques for them, for body_closed_forms.py:
// one line each, a word for the kind of case and numbers of 17 digits.

#include "mechanics/body/published_tables.h"
#include "mechanics/lever/random_lever.h"

#include <cstdio>
#include <initializer_list>

using namespace steelyard::mechanics;

namespace {

constexpr int kCases = 200;

BodyCase held(const Body& body) {
    BodyCase body_case = standing(body);
    body_case.pose.anchor.point = {Segment::pelvis, Spot::along, 0.0, Vec3::Zero()};
    body_case.support = Held{Segment::pelvis};
    return body_case;
}

void print(const char* kind, std::initializer_list<double> numbers) {
    std::printf("%s", kind);
    for (const double number : numbers)
        std::printf(" %.17g", number);
    std::printf("\n");
}

Body random_person(RandomNumbers& random) {
    return body_from(random.one_in(2) ? de_leva() : winter(), Sex::male, random.between(1.5, 2.0),
                     random.between(50.0, 110.0))
        .value();
}

double inertia(const SegmentBody& segment, Eigen::Index axis) {
    return segment.inertia_kg_m2(axis, axis);
}

/// An arm in the sagittal plane with a dumbbell: a double pendulum with a mass at its end.
void print_swinging_arm(RandomNumbers& random) {
    Body body = random_person(random);
    SegmentBody& hand = body[Segment::right_hand];
    hand.mass_kg = 0.0;
    hand.inertia_kg_m2.setZero();
    BodyCase body_case = held(body);
    Motion motion;
    const double load_kg = random.between(0.0, 30.0);
    body_case.resistances = {{"dumbbell", Dumbbell{Segment::right_hand, load_kg}}};
    const Hinge shoulder = Hinge::right_shoulder_flexion;
    const Hinge elbow = Hinge::right_elbow_flexion;
    for (const Hinge hinge : {shoulder, elbow}) {
        body_case.pose[hinge] = random.between(0.0, 2.5);
        motion.rate_rad_s[index_of(hinge)] = random.between(-4.0, 4.0);
        motion.acceleration_rad_s2[index_of(hinge)] = random.between(-15.0, 15.0);
    }
    const BodyResult result = solve_body(body_case, motion).value();
    const SegmentBody& upper = body[Segment::right_upper_arm];
    const SegmentBody& fore = body[Segment::right_forearm];
    print("arm",
          {body_case.pose[shoulder], body_case.pose[elbow], motion.rate_rad_s[index_of(shoulder)],
           motion.rate_rad_s[index_of(elbow)], motion.acceleration_rad_s2[index_of(shoulder)],
           motion.acceleration_rad_s2[index_of(elbow)], upper.mass_kg, -upper.com_m.y(),
           upper.length_m, inertia(upper, 2), fore.mass_kg, -fore.com_m.y(), inertia(fore, 2),
           load_kg, fore.length_m + body.grip_from_wrist_m, result.muscle(shoulder),
           result.muscle(elbow)});
}

/// A stiff leg that swings about all three axes of its hip, everything of it in the thigh.
void print_swinging_leg(RandomNumbers& random) {
    Body body = random_person(random);
    for (const Segment part : {Segment::right_shank, Segment::right_foot, Segment::right_toes}) {
        body[part].mass_kg = 0.0;
        body[part].inertia_kg_m2.setZero();
    }
    BodyCase body_case = held(body);
    Motion motion;
    const std::array<Hinge, 3> hinges{Hinge::right_hip_flexion, Hinge::right_hip_abduction,
                                      Hinge::right_hip_rotation};
    for (const Hinge hinge : hinges) {
        body_case.pose[hinge] = random.between(-0.5, 0.7);
        motion.rate_rad_s[index_of(hinge)] = random.between(-4.0, 4.0);
        motion.acceleration_rad_s2[index_of(hinge)] = random.between(-15.0, 15.0);
    }
    const BodyResult result = solve_body(body_case, motion).value();
    const SegmentBody& thigh = body[Segment::right_thigh];
    const auto q = [&](std::size_t i) { return body_case.pose[hinges[i]]; };
    const auto w = [&](std::size_t i) { return motion.rate_rad_s[index_of(hinges[i])]; };
    const auto a = [&](std::size_t i) { return motion.acceleration_rad_s2[index_of(hinges[i])]; };
    print("leg", {q(0), q(1), q(2), w(0), w(1), w(2), a(0), a(1), a(2), thigh.mass_kg,
                  -thigh.com_m.y(), inertia(thigh, 0), inertia(thigh, 1), inertia(thigh, 2),
                  result.muscle(hinges[0]), result.muscle(hinges[1]), result.muscle(hinges[2])});
}

} // namespace

int main() {
    RandomNumbers random(314159);
    for (int i = 0; i < kCases; ++i) {
        print_swinging_arm(random);
        print_swinging_leg(random);
    }
}
