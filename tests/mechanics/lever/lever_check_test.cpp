#include "catch.h"
#include "mechanics/lever/lever_solve.h"

#include <cmath>
#include <functional>
#include <limits>

using namespace steelyard::mechanics;

namespace {

constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// What the solver says to a sensible lever with one thing changed.
MechanicsError refusal_after(const std::function<void(Lever&)>& change) {
    Lever lever;
    REQUIRE(solve_lever(lever).has_value());
    change(lever);
    const auto result = solve_lever(lever);
    REQUIRE_FALSE(result.has_value());
    CHECK_FALSE(result.error().expected.empty());
    return result.error();
}

} // namespace

TEST_CASE("a lever without length is refused") {
    const auto fault_of = [](std::vector<Vec2> path) {
        return refusal_after([&](Lever& lever) { lever.path_m = std::move(path); }).fault;
    };
    CHECK(fault_of({}) == Fault::zero_length);
    CHECK(fault_of({{1.0, 2.0}}) == Fault::zero_length);
    CHECK(fault_of({{1.0, 2.0}, {1.0, 2.0}}) == Fault::zero_length);
}

TEST_CASE("a number that is not finite is refused by its key") {
    for (const double bad : {kNaN, kInfinity, -kInfinity}) {
        const auto key_of = [&](const std::function<void(Lever&)>& change) {
            const MechanicsError error = refusal_after(change);
            CHECK(error.fault == Fault::not_finite);
            return error.key;
        };
        CHECK(key_of([&](Lever& l) { l.path_m[1].x() = bad; }) == "path");
        CHECK(key_of([&](Lever& l) { l.axis_at_m = bad; }) == "axis");
        CHECK(key_of([&](Lever& l) { l.loads[0].action = Weight{bad, 1.0}; }) == "load[0].at");
        CHECK(key_of([&](Lever& l) { l.loads[0].action = Weight{0.1, bad}; }) == "load[0].mass");
        CHECK(key_of([&](Lever& l) {
                  l.loads.push_back({"second", PointForce{0.1, bad, 0.0}});
              }) == "load[1].force");
        CHECK(key_of([&](Lever& l) {
                  l.loads[0].action = PointForce{0.1, 1.0, bad};
              }) == "load[0].direction");
        CHECK(key_of([&](Lever& l) { l.loads[0].action = Couple{bad}; }) == "load[0].torque");
        CHECK(key_of([&](Lever& l) { l.effort.at_m = bad; }) == "effort.at");
        CHECK(key_of([&](Lever& l) { l.effort.direction_rad = bad; }) == "effort.direction");
        CHECK(key_of([&](Lever& l) { l.own_weight.mass_kg = bad; }) == "own_weight.mass");
        CHECK(key_of([&](Lever& l) { l.own_weight.centre_at_m = bad; }) == "own_weight.centre");
        CHECK(key_of([&](Lever& l) { l.friction.coefficient = bad; }) == "friction.coefficient");
        CHECK(key_of([&](Lever& l) { l.friction.radius_m = bad; }) == "friction.radius");
        CHECK(key_of([&](Lever& l) { l.gravity_m_s2 = bad; }) == "gravity");
    }
}

TEST_CASE("an absurd number is refused by its key") {
    const auto key_of = [](const std::function<void(Lever&)>& change) {
        const MechanicsError error = refusal_after(change);
        CHECK(error.fault == Fault::out_of_range);
        return error.key;
    };
    CHECK(key_of([](Lever& l) { l.path_m[1].x() = 2.0 * kMaxLength_m; }) == "path");
    CHECK(key_of([](Lever& l) { l.loads[0].action = Weight{0.1, -1.0}; }) == "load[0].mass");
    CHECK(key_of([](Lever& l) { l.loads[0].action = Weight{0.1, 1e300}; }) == "load[0].mass");
    CHECK(key_of([](Lever& l) {
              l.loads[0].action = PointForce{0.1, -5.0, 0.0};
          }) == "load[0].force");
    CHECK(key_of([](Lever& l) { l.loads[0].action = Couple{-2.0 * kMaxTorque_Nm}; }) ==
          "load[0].torque");
    CHECK(key_of([](Lever& l) { l.effort.direction_rad = 1e9; }) == "effort.direction");
    CHECK(key_of([](Lever& l) { l.friction.coefficient = -0.1; }) == "friction.coefficient");
    CHECK(key_of([](Lever& l) { l.friction.radius_m = 11.0; }) == "friction.radius");
    CHECK(key_of([](Lever& l) { l.gravity_m_s2 = -9.8; }) == "gravity");
    CHECK(key_of([](Lever& l) { l.loads.resize(65); }) == "load");
}

TEST_CASE("a place off the lever is refused, the very ends are not") {
    const auto error = refusal_after([](Lever& l) { l.axis_at_m = 1.001; });
    CHECK(error.fault == Fault::off_lever);
    CHECK(error.key == "axis");
    CHECK(refusal_after([](Lever& l) { l.effort.at_m = -0.001; }).key == "effort.at");
    CHECK(refusal_after([](Lever& l) {
              l.loads[0].action = Weight{1.5, 1.0};
          }).key == "load[0].at");
    CHECK(refusal_after([](Lever& l) { l.own_weight.centre_at_m = 1.5; }).key ==
          "own_weight.centre");

    Lever lever;
    lever.axis_at_m = 0.0;
    lever.effort.at_m = 1.0;
    lever.own_weight.centre_at_m = 1.0;
    CHECK(solve_lever(lever).has_value());
}

TEST_CASE("the largest lever that is accepted is solved in finite numbers") {
    Lever lever;
    lever.path_m = {{-kMaxLength_m, -kMaxLength_m}, {kMaxLength_m, kMaxLength_m}};
    lever.axis_at_m = 1.0e-6;
    lever.loads = {{"all", Weight{2000.0, kMaxMass_kg}}};
    lever.gravity_m_s2 = kMaxGravity_m_s2;
    lever.effort = {"hand", 2.0e-6, kUp_rad};
    lever.friction = {10.0, 10.0};
    const auto result = solve_lever(lever);
    REQUIRE(result.has_value());
    CHECK(std::isfinite(result->torque_load_Nm));
    CHECK(std::isfinite(result->axis_reaction_N.norm()));
    CHECK(std::isfinite(result->effort_N.value_or(0.0)));
    CHECK(std::isfinite(result->actual_advantage.value_or(0.0)));
}
