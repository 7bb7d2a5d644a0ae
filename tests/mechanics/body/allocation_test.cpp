// The hot path takes no memory: every allocation of this program is counted.

#include "allocations.h"
#include "catch.h"
#include "mechanics/body/published_tables.h"
#include "mechanics/range/sweep.h"

#include <cstddef>
#include <new>

namespace steelyard::mechanics {

namespace {

/// One of each resistance, on both feet.
BodyCase loaded_case() {
    BodyCase body_case = standing(de_leva_male());
    body_case.pose[Hinge::right_shoulder_flexion] = degrees(40);
    const BodyPoint left_grip{Segment::left_hand, Spot::grip, 0.0, Vec3::Zero()};
    body_case.resistances = {
        {"dumbbell", Dumbbell{Segment::right_hand, 5.0}},
        {"bar", Barbell{20.0, BodyPoint{Segment::trunk, Spot::upper_back, 0.0, Vec3::Zero()}}},
        {"bell", Kettlebell{Segment::left_hand, 8.0, 0.12, true, -Vec3::UnitY()}},
        {"cuff", Cuff{}},
        {"machine", PlateMachine{}},
        {"cable", Cable{left_grip, Vec3(1.0, 0.5, -0.3), 30.0}},
        {"band", Band{left_grip, Vec3(0.3, 0.2, -0.3), 0.3, TableBand{{{1.0, 30.0}, {6.0, 45.0}}}}},
        {"push", PartnerPush{}}};
    return body_case;
}

template <typename Work> long allocations_of(Work work) {
    const long before = allocations();
    work();
    return allocations() - before;
}

} // namespace

// A compiler may leave out a `new` whose `delete` it sees, so the blocks are asked for by way of
// pointers to functions that it cannot know.
TEST_CASE("The counter counts", "[allocation]") {
    void* (*volatile take)(std::size_t) = &::operator new;
    void (*volatile give_back)(void*) = &::operator delete;
    CHECK(allocations_of([&] { give_back(take(sizeof(int))); }) == 1);
    CHECK(allocations_of([&] {
              for (int block = 0; block < 3; ++block)
                  give_back(take(100));
          }) == 3);
}

TEST_CASE("Solving a pose takes no memory, at rest or in motion", "[allocation]") {
    const BodyCase body_case = loaded_case();
    Motion motion;
    motion.rate_rad_s[index_of(Hinge::right_shoulder_flexion)] = 2.0;
    bool solved = true;
    CHECK(allocations_of([&] { solved = solved && solve_body(body_case).has_value(); }) == 0);
    CHECK(allocations_of([&] { solved = solved && solve_body(body_case, motion).has_value(); }) ==
          0);
    CHECK(solved);
}

TEST_CASE("A sweep into an old one takes no memory", "[allocation]") {
    const BodyCase body_case = loaded_case();
    PosePath path{body_case.pose.angle_rad};
    path.end_angle_rad[index_of(Hinge::right_shoulder_flexion)] = degrees(120);
    Sweep curve;
    REQUIRE(sweep_into(body_case, path, 181, curve).has_value());
    bool swept = false;
    CHECK(allocations_of([&] { swept = sweep_into(body_case, path, 181, curve).has_value(); }) ==
          0);
    CHECK(swept);
}

} // namespace steelyard::mechanics
