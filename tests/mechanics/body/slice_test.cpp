// A segment cut in two and joined again.

#include "catch.h"
#include "mechanics/body/slice.h"

namespace steelyard::mechanics {

namespace {

SegmentBody joined(const std::vector<Slice>& slices) {
    SegmentBody segment;
    for (const Slice& slice : slices)
        join(segment, slice.mass_kg, {0.0, slice.com_along_m, 0.0}, slice.inertia_kg_m2);
    return segment;
}

} // namespace

TEST_CASE("A row that is cut anywhere and joined again is the whole row", "[body]") {
    SegmentRow row;
    row.com_fraction = 0.45;
    row.gyration = {0.35, 0.18, 0.38};
    const double length_m = 0.5;
    const double mass_kg = 12.0;
    for (const double at : {0.2, 0.5, 0.85}) {
        CAPTURE(at);
        const SegmentBody whole = joined({cut(row, length_m, mass_kg, Along::y, 0.0, at),
                                          cut(row, length_m, mass_kg, Along::y, at, 1.0)});
        CHECK(whole.mass_kg == Approx(mass_kg));
        CHECK(whole.com_m.y() == Approx(0.45 * length_m));
        for (const int axis : {0, 1, 2}) {
            CAPTURE(axis);
            const double gyration_m = row.gyration[axis] * length_m;
            CHECK(whole.inertia_kg_m2(axis, axis) == Approx(mass_kg * gyration_m * gyration_m));
        }
    }
}

TEST_CASE("Joining follows the parallel axis theorem", "[body]") {
    // Two balls of 2 kg, taken as points, at the ends of a rod without mass of 0.6 m: about the
    // middle 2 · 2 kg · (0.3 m)² = 0.36 kg·m² across the rod and nothing about it. By hand.
    SegmentBody rod;
    join(rod, 2.0, {0.0, 0.3, 0.0}, Vec3::Zero());
    join(rod, 2.0, {0.0, -0.3, 0.0}, Vec3::Zero());
    CHECK(rod.inertia_kg_m2(0, 0) == Approx(0.36));
    CHECK(rod.inertia_kg_m2(1, 1) == Approx(0.0).margin(1e-15)); // rounding of 0.36 - 0.36
    CHECK(rod.inertia_kg_m2(2, 2) == Approx(0.36));
    CHECK(rod.com_m.norm() == Approx(0.0).margin(1e-15));
}

} // namespace steelyard::mechanics
