#include "catch.h"
#include "mechanics/whatif/change.h"
#include "setup/files/data_folder.h"
#include "setup/setup.h"
#include "words/whatif/comparison.h"

#include <cmath>

using namespace steelyard;
using namespace steelyard::setup;
using namespace steelyard::words;

namespace {

BodySetup shipped(const std::string& name) {
    auto read = read_setup(data_folder() / "assets/setups/body" / (name + ".setup.toml"));
    REQUIRE(read);
    return std::get<BodySetup>(std::move(*read));
}

} // namespace

TEST_CASE("axes of both are those of the first in their order, then what the second adds") {
    using mechanics::Hinge;
    BodySetup a;
    a.axes = {Hinge::right_elbow_flexion, Hinge::lumbar_flexion};
    BodySetup b;
    b.axes = {Hinge::lumbar_flexion, Hinge::right_hip_flexion};
    CHECK(axes_of_both(a, b) == std::vector<Hinge>{Hinge::right_elbow_flexion,
                                                   Hinge::lumbar_flexion,
                                                   Hinge::right_hip_flexion});
}

TEST_CASE("a difference is told from A's side, with its part of A") {
    CHECK(difference_text(100.0, 125.0, Dimension::torque, UnitSystem::si) ==
          "25.0\u00A0N·m more in B (+25 %)");
    CHECK(difference_text(100.0, 80.0, Dimension::torque, UnitSystem::si) ==
          "20.0\u00A0N·m less in B (−20 %)");
    CHECK(difference_text(50.0, 50.0, Dimension::torque, UnitSystem::si) == "equal");
    CHECK(difference_text(0.0, 0.0, Dimension::torque, UnitSystem::si) == "equal");
}

TEST_CASE("a part of next to nothing is not told") {
    CHECK(difference_text(0.0, 12.0, Dimension::torque, UnitSystem::si) ==
          "12.0\u00A0N·m more in B");
    CHECK(difference_text(0.001, 12.0, Dimension::torque, UnitSystem::si) ==
          "12.0\u00A0N·m more in B");
}

TEST_CASE("what B changes is told number by number, and nothing is when it is a copy") {
    const BodySetup a = shipped("curl-dumbbell");
    CHECK(changed_in_b(a, a, UnitSystem::si).empty());
    BodySetup b = a;
    const auto changes = possible_changes(b.exercise, b.axes.front());
    const auto heavier = with_change(b.exercise, changes.front(), 12.0);
    REQUIRE(heavier);
    b.exercise = *heavier;
    const auto told = changed_in_b(a, b, UnitSystem::si);
    REQUIRE(told.size() == 1);
    CHECK(told.front().find("12.0\u00A0kg instead of") != std::string::npos);
}

TEST_CASE("a heavier crate asks the elbow for its weight times its distance more") {
    using mechanics::Hinge;
    const BodySetup a = shipped("crate-far");
    BodySetup b = a;
    const auto load = possible_changes(b.exercise, b.axes.front()).front(); // both hands together
    b.exercise = with_change(b.exercise, load, 16.0).value();               // 10 kg in a
    const auto peaks = compare_peaks(a, b);
    REQUIRE(peaks);
    const auto solved = mechanics::solve_body(a.exercise.body_case);
    REQUIRE(solved);
    const std::vector<Hinge> axes = axes_of_both(a, b);
    REQUIRE(peaks->size() == axes.size());
    for (std::size_t i = 0; i < axes.size(); ++i) {
        // The forces are weights, so that the arm is a horizontal distance; the low back carries
        // both hands, an arm one.
        const double hands = axes[i] == Hinge::lumbar_flexion ? 2.0 : 1.0;
        const double distance_m =
            solved->forces[0].point_m.x() - solved->placement.axis_point_m(axes[i]).x();
        const double more_Nm =
            std::abs((*peaks)[i].b.torque_Nm) - std::abs((*peaks)[i].a.torque_Nm);
        CHECK(more_Nm == Approx(hands * 3.0 * 9.80665 * distance_m).epsilon(1e-9)); // rounding
    }
}
