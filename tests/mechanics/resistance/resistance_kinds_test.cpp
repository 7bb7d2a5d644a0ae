#include "catch.h"
#include "mechanics/resistance/resistance_kinds.h"

#include <set>

using namespace steelyard::mechanics;

namespace {

/// One of each kind, as they come.
std::vector<Resistance> one_of_each() {
    std::vector<Resistance> all;
    const auto add = [&](auto kind) { all.push_back({"it", std::move(kind)}); };
    add(Dumbbell{});
    add(Barbell{});
    add(Kettlebell{});
    add(Cuff{});
    add(PlateMachine{});
    add(Cable{});
    add(CableColumn{});
    add(Band{});
    add(PartnerPush{});
    return all;
}

} // namespace

TEST_CASE("every kind of resistance has a name of its own") {
    const std::vector<Resistance> all = one_of_each();
    REQUIRE(all.size() == std::variant_size_v<decltype(Resistance::kind)>);
    std::set<std::string_view> names;
    for (std::size_t i = 0; i < all.size(); ++i) {
        REQUIRE(all[i].kind.index() == i);
        CHECK(resistance_kind_names()[i] == kind_name(all[i]));
        names.insert(kind_name(all[i]));
    }
    CHECK(names.size() == all.size());
    CHECK(kind_name({"", PlateMachine{}}) == "plate_machine");
    CHECK(usual_name({"", PlateMachine{}}) == "machine");
}

TEST_CASE("the size of a resistance is its mass, its stack, its pull, or no one number") {
    Resistance bell{"", Kettlebell{Segment::left_hand, 16.0}};
    REQUIRE(size_in(bell) == &std::get<Kettlebell>(bell.kind).mass_kg);
    CHECK(size_is(bell) == SizeIs::mass);
    Resistance cable{"", Cable{{}, Vec3::Zero(), 120.0}};
    CHECK(size_is(cable) == SizeIs::pull);
    CHECK(*size_in(cable) == 120.0);
    Resistance band{"", Band{}};
    CHECK(size_is(band) == SizeIs::none);
    for (Resistance& each : one_of_each())
        CHECK((size_in(each) == nullptr) == (size_is(each) == SizeIs::none));
}

TEST_CASE("the body carries weights, and neither a machine's stack nor what pulls or pushes") {
    CHECK(carried_mass({"", Dumbbell{Segment::right_hand, 7.0}}) == 7.0);
    CHECK(carried_mass({"", Barbell{60.0, std::nullopt}}) == 60.0);
    CHECK(carried_mass({"", Kettlebell{Segment::right_hand, 24.0}}) == 24.0);
    CHECK(carried_mass({"", Cuff{{}, 2.5}}) == 2.5);
    CHECK(carried_mass({"", PlateMachine{}}) == 0.0);
    CHECK(carried_mass({"", Cable{}}) == 0.0);
    CHECK(carried_mass({"", CableColumn{}}) == 0.0);
    CHECK(carried_mass({"", Band{}}) == 0.0);
    CHECK(carried_mass({"", PartnerPush{}}) == 0.0);
}

TEST_CASE("a resistance loads the body in the grip, on the back, or where it is strapped") {
    const auto left = carrier_of({"", Dumbbell{Segment::left_hand, 5.0}});
    CHECK(left.segment == Segment::left_hand);
    CHECK(left.spot == Spot::grip);
    CHECK(carrier_of({"", Barbell{}}).segment == Segment::right_hand);
    const BodyPoint back{Segment::trunk, Spot::along, 0.9, Vec3::Zero()};
    CHECK(carrier_of({"", Barbell{20.0, back}}).segment == Segment::trunk);
    PlateMachine machine;
    machine.pad.along = 0.7;
    CHECK(carrier_of({"", machine}).along == 0.7);
}

TEST_CASE("only what is strapped on or pulls at a point can be moved along a limb") {
    std::set<std::string_view> moving;
    for (Resistance& each : one_of_each())
        if (BodyPoint* point = moving_point_in(each)) {
            moving.insert(kind_name(each));
            point->along = 0.25;
            CHECK(carrier_of(each).along == 0.25);
        }
    CHECK(moving == std::set<std::string_view>{"cuff", "plate_machine", "cable", "cable_column",
                                               "band", "partner"});
}

TEST_CASE("a pulley and an anchor in the room are fixtures; an anchor on the body is none") {
    Resistance cable{"", Cable{{}, Vec3(1.0, 2.0, 3.0), 50.0}};
    REQUIRE(fixture_of(cable));
    CHECK(*fixture_of(cable) == Vec3(1.0, 2.0, 3.0));
    CHECK(fixture_name(cable) == "pulley");
    *fixture_in(cable) = Vec3::Zero();
    CHECK(std::get<Cable>(cable.kind).pulley_m == Vec3::Zero());
    Band band;
    CHECK(fixture_name({"", band}) == "anchor");
    CHECK(fixture_of({"", band}));
    band.anchor = BodyPoint{};
    CHECK_FALSE(fixture_of({"", band}));
    CHECK_FALSE(fixture_of({"", Dumbbell{}}));
    Resistance stretched{"", band};
    REQUIRE(slack_length_in(stretched));
    CHECK(*slack_length_in(stretched) == band.slack_length_m);
    CHECK(slack_length_in(cable) == nullptr);
}
