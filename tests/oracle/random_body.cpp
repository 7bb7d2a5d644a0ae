#include "oracle/random_body.h"

namespace steelyard::oracle {

using namespace mechanics;

namespace {

Vec3 random_vector(RandomNumbers& random, double size) {
    return {random.between(-size, size), random.between(-size, size), random.between(-size, size)};
}

/// Inertia of a cloud of four point masses: every such matrix belongs to some solid.
Mat3 random_inertia(RandomNumbers& random, double mass_kg) {
    Mat3 inertia = Mat3::Zero();
    for (int i = 0; i < 4; ++i) {
        const Vec3 r = random_vector(random, 0.2);
        inertia += 0.25 * mass_kg * (r.squaredNorm() * Mat3::Identity() - r * r.transpose());
    }
    return inertia;
}

} // namespace

Body random_body(RandomNumbers& random) {
    Body body;
    body.height_m = 1.7;
    for (SegmentBody& segment : body.segments) {
        segment.mass_kg = random.between(0.1, 12.0);
        segment.com_m = random_vector(random, 0.3);
        segment.inertia_kg_m2 = random_inertia(random, segment.mass_kg);
        segment.joint_m = random_vector(random, 0.5);
        segment.tip_m = random_vector(random, 0.5);
        body.mass_kg += segment.mass_kg;
    }
    body.segments[0].joint_m.setZero();
    return body;
}

Pose random_pose(RandomNumbers& random, Segment anchored) {
    Pose pose;
    for (const HingeInfo& hinge : all_hinges())
        pose[hinge.hinge] = random.between(hinge.least_rad, hinge.most_rad);
    pose.anchor.point = {anchored, Spot::along, random.between(0.0, 1.0), Vec3::Zero()};
    pose.anchor.at_m = random_vector(random, 2.0);
    pose.anchor.turn_rad = random.between(-3.0, 3.0);
    pose.anchor.lean_rad = random.between(-3.0, 3.0);
    pose.anchor.side_lean_rad = random.between(-3.0, 3.0);
    return pose;
}

Motion random_motion(RandomNumbers& random) {
    Motion motion;
    for (std::size_t i = 0; i < kHingeCount; ++i) {
        motion.rate_rad_s[i] = random.between(-5.0, 5.0);
        motion.acceleration_rad_s2[i] = random.between(-20.0, 20.0);
    }
    return motion;
}

Resistance random_push(RandomNumbers& random, Segment segment) {
    PartnerPush push;
    push.at = {segment, Spot::along, random.between(-1.0, 2.0), random_vector(random, 0.2)};
    push.direction = random_vector(random, 1.0) + Vec3(0.0, 0.0, 1.5);
    push.force_N = random.between(0.0, 300.0);
    push.follows_segment = random.one_in(2);
    return {"push", push};
}

} // namespace steelyard::oracle
