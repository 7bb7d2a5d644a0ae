#include "catch.h"
#include "mechanics/constants.h"
#include "scene/lever/open_lever.h"

using namespace steelyard;
using namespace steelyard::scene;

namespace {

mechanics::Lever lever_with(double mass_kg) {
    mechanics::Lever lever;
    lever.axis_at_m = 0.4;
    lever.loads = {{"crate", mechanics::Weight{0.0, mass_kg}},
                   {"rope", mechanics::PointForce{0.8, 3.0 * mass_kg, -0.5 * mechanics::kPi}}};
    return lever;
}

StageView view() {
    StageView view;
    view.size_px = {400.0, 260.0};
    view.origin_px = {60.0, 120.0};
    view.px_per_m = 280.0;
    return view;
}

template <typename Kind> std::vector<Kind> all_of(const Drawing& drawing) {
    std::vector<Kind> found;
    for (const Shape& shape : drawing.shapes)
        if (const auto* one = std::get_if<Kind>(&shape))
            found.push_back(*one);
    return found;
}

/// Lengths of the arrows of a role, from what their tips are away from where they act.
double reach_px(const Drawing& drawing, Role role, const Point& from) {
    for (const Triangle& head : all_of<Triangle>(drawing))
        if (head.fill == role)
            if (const double far = (head.a - from).norm(); far < 60.0)
                return far;
    return 0.0;
}

} // namespace

TEST_CASE("all arrows are of one length, so that none gives a size away") {
    const Drawing light = draw_open_lever(lever_with(1.0), view(), {});
    const Drawing heavy = draw_open_lever(lever_with(500.0), view(), {});
    for (const Drawing& drawing : {light, heavy}) {
        CHECK(reach_px(drawing, Role::load, view().to_sheet({0.0, 0.0})) == Approx(kOpenArrow_px));
        CHECK(reach_px(drawing, Role::load, view().to_sheet({0.8, 0.0})) == Approx(kOpenArrow_px));
    }
    CHECK(light.shapes.size() == heavy.shapes.size());
}

TEST_CASE("seen from above weights point into the sheet and the axis has no stand") {
    OpenLever how;
    how.show_effort = false;
    mechanics::Lever lever = lever_with(1.0);
    lever.loads.pop_back();
    CHECK(all_of<Triangle>(draw_open_lever(lever, view(), how)).size() == 2); // stand, arrow head
    how.from_above = true;
    CHECK(all_of<Triangle>(draw_open_lever(lever, view(), how)).empty());
}

TEST_CASE("what is hidden is neither drawn nor named") {
    OpenLever how;
    how.axis_name = "hinge";
    const auto says = [&](const std::string& name) {
        for (const Label& label : all_of<Label>(draw_open_lever(lever_with(1.0), view(), how)))
            if (label.text == name)
                return true;
        return false;
    };
    const std::string effort = lever_with(1.0).effort.name;
    CHECK(says("hinge"));
    CHECK(says(effort));
    how.show_axis = how.show_effort = false;
    CHECK_FALSE(says("hinge"));
    CHECK_FALSE(says(effort));
    how.show_effort_place = true;
    CHECK(says(effort));
}
