// How long a body takes: one pose, a sweep, a spread; and the same chain by Orocos KDL.

#include "mechanics/body/published_tables.h"
#include "mechanics/range/spread.h"
#include "mechanics/range/sweep.h"
#include "oracle/kdl_body.h"

#include <benchmark/benchmark.h>
#include <cmath>
#include <kdl/chainidsolver_recursive_newton_euler.hpp>
#include <kdl/treeidsolver_recursive_newton_euler.hpp>

using namespace steelyard::mechanics;

namespace {

/// A lunge with a raised arm: no hinge at zero, so that nothing comes for free.
Pose any_pose() {
    Pose pose;
    for (const HingeInfo& hinge : all_hinges())
        pose[hinge.hinge] = hinge.least_rad + 0.37 * (hinge.most_rad - hinge.least_rad);
    pose.anchor.point = {Segment::pelvis, Spot::along, 0.0, Vec3::Zero()};
    return pose;
}

Motion any_motion() {
    Motion motion;
    for (std::size_t i = 0; i < kHingeCount; ++i) {
        motion.rate_rad_s[i] = std::sin(static_cast<double>(i));
        motion.acceleration_rad_s2[i] = 5.0 * std::cos(static_cast<double>(i));
    }
    return motion;
}

BodyCase held_case() {
    BodyCase body_case;
    body_case.body = de_leva_male();
    body_case.pose = any_pose();
    body_case.support = Held{Segment::pelvis};
    return body_case;
}

void body_solve_at_rest(benchmark::State& state) {
    const BodyCase body_case = held_case();
    for (auto _ : state)
        benchmark::DoNotOptimize(solve_body(body_case));
}
BENCHMARK(body_solve_at_rest);

void body_solve_in_motion(benchmark::State& state) {
    const BodyCase body_case = held_case();
    const Motion motion = any_motion();
    for (auto _ : state)
        benchmark::DoNotOptimize(solve_body(body_case, motion));
}
BENCHMARK(body_solve_in_motion);

/// The same body, pose and motion.
void body_by_kdl_tree(benchmark::State& state) {
    const BodyCase body_case = held_case();
    const Motion motion = any_motion();
    const KDL::Tree tree = steelyard::oracle::tree_of(body_case.body);
    KDL::JntArray q(kHingeCount), rate(kHingeCount), acceleration(kHingeCount), torque(kHingeCount);
    for (const auto& [name, element] : tree.getSegments()) {
        const auto hinge = hinge_named(element.segment.getJoint().getName());
        if (!hinge)
            continue;
        q(element.q_nr) = body_case.pose[*hinge];
        rate(element.q_nr) = motion.rate_rad_s[index_of(*hinge)];
        acceleration(element.q_nr) = motion.acceleration_rad_s2[index_of(*hinge)];
    }
    KDL::TreeIdSolver_RNE solver(tree, KDL::Vector(0.0, -kStandardGravity, 0.0));
    const KDL::WrenchMap loads;
    for (auto _ : state) {
        solver.CartToJnt(q, rate, acceleration, loads, torque);
        benchmark::DoNotOptimize(torque.data.data());
    }
}
BENCHMARK(body_by_kdl_tree);

/// Only the chain from the pelvis to the right hand: 13 of the 40 hinges, by KDL's chain solver.
void body_arm_by_kdl_chain(benchmark::State& state) {
    const BodyCase body_case = held_case();
    const Motion motion = any_motion();
    const auto arm =
        steelyard::oracle::chain_between(body_case.body, Segment::pelvis, Segment::right_hand);
    const unsigned joints = arm.chain.getNrOfJoints();
    KDL::JntArray q(joints), rate(joints), acceleration(joints), torque(joints);
    for (unsigned i = 0; i < joints; ++i) {
        q(i) = body_case.pose[arm.hinges[i]];
        rate(i) = motion.rate_rad_s[index_of(arm.hinges[i])];
        acceleration(i) = motion.acceleration_rad_s2[index_of(arm.hinges[i])];
    }
    const KDL::Wrenches loads(arm.chain.getNrOfSegments(), KDL::Wrench::Zero());
    KDL::ChainIdSolver_RNE solver(arm.chain, KDL::Vector(0.0, -kStandardGravity, 0.0));
    for (auto _ : state) {
        solver.CartToJnt(q, rate, acceleration, loads, torque);
        benchmark::DoNotOptimize(torque.data.data());
    }
}
BENCHMARK(body_arm_by_kdl_chain);

/// Rising from a squat with a barbell: 181 poses of the whole body on both feet.
void body_sweep_181(benchmark::State& state) {
    BodyCase body_case = standing(de_leva_male());
    for (const auto& [hinge, angle_deg] :
         {std::pair(Hinge::right_ankle_flexion, 25.0), std::pair(Hinge::right_knee_flexion, 90.0),
          std::pair(Hinge::right_hip_flexion, 95.0)}) {
        body_case.pose[hinge] = degrees(angle_deg);
        body_case.pose[hinge_info(hinge).mirror] = degrees(angle_deg);
    }
    body_case.resistances = {
        {"bar", Barbell{40.0, BodyPoint{Segment::trunk, Spot::upper_back, 0.0, Vec3::Zero()}}}};
    Sweep curve;
    for (auto _ : state)
        benchmark::DoNotOptimize(sweep_into(body_case, PosePath{}, 181, curve));
}
BENCHMARK(body_sweep_181);

void body_spread_10000(benchmark::State& state) {
    BodyCase body_case = standing(de_leva_male());
    body_case.pose[Hinge::right_shoulder_flexion] = degrees(90);
    body_case.resistances = {{"dumbbell", Dumbbell{Segment::right_hand, 5.0}}};
    SpreadInput input;
    input.column = de_leva().male;
    for (auto _ : state)
        benchmark::DoNotOptimize(spread_of(input, body_case, [](const BodyResult& result) {
            return result.muscle(Hinge::right_shoulder_flexion);
        }));
}
BENCHMARK(body_spread_10000)->Unit(benchmark::kMillisecond);

} // namespace
