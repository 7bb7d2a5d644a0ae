#include "catch.h"
#include "mechanics/lever/lever_class.h"

using namespace steelyard::mechanics;

namespace {

Lever lever_with(std::vector<Load> loads) {
    Lever lever;
    lever.axis_at_m = 0.4;
    lever.effort = {"effort", 1.0, kUp_rad};
    lever.loads = std::move(loads);
    return lever;
}

} // namespace

TEST_CASE("the class is what lies in the middle, whichever way round the lever is drawn") {
    // axis, load, effort
    CHECK(classify_places(0.5, 0.2, 0.9).lever_class == LeverClass::first);
    CHECK(classify_places(0.5, 0.9, 0.2).lever_class == LeverClass::first);
    CHECK(classify_places(0.1, 0.5, 0.9).lever_class == LeverClass::second);
    CHECK(classify_places(0.9, 0.5, 0.1).lever_class == LeverClass::second);
    CHECK(classify_places(0.1, 0.9, 0.5).lever_class == LeverClass::third);
    CHECK(classify_places(0.9, 0.1, 0.5).lever_class == LeverClass::third);
}

TEST_CASE("two points at one place leave no class and say which two") {
    CHECK(classify_places(0.5, 0.2, 0.5).reason == ClassReason::effort_at_axis);
    CHECK(classify_places(0.5, 0.5, 0.9).reason == ClassReason::load_at_axis);
    CHECK(classify_places(0.5, 0.9, 0.9).reason == ClassReason::effort_at_load);
    CHECK(classify_places(0.5, 0.5, 0.5).reason == ClassReason::effort_at_axis);
    CHECK_FALSE(classify_places(0.5, 0.9, 0.9).lever_class.has_value());
}

TEST_CASE("points closer than anyone can measure are one place") {
    CHECK(classify_places(0.5, 0.9, 0.9 + 0.5 * kSamePlace_m).reason ==
          ClassReason::effort_at_load);
    CHECK(classify_places(0.5, 0.9, 0.9 + 2.0 * kSamePlace_m).lever_class == LeverClass::second);
}

TEST_CASE("couples and loads without a size have no place and give no class") {
    CHECK(classify_lever(lever_with({})).reason == ClassReason::no_placed_load);
    const Classification found =
        classify_lever(lever_with({{"hinge", Couple{3.0}},
                                   {"empty hook", Weight{0.1, 0.0}},
                                   {"slack rope", PointForce{0.1, 0.0, kDown_rad}}}));
    CHECK(found.reason == ClassReason::no_placed_load);
    CHECK_FALSE(found.lever_class.has_value());
}

TEST_CASE("loads of one class agree, whatever couples act beside them") {
    const Classification found = classify_lever(
        lever_with({{"one", Weight{0.1, 2.0}}, {"hinge", Couple{1.0}}, {"two", Weight{0.3, 2.0}}}));
    CHECK(found.lever_class == LeverClass::first);
    CHECK(found.reason == ClassReason::axis_between);
}

TEST_CASE("loads of different classes disagree") {
    const Classification found =
        classify_lever(lever_with({{"one", Weight{0.1, 2.0}}, {"two", Weight{0.7, 2.0}}}));
    CHECK_FALSE(found.lever_class.has_value());
    CHECK(found.reason == ClassReason::loads_disagree);
}

TEST_CASE("a load at the axis leaves the class to the others, in either order") {
    const Load at_axis{"at the axis", Weight{0.4, 2.0}};
    const Load beyond{"beyond", Weight{0.7, 2.0}};
    CHECK(classify_lever(lever_with({at_axis, beyond})).lever_class == LeverClass::second);
    CHECK(classify_lever(lever_with({beyond, at_axis})).lever_class == LeverClass::second);
    CHECK(classify_lever(lever_with({at_axis})).reason == ClassReason::load_at_axis);
}
