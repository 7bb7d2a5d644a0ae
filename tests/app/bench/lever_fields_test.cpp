#include "app/bench/sample_bench.h"
#include "catch.h"
#include "mechanics/lever/lever_geometry.h"
#include "mechanics/lever/random_lever.h"

#include <algorithm>
#include <cmath>

using namespace steelyard;
using namespace steelyard::app;
using mechanics::kPi;
using scene::LeverPart;
using scene::PartKind;

namespace {

constexpr LeverField kAllFields[] = {LeverField::place,     LeverField::mass,   LeverField::force,
                                     LeverField::direction, LeverField::torque, LeverField::grip};

HandledLever lever_with_everything() {
    mechanics::Lever lever = sample_setup().lever;
    lever.loads.push_back({"rope", mechanics::PointForce{0.7, 40.0, 1.0}});
    lever.loads.push_back({"hinge", mechanics::Couple{-3.0}});
    lever.own_weight = {2.0, 0.3};
    lever.friction = {0.2, 0.01};
    return {lever, 50.0};
}

} // namespace

TEST_CASE("every number that a part lists can be read, and no other can") {
    const HandledLever handled = lever_with_everything();
    for (const LeverPart& part : parts_of(handled.lever)) {
        const std::vector<LeverField> listed = fields_of(handled, part);
        CHECK_FALSE(listed.empty());
        for (const LeverField field : kAllFields) {
            const bool is_listed = std::find(listed.begin(), listed.end(), field) != listed.end();
            INFO(name_of(handled.lever, part) << ": " << name_of(field));
            CHECK(value_of(handled, {part, field}).has_value() == is_listed);
        }
    }
}

TEST_CASE("setting a number changes that number and nothing else") {
    const HandledLever handled = lever_with_everything();
    for (const LeverPart& part : parts_of(handled.lever))
        for (const LeverField field : fields_of(handled, part)) {
            const HandledLever changed = with_value(handled, {part, field}, 0.125);
            INFO(name_of(handled.lever, part) << ": " << name_of(field));
            CHECK(value_of(changed, {part, field}) == 0.125);
            for (const LeverPart& other : parts_of(handled.lever))
                for (const LeverField other_field : fields_of(handled, other))
                    if (!(LeverNumber{other, other_field} == LeverNumber{part, field}))
                        CHECK(value_of(changed, {other, other_field}) ==
                              value_of(handled, {other, other_field}));
        }
}

TEST_CASE("a number that the part does not have leaves the lever as it was") {
    const HandledLever handled = lever_with_everything();
    for (const LeverNumber& number :
         {LeverNumber{kCrate, LeverField::torque}, LeverNumber{kAxis, LeverField::mass},
          LeverNumber{{PartKind::load, 99}, LeverField::mass}}) {
        CHECK_FALSE(value_of(handled, number));
        const HandledLever same = with_value(handled, number, 5.0);
        for (const LeverPart& part : parts_of(handled.lever))
            for (const LeverField field : fields_of(handled, part))
                CHECK(value_of(same, {part, field}) == value_of(handled, {part, field}));
    }
}

TEST_CASE("places are kept on the lever") {
    mechanics::RandomNumbers random(11);
    for (int i = 0; i < 500; ++i) {
        const HandledLever handled{mechanics::random_lever(random, {}), std::nullopt};
        const double length_m = mechanics::path_length(handled.lever.path_m);
        for (const double wanted_m : {-5.0, 0.3 * length_m, length_m + 1.0}) {
            const HandledLever moved = with_value(handled, {kHand, LeverField::place}, wanted_m);
            CHECK(moved.lever.effort.at_m == std::min(std::max(wanted_m, 0.0), length_m));
        }
    }
}

TEST_CASE("masses and the pulls of loads never get negative, the hand may push") {
    HandledLever handled = lever_with_everything();
    const LeverPart rope{PartKind::load, 1};
    CHECK(value_of(with_value(handled, {kCrate, LeverField::mass}, -4.0),
                   {kCrate, LeverField::mass}) == 0.0);
    CHECK(value_of(with_value(handled, {rope, LeverField::force}, -4.0),
                   {rope, LeverField::force}) == 0.0);
    CHECK(value_of(with_value(handled, {kHand, LeverField::force}, -4.0),
                   {kHand, LeverField::force}) == -4.0);
}

TEST_CASE("a direction reads from above -180° to 180° and stays the same direction") {
    const HandledLever handled = lever_with_everything();
    for (double wanted_rad = -20.0; wanted_rad < 20.0; wanted_rad += 0.37) {
        const double kept_rad = with_value(handled, {kHand, LeverField::direction}, wanted_rad)
                                    .lever.effort.direction_rad;
        CHECK(kept_rad > -kPi);
        CHECK(kept_rad <= kPi);
        CHECK(std::cos(kept_rad) == Approx(std::cos(wanted_rad)).margin(1e-13)); // sines of 20 rad
        CHECK(std::sin(kept_rad) == Approx(std::sin(wanted_rad)).margin(1e-13));
    }
    CHECK(with_value(handled, {kHand, LeverField::direction}, -kPi).lever.effort.direction_rad ==
          kPi);
}

TEST_CASE("the keyboard visits every part once") {
    const HandledLever handled = lever_with_everything();
    const std::vector<LeverPart> parts = parts_of(handled.lever);
    CHECK(parts.size() == 3 + handled.lever.loads.size() + handled.lever.path_m.size());
    for (const LeverPart& part : parts) {
        CHECK(std::count(parts.begin(), parts.end(), part) == 1);
        CHECK_FALSE(name_of(handled.lever, part).empty());
    }
}

TEST_CASE("the centre of a weight that is spread evenly is told where the lever's shape has it") {
    HandledLever handled = lever_with_everything();
    handled.lever.own_weight.centre_at_m.reset();
    handled.lever.path_m = {{0.0, 0.0}, {0.6, 0.0}, {1.0, 0.0}};
    const LeverNumber centre{{PartKind::own_weight, 0}, LeverField::place};
    CHECK(value_of(handled, centre).value() == Approx(0.5).epsilon(1e-12)); // the middle
    const HandledLever moved = with_value(handled, centre, 0.2);
    CHECK(moved.lever.own_weight.centre_at_m == 0.2);
    handled.lever.own_weight.mass_kg = 0.0;
    CHECK_FALSE(value_of(handled, centre)); // no weight, no centre
}
