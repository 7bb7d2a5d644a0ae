#include "catch.h"
#include "mechanics/lever/lever_geometry.h"
#include "mechanics/lever/lever_solve.h"
#include "mechanics/lever/random_lever.h"

#include <algorithm>
#include <cmath>

using namespace steelyard::mechanics;

namespace {

constexpr int kLevers = 4000;

/// Relative to the sum of all |r|·|F| (or |F|): each of at most seven terms is off by some units
/// of rounding, 1.1e-16.
constexpr double kBalance = 1e-12;

/// Two solutions of one lever, differently described. The effort divides by an arm of at least a
/// tenth of a distance, after a sum whose terms may cancel to a hundredth: 1e-16 · 10 · 100 · some.
constexpr double kSame = 1e-11;

LeverResult solved(const Lever& lever) {
    const auto result = solve_lever(lever);
    REQUIRE(result.has_value());
    return *result;
}

/// Everything that acts on a solved lever, axis reaction left out.
std::vector<ForceReading> all_pulls(const LeverResult& result) {
    std::vector<ForceReading> pulls = result.loads;
    pulls.push_back(result.own_weight);
    pulls.push_back(result.effort);
    return pulls;
}

/// Sum of the sizes of all forces [N] and of all torques they could have at most [N·m].
struct Gross {
    double force_N = 0.0;
    double torque_Nm = 0.0;
};

Gross gross_of(const LeverResult& result) {
    Gross gross;
    for (const ForceReading& pull : all_pulls(result)) {
        gross.force_N += pull.force_N.norm();
        gross.torque_Nm += pull.force_N.norm() * (pull.point_m - result.axis_m).norm();
        if (pull.force_N.norm() == 0.0)
            gross.torque_Nm += std::abs(pull.torque_Nm);
    }
    return gross;
}

double allowed_N(const LeverResult& result) {
    return kSame * (gross_of(result).force_N +
                    gross_of(result).torque_Nm / std::max(result.effort_arm_m, 1e-3));
}

void check_same_effort(const LeverResult& one, const LeverResult& other) {
    REQUIRE(one.effort_N.has_value() == other.effort_N.has_value());
    CHECK_THAT(one.effort_N.value_or(0.0), WithinAbs(other.effort_N.value_or(0.0), allowed_N(one)));
}

/// A turn about the origin.
Vec2 turned(const Vec2& v, double angle_rad) {
    const double c = std::cos(angle_rad);
    const double s = std::sin(angle_rad);
    return {c * v.x() - s * v.y(), s * v.x() + c * v.y()};
}

template <typename Change> void change_forces(Lever& lever, Change change) {
    for (Load& load : lever.loads)
        if (auto* force = std::get_if<PointForce>(&load.action))
            change(*force);
}

template <typename Change> void change_couples(Lever& lever, Change change) {
    for (Load& load : lever.loads)
        if (auto* couple = std::get_if<Couple>(&load.action))
            change(*couple);
}

} // namespace

TEST_CASE("moments and forces balance on every lever") {
    RandomNumbers random(1);
    for (int i = 0; i < kLevers; ++i) {
        const bool is_dry = i % 2 == 0;
        const LeverResult result = solved(random_lever(random, {true, true, is_dry}));
        if (!result.effort_N)
            continue;
        // The torques are worked out again here, from points and forces.
        double torque_Nm = is_dry ? result.torque_friction_Nm : 0.0;
        Vec2 force_N = result.axis_reaction_N;
        for (const ForceReading& pull : all_pulls(result)) {
            const Vec2 r = pull.point_m - result.axis_m;
            torque_Nm += pull.force_N.norm() > 0.0
                             ? r.x() * pull.force_N.y() - r.y() * pull.force_N.x()
                             : pull.torque_Nm;
            force_N += pull.force_N;
        }
        const Gross gross = gross_of(result);
        CHECK_THAT(torque_Nm, WithinAbs(0.0, kBalance * gross.torque_Nm));
        CHECK_THAT(force_N.norm(), WithinAbs(0.0, kBalance * gross.force_N));
    }
}

TEST_CASE("every reading's torque is its force times its moment arm") {
    RandomNumbers random(2);
    for (int i = 0; i < kLevers; ++i) {
        const LeverResult result = solved(random_lever(random, {false, true, false}));
        for (const ForceReading& pull : all_pulls(result)) {
            const double room_m = kBalance * (pull.point_m - result.axis_m).norm();
            CHECK_THAT(std::abs(pull.torque_Nm),
                       WithinAbs(pull.arm_m * pull.force_N.norm(), room_m * pull.force_N.norm()));
            CHECK_THAT((pull.foot_m - result.axis_m).norm(), WithinAbs(pull.arm_m, room_m));
        }
    }
}

TEST_CASE("a lever seen in a mirror has the same effort, arms and class") {
    RandomNumbers random(3);
    for (int i = 0; i < kLevers; ++i) {
        const Lever lever = random_lever(random, {true, true, i % 2 == 0});
        Lever mirrored = lever;
        for (Vec2& corner : mirrored.path_m)
            corner.x() = -corner.x();
        mirrored.effort.direction_rad = kPi - lever.effort.direction_rad;
        change_forces(mirrored, [](PointForce& f) { f.direction_rad = kPi - f.direction_rad; });
        change_couples(mirrored, [](Couple& c) { c.torque_Nm = -c.torque_Nm; });

        const LeverResult one = solved(lever);
        const LeverResult other = solved(mirrored);
        check_same_effort(one, other);
        CHECK(one.lever_class == other.lever_class);
        CHECK(one.status == other.status);
        CHECK_THAT(one.effort_arm_m, WithinRel(other.effort_arm_m, kSame));
        CHECK_THAT(one.torque_load_Nm,
                   WithinAbs(-other.torque_load_Nm, kBalance * gross_of(one).torque_Nm));
        CHECK_THAT(one.axis_reaction_N.x(), WithinAbs(-other.axis_reaction_N.x(), allowed_N(one)));
        CHECK_THAT(one.axis_reaction_N.y(), WithinAbs(other.axis_reaction_N.y(), allowed_N(one)));
    }
}

TEST_CASE("in other units of length and force the lever is the same") {
    // The international foot and the pound-force, exact by definition: NIST SP 811 (2008), B.8.
    constexpr double kFeet = 1.0 / 0.3048;
    constexpr double kPounds = 1.0 / 4.4482216152605;
    RandomNumbers random(4);
    for (int i = 0; i < kLevers; ++i) {
        const Lever lever = random_lever(random, {true, true, i % 2 == 0});
        Lever other_units = lever;
        for (Vec2& corner : other_units.path_m)
            corner *= kFeet;
        other_units.axis_at_m *= kFeet;
        other_units.effort.at_m *= kFeet;
        other_units.friction.radius_m *= kFeet;
        other_units.own_weight.mass_kg *= kPounds;
        if (other_units.own_weight.centre_at_m)
            *other_units.own_weight.centre_at_m *= kFeet;
        change_couples(other_units, [](Couple& c) { c.torque_Nm *= kFeet * kPounds; });
        change_forces(other_units, [](PointForce& f) {
            f.at_m *= kFeet;
            f.magnitude_N *= kPounds;
        });
        for (Load& load : other_units.loads)
            if (auto* weight = std::get_if<Weight>(&load.action))
                *weight = {weight->at_m * kFeet, weight->mass_kg * kPounds};

        const LeverResult si = solved(lever);
        const LeverResult us = solved(other_units);
        REQUIRE(si.effort_N.has_value() == us.effort_N.has_value());
        CHECK_THAT(si.effort_N.value_or(0.0),
                   WithinAbs(us.effort_N.value_or(0.0) / kPounds, allowed_N(si)));
        CHECK_THAT(si.torque_load_Nm, WithinAbs(us.torque_load_Nm / (kFeet * kPounds),
                                                kBalance * gross_of(si).torque_Nm));
        CHECK_THAT(si.effort_arm_m, WithinRel(us.effort_arm_m / kFeet, kSame));
        CHECK(si.lever_class == us.lever_class);
        CHECK(si.ideal_advantage.has_value() == us.ideal_advantage.has_value());
    }
}

TEST_CASE("turned in space together with all its forces the lever is the same") {
    RandomNumbers random(5);
    for (int i = 0; i < kLevers; ++i) {
        Lever lever = random_lever(random, {true, false, i % 2 == 0});
        // Weights stay vertical when the lever turns, so here they are forces.
        for (Load& load : lever.loads)
            if (const auto* weight = std::get_if<Weight>(&load.action))
                load.action = PointForce{weight->at_m, weight->mass_kg * 9.0, kDown_rad};
        const double turn_rad = random.between(-3.0, 3.0);
        Lever tilted = lever;
        for (Vec2& corner : tilted.path_m)
            corner = turned(corner, turn_rad);
        tilted.effort.direction_rad += turn_rad;
        change_forces(tilted, [&](PointForce& f) { f.direction_rad += turn_rad; });

        const LeverResult one = solved(lever);
        const LeverResult other = solved(tilted);
        check_same_effort(one, other);
        CHECK_THAT((turned(one.axis_reaction_N, turn_rad) - other.axis_reaction_N).norm(),
                   WithinAbs(0.0, allowed_N(one)));
    }
}

TEST_CASE("moving a force along its line of action changes nothing") {
    RandomNumbers random(6);
    for (int i = 0; i < kLevers; ++i) {
        Lever lever = random_lever(random, {true, true, i % 2 == 0});
        const double length_m = path_length(lever.path_m);
        // A uniform lever's centre would move with the arm that is added below.
        if (!lever.own_weight.centre_at_m)
            lever.own_weight.centre_at_m = 0.5 * length_m;
        const PointForce pull{random.between(0.0, length_m), random.between(1.0, 500.0),
                              random.between(-kPi, kPi)};
        lever.loads.push_back({"moved", pull});

        // The new point of application is the end of an arm that is welded to the lever's end.
        Lever moved = lever;
        const Vec2 new_point_m = point_at(lever.path_m, pull.at_m) +
                                 unit_vector(pull.direction_rad) * random.between(-2.0, 2.0);
        moved.path_m.push_back(new_point_m);
        moved.loads.back().action =
            PointForce{path_length(moved.path_m), pull.magnitude_N, pull.direction_rad};

        const LeverResult one = solved(lever);
        const LeverResult other = solved(moved);
        REQUIRE(one.effort_N.has_value() == other.effort_N.has_value());
        const double room_N = std::max(allowed_N(one), allowed_N(other));
        CHECK_THAT(one.effort_N.value_or(0.0), WithinAbs(other.effort_N.value_or(0.0), room_N));
        CHECK_THAT((one.axis_reaction_N - other.axis_reaction_N).norm(), WithinAbs(0.0, room_N));
        // Its arm is at most some metres, known to a few units of rounding.
        CHECK_THAT(one.loads.back().arm_m, WithinAbs(other.loads.back().arm_m, kBalance));
    }
}

TEST_CASE("the efforts of single loads add up to the effort of all") {
    RandomNumbers random(7);
    for (int i = 0; i < kLevers; ++i) {
        const Lever lever = random_lever(random, {true, true, false});
        Lever bare = lever;
        bare.loads.clear();
        double sum_N = solved(bare).effort_N.value();
        for (const Load& load : lever.loads) {
            Lever single = lever;
            single.own_weight.mass_kg = 0.0;
            single.loads = {load};
            sum_N += solved(single).effort_N.value();
        }
        const LeverResult result = solved(lever);
        CHECK_THAT(sum_N, WithinAbs(result.effort_N.value(), allowed_N(result)));
    }
}

TEST_CASE("the work put in is the work that comes out") {
    // Turned by a finite angle from half of it before to half after, a point moves along the chord
    // that lies square to its radius: the work of a constant force is 2 sin(angle/2) · torque.
    constexpr double kTurn_rad = 0.02;
    RandomNumbers random(8);
    for (int i = 0; i < kLevers; ++i) {
        const bool is_dry = i % 2 == 0;
        const LeverResult result = solved(random_lever(random, {false, true, is_dry}));
        if (!result.effort_N)
            continue;
        // The effort turns the lever its own way.
        const double turn_rad = std::copysign(kTurn_rad, result.torque_effort_Nm);
        const auto work_J = [&](const ForceReading& pull) {
            const Vec2 r = pull.point_m - result.axis_m;
            return pull.force_N.dot(turned(r, 0.5 * turn_rad) - turned(r, -0.5 * turn_rad));
        };
        double lifted_J = -work_J(result.own_weight);
        for (const ForceReading& load : result.loads)
            lifted_J -= work_J(load);
        const double put_in_J = work_J(result.effort);
        // Displacements are differences of 1e-2 of the radius: two digits less than kBalance.
        const double room_J = 100.0 * kBalance * gross_of(result).torque_Nm * kTurn_rad;
        if (!is_dry)
            CHECK_THAT(put_in_J, WithinAbs(lifted_J, room_J));
        if (result.efficiency && *result.effort_N != 0.0)
            CHECK_THAT(put_in_J * *result.efficiency, WithinAbs(std::abs(lifted_J), room_J));
    }
}

TEST_CASE("axle friction only ever makes it harder to move the load and easier to hold it") {
    RandomNumbers random(9);
    int with_both = 0;
    for (int i = 0; i < kLevers; ++i) {
        Lever lever = random_lever(random, {true, true, true});
        const LeverResult dry = solved(lever);
        const double circle_m = lever.friction.coefficient * lever.friction.radius_m;
        lever.friction = {};
        const double smooth_N = solved(lever).effort_N.value();
        // Along the sense in which the effort works against the load.
        const double sense = std::copysign(1.0, smooth_N);
        if (dry.effort_N) {
            CHECK(sense * *dry.effort_N >= sense * smooth_N - allowed_N(dry));
            // The friction circle: the reaction passes the axis at its radius.
            CHECK_THAT(std::abs(dry.torque_friction_Nm),
                       WithinAbs(circle_m * dry.axis_reaction_N.norm(),
                                 kBalance * gross_of(dry).torque_Nm));
            REQUIRE(dry.efficiency.has_value());
            CHECK(*dry.efficiency >= 0.0);
            CHECK(*dry.efficiency <= 1.0 + kSame);
        } else {
            CHECK(dry.status == LeverStatus::friction_locks);
            CHECK(dry.effort_arm_m <= circle_m);
        }
        if (dry.effort_holding_N)
            CHECK(sense * *dry.effort_holding_N <= sense * smooth_N + allowed_N(dry));
        if (dry.effort_N && dry.effort_holding_N)
            ++with_both;
    }
    // Most levers have both, or this test says little.
    CHECK(with_both > kLevers * 9 / 10);
}

TEST_CASE("the hand moves a dry lever only outside of holding and moving") {
    RandomNumbers random(10);
    for (int i = 0; i < kLevers; ++i) {
        const Lever lever = random_lever(random, {true, true, true});
        const LeverResult dry = solved(lever);
        if (!dry.effort_N || !dry.effort_holding_N)
            continue;
        const double width_N = *dry.effort_N - *dry.effort_holding_N;
        if (std::abs(width_N) < 1e-6)
            continue;
        const double share = random.between(0.01, 0.99);
        CHECK(balance_by_hand(lever, dry, *dry.effort_holding_N + share * width_N).net_torque_Nm ==
              0.0);
        const double more =
            balance_by_hand(lever, dry, *dry.effort_N + 0.01 * width_N).net_torque_Nm;
        const double less =
            balance_by_hand(lever, dry, *dry.effort_holding_N - 0.01 * width_N).net_torque_Nm;
        // More than enough turns it as the effort does, less than enough the other way.
        CHECK(more * less < 0.0);
        CHECK(more * dry.torque_load_Nm < 0.0);
    }
}
