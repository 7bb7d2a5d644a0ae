#include "catch.h"
#include "scene/marks/balance_strip.h"
#include "setup/units/format_quantity.h"

#include <cmath>

using namespace steelyard;
using namespace steelyard::scene;

namespace {

constexpr double kLeft_px = 100.0;
constexpr double kRight_px = 900.0;
constexpr double kMiddle_px = 500.0;

struct Strip {
    std::vector<Shape> shapes;

    explicit Strip(const StripTorques& torques, setup::UnitSystem units = setup::UnitSystem::si) {
        add_balance_strip(torques, kLeft_px, kRight_px, 640.0, units, 1.0, shapes);
    }

    /// The bar of a role; a bar without a length is absent.
    std::optional<Box> bar(Role role) const {
        for (const Shape& shape : shapes)
            if (const auto* box = std::get_if<Box>(&shape); box != nullptr && box->fill == role)
                return *box;
        return std::nullopt;
    }
    double length(Role role) const {
        const auto found = bar(role);
        return found ? found->size_px.x() : 0.0;
    }
    bool says(const std::string& words) const {
        for (const Shape& shape : shapes)
            if (const auto* label = std::get_if<Label>(&shape);
                label != nullptr && label->text == words)
                return true;
        return false;
    }
};

} // namespace

TEST_CASE("equal torques meet at the notch from both sides") {
    for (const double torque_Nm : {1e-6, 0.3, 47.1, 9.9e8}) {
        const Strip strip({torque_Nm, -torque_Nm, 0.0});
        const Box load = strip.bar(Role::load).value();
        const Box effort = strip.bar(Role::effort).value();
        CHECK(load.centre.x() - 0.5 * load.size_px.x() == Approx(kLeft_px));
        CHECK(effort.centre.x() + 0.5 * effort.size_px.x() == Approx(kRight_px));
        const double load_end_px = load.centre.x() + 0.5 * load.size_px.x();
        const double effort_end_px = effort.centre.x() - 0.5 * effort.size_px.x();
        CHECK(kMiddle_px - load_end_px == Approx(effort_end_px - kMiddle_px));
        CHECK(effort_end_px - load_end_px <= 8.0); // the notch's line and a hair of air
        CHECK(strip.says("balanced"));
    }
}

TEST_CASE("lengths are in the ratio of the torques, the larger reaches the notch") {
    const Strip strip({40.0, -10.0, 0.0});
    CHECK(strip.length(Role::effort) / strip.length(Role::load) == Approx(0.25));
    CHECK(strip.length(Role::load) > 390.0);
    CHECK(strip.says("the load wins"));
    const Strip other({-10.0, 40.0, 0.0});
    CHECK(other.length(Role::load) / other.length(Role::effort) == Approx(0.25));
    CHECK(other.says("the effort wins"));
}

TEST_CASE("no torque at all is balanced and draws no bar") {
    const Strip strip({0.0, 0.0, 0.0});
    CHECK_FALSE(strip.bar(Role::load));
    CHECK_FALSE(strip.bar(Role::effort));
    CHECK(strip.says("balanced"));
}

TEST_CASE("friction holds what is not more than it can hold") {
    CHECK(judge({40.0, -37.0, 3.0}) == StripVerdict::friction_holds);
    CHECK(judge({40.0, -36.0, 3.0}) == StripVerdict::load_wins);
    CHECK(judge({40.0, -44.0, 3.0}) == StripVerdict::effort_wins);
    CHECK(judge({40.0, -40.0, 3.0}) == StripVerdict::balanced);
}

TEST_CASE("torques that turn the same way are said to do so") {
    CHECK(judge({40.0, 10.0, 0.0}) == StripVerdict::same_way);
    CHECK(judge({-40.0, -10.0, 3.0}) == StripVerdict::same_way);
}

TEST_CASE("a difference in rounding is balance, one that could be read is not") {
    CHECK(judge({40.0, -40.0 * (1.0 + 1e-12), 0.0}) == StripVerdict::balanced);
    CHECK(judge({40.0, -40.0 * (1.0 + 1e-6), 0.0}) == StripVerdict::effort_wins);
}

TEST_CASE("torques are told in the chosen units") {
    const StripTorques torques{47.0725, -20.0, 0.0};
    for (const auto units : {setup::UnitSystem::si, setup::UnitSystem::us}) {
        const Strip strip(torques, units);
        const auto text = [&](double value_Nm) {
            return setup::format_quantity(value_Nm, setup::Dimension::torque, units);
        };
        CHECK(strip.says("load torque " + text(47.0725)));
        CHECK(strip.says("effort torque " + text(20.0)));
    }
}

TEST_CASE("any two sizes meet on a strip of their own words") {
    std::vector<Shape> shapes;
    const StripSide left{"A", 30.0, Role::beam, Stroke{Role::ink, 2.0}, Role::ink};
    const StripSide right{"B", 30.0, Role::ink, {}, Role::ink};
    add_meeting_strip(left, right, "equal", kLeft_px, kRight_px, 640.0, setup::UnitSystem::si, 1.0,
                      shapes);
    std::vector<Box> bars;
    for (const Shape& shape : shapes)
        if (const auto* box = std::get_if<Box>(&shape); box != nullptr && box->fill != Role::panel)
            bars.push_back(*box);
    REQUIRE(bars.size() == 2);
    CHECK(bars[0].size_px.x() == Approx(bars[1].size_px.x()));
    CHECK(bars[0].outline);
    CHECK_FALSE(bars[1].outline);
}

TEST_CASE("where there is no room for both names the sizes stand alone and clear of each other") {
    const StripTorques torques{345.0, -345.0, 0.0};
    const std::string size =
        setup::format_quantity(345.0, setup::Dimension::torque, setup::UnitSystem::si);
    for (const double text_scale : {1.0, 2.5}) {
        std::vector<Shape> shapes;
        // Two numbers of eight signs fit; with their names they would need twice as much.
        const double width_px = 180.0 * text_scale;
        add_balance_strip(torques, kLeft_px, kLeft_px + width_px, 640.0, setup::UnitSystem::si,
                          text_scale, shapes);
        std::vector<Label> sizes;
        for (const Shape& shape : shapes)
            if (const auto* label = std::get_if<Label>(&shape);
                label != nullptr && label->text == size)
                sizes.push_back(*label);
        REQUIRE(sizes.size() == 2);
        CHECK_FALSE(room_of(sizes[0], text_scale).overlaps(room_of(sizes[1], text_scale)));
    }
}
