// Joint torques against Orocos KDL's recursive Newton–Euler solvers, on chains and trees that no
// person has, in motion and under load.

#include "catch.h"
#include "mechanics/body/published_tables.h"
#include "oracle/kdl_body.h"
#include "oracle/random_body.h"

#include <algorithm>
#include <cmath>
#include <kdl/chainidsolver_recursive_newton_euler.hpp>
#include <kdl/treeidsolver_recursive_newton_euler.hpp>

using namespace steelyard::mechanics;
using namespace steelyard::oracle;

namespace {

constexpr int kTrees = 10000;
constexpr int kChains = 10000;

/// Two orders of summing some hundred products in double precision agree to about 1e-13 of the
/// largest torque of the body. A term left out or turned the wrong way misses by a part that one
/// can see, so four digits of room cost nothing, and no seed fails for its rounding.
constexpr double kRelative = 1.0e-9;

double largest(const PerHinge& values) {
    double most = 0.0;
    for (const double value : values)
        most = std::max(most, std::abs(value));
    return most;
}

KDL::Vector gravity_in(const Mat3& base) {
    return to_kdl(Vec3(base.transpose() * Vec3(0.0, -kStandardGravity, 0.0)));
}

/// Our torques of a body whose pelvis rests, by KDL's tree solver.
PerHinge by_kdl_tree(const BodyCase& body_case, const Motion& motion, const BodyResult& ours) {
    Body loaded = body_case.body;
    const KDL::Tree tree = tree_of(loaded);
    KDL::JntArray q(kHingeCount), rate(kHingeCount), acceleration(kHingeCount), torque(kHingeCount);
    std::array<std::size_t, kHingeCount> slot{};
    for (const auto& [name, element] : tree.getSegments()) {
        const KDL::Joint& joint = element.segment.getJoint();
        if (joint.getType() == KDL::Joint::Fixed)
            continue;
        const std::size_t hinge = index_of(*hinge_named(joint.getName()));
        slot[hinge] = element.q_nr;
        q(element.q_nr) = body_case.pose.angle_rad[hinge];
        rate(element.q_nr) = motion.rate_rad_s[hinge];
        acceleration(element.q_nr) = motion.acceleration_rad_s2[hinge];
    }
    KDL::WrenchMap loads;
    for (const BodyForce& force : ours.forces) {
        if (force.origin != ForceOrigin::resistance || force.segment == Segment::pelvis)
            continue;
        const std::string name(segment_info(force.segment).name);
        const KDL::Wrench wrench = wrench_on(ours.placement[force.segment], force);
        const auto [at, fresh] = loads.emplace(name, wrench);
        if (!fresh)
            at->second += wrench;
    }
    KDL::TreeIdSolver_RNE solver(tree, gravity_in(ours.placement[Segment::pelvis].rotation));
    REQUIRE(solver.CartToJnt(q, rate, acceleration, loads, torque) == KDL::SolverI::E_NOERROR);
    PerHinge result{};
    for (std::size_t hinge = 0; hinge < kHingeCount; ++hinge)
        result[hinge] = torque(static_cast<unsigned>(slot[hinge]));
    return result;
}

void check_alike(const PerHinge& ours, const PerHinge& theirs, const std::vector<Hinge>& hinges) {
    const double scale = std::max(largest(theirs), 1.0);
    for (const Hinge hinge : hinges) {
        const double miss = std::abs(ours[index_of(hinge)] - theirs[index_of(hinge)]) / scale;
        if (!(miss <= kRelative)) {
            CAPTURE(hinge_info(hinge).name, ours[index_of(hinge)], theirs[index_of(hinge)]);
            CHECK(miss <= kRelative);
        }
    }
}

std::vector<Hinge> every_hinge() {
    std::vector<Hinge> hinges;
    for (const HingeInfo& info : all_hinges())
        hinges.push_back(info.hinge);
    return hinges;
}

/// Takes the mass of all segments that are not part of a chain.
void keep_only(Body& body, const KdlChain& chain, Segment resting) {
    for (const SegmentInfo& info : all_segments()) {
        const bool kept = info.segment == resting ||
                          std::find(chain.segments.begin(), chain.segments.end(), info.segment) !=
                              chain.segments.end();
        if (!kept) {
            body[info.segment].mass_kg = 0.0;
            body[info.segment].inertia_kg_m2.setZero();
        }
    }
}

} // namespace

TEST_CASE("Whole random bodies in motion under loads agree with KDL's tree solver", "[kdl]") {
    RandomNumbers random(20261125);
    const std::vector<Hinge> hinges = every_hinge();
    for (int n = 0; n < kTrees; ++n) {
        CAPTURE(n);
        BodyCase body_case;
        body_case.body = random_body(random);
        body_case.pose = random_pose(random, Segment::pelvis);
        body_case.support = Held{Segment::pelvis};
        for (std::size_t i = random.below(kMaxResistances); i > 0; --i)
            body_case.resistances.push_back(
                random_push(random, static_cast<Segment>(random.below(kSegmentCount))));
        const Motion motion = random.one_in(5) ? Motion{} : random_motion(random);
        const auto ours = solve_body(body_case, motion);
        REQUIRE(ours.has_value());
        check_alike(ours->muscle_Nm, by_kdl_tree(body_case, motion, *ours), hinges);
    }
}

TEST_CASE("Random chains through the body from a resting foot or hand agree with KDL's chain "
          "solver",
          "[kdl]") {
    RandomNumbers random(19960529);
    const std::array<Segment, 6> ends{Segment::right_foot, Segment::left_toes,
                                      Segment::right_hand, Segment::left_forearm,
                                      Segment::head,       Segment::pelvis};
    for (int n = 0; n < kChains;) {
        const Segment resting = ends[random.below(ends.size())];
        const Segment tip = random.one_in(2) ? Segment::left_hand : Segment::left_shank;
        // A chain that goes inwards and out again through the same segment is none.
        if (is_at_or_beyond(resting, Segment::trunk) && is_at_or_beyond(tip, Segment::trunk))
            continue;
        if (is_at_or_beyond(resting, Segment::left_thigh) &&
            is_at_or_beyond(tip, Segment::left_thigh))
            continue;
        ++n;
        CAPTURE(n, segment_info(resting).name, segment_info(tip).name);
        BodyCase body_case;
        body_case.body = random_body(random);
        const KdlChain chain = chain_between(body_case.body, resting, tip);
        keep_only(body_case.body, chain, resting);
        body_case.pose = random_pose(random, resting);
        body_case.support = Held{resting};
        body_case.resistances = {random_push(random, tip)};
        Motion motion = random_motion(random);
        const auto ours = solve_body(body_case, motion);
        REQUIRE(ours.has_value());

        const unsigned joints = chain.chain.getNrOfJoints();
        KDL::JntArray q(joints), rate(joints), acceleration(joints), torque(joints);
        for (unsigned i = 0; i < joints; ++i) {
            const std::size_t hinge = index_of(chain.hinges[i]);
            q(i) = body_case.pose.angle_rad[hinge];
            rate(i) = motion.rate_rad_s[hinge];
            acceleration(i) = motion.acceleration_rad_s2[hinge];
        }
        KDL::Wrenches loads(chain.chain.getNrOfSegments(), KDL::Wrench::Zero());
        loads.back() = wrench_on(ours->placement[tip], ours->forces[0]);
        KDL::ChainIdSolver_RNE solver(chain.chain, gravity_in(ours->placement[resting].rotation));
        REQUIRE(solver.CartToJnt(q, rate, acceleration, loads, torque) == KDL::SolverI::E_NOERROR);
        PerHinge theirs{};
        for (unsigned i = 0; i < joints; ++i)
            theirs[index_of(chain.hinges[i])] = torque(i);
        check_alike(ours->muscle_Nm, theirs, chain.hinges);
    }
}

TEST_CASE("A dumbbell is a mass on the hand, for KDL as for us", "[kdl]") {
    RandomNumbers random(7);
    for (int n = 0; n < 100; ++n) {
        BodyCase body_case;
        body_case.body = winter_body();
        body_case.pose = random_pose(random, Segment::pelvis);
        body_case.support = Held{Segment::pelvis};
        body_case.resistances = {{"dumbbell", Dumbbell{Segment::right_hand, 7.5}}};
        const Motion motion = random_motion(random);
        const BodyResult ours = solve_body(body_case, motion).value();

        // The same mass as part of the hand.
        BodyCase solid = body_case;
        solid.resistances.clear();
        SegmentBody& hand = solid.body[Segment::right_hand];
        const Vec3 grip_m(0.0, -solid.body.grip_from_wrist_m, 0.0);
        const double total_kg = hand.mass_kg + 7.5;
        const Vec3 com_m = (hand.mass_kg * hand.com_m + 7.5 * grip_m) / total_kg;
        for (const auto& [mass_kg, at_m] :
             {std::pair(hand.mass_kg, hand.com_m), std::pair(7.5, grip_m)}) {
            const Vec3 r = at_m - com_m;
            hand.inertia_kg_m2 +=
                mass_kg * (r.squaredNorm() * Mat3::Identity() - r * r.transpose());
        }
        hand.mass_kg = total_kg;
        hand.com_m = com_m;
        const BodyResult result = solve_body(solid, motion).value();
        check_alike(ours.muscle_Nm, by_kdl_tree(solid, motion, result), every_hinge());
    }
}
