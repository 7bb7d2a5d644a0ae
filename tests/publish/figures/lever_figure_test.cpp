// Sweeps and comparisons of levers as figures.

#include "catch.h"
#include "publish/figures/lever_comparison_figure.h"
#include "publish/figures/lever_sweep_figure.h"
#include "publish/pictures/drawing_check.h"
#include "publish/shipped_setups.h"

using namespace steelyard;
using namespace steelyard::publish;

namespace {

const scene::Point kSheet_px(960.0, 720.0);

setup::LeverSetup lever_of(const std::string& text) {
    const auto setup = setup::parse_lever_setup(text, "test.setup.toml");
    REQUIRE(setup);
    return *setup;
}

/// 10 kg at the left end of 1 m on an axis at 0.4 m, pushed down at the right end.
const char* const kSample = R"(
kind = "lever"
name = "Sample"
description = "A crate on a plank."
place = "Yard"
order = 1
units = "SI"
length = "1 m"
axis = "40 cm"
[[load]]
name = "crate"
at = "0 m"
mass = "10 kg"
[effort]
at = "1 m"
direction = "down"
)";

} // namespace

TEST_CASE("every number of every shipped lever can be swept, or the reason is told") {
    std::size_t swept = 0;
    for (const setup::LeverSetup& setup : shipped_levers()) {
        for (const mechanics::LeverChange& change : mechanics::possible_changes(setup.lever)) {
            INFO(setup.head.name << ", " << describe(change, setup.lever));
            const auto drawing = sweep_figure(setup, change, kSheet_px);
            if (!drawing) {
                CHECK_FALSE(drawing.error().expected.empty());
                continue;
            }
            ++swept;
            CHECK_FALSE(fault_in(*drawing));
            CHECK_THAT(drawing->description, ContainsSubstring("As it is, the effort is "));
        }
    }
    CHECK(swept > 80);
}

TEST_CASE("the sweep of a direction tells effort and advantage, worked by hand") {
    const auto drawing =
        sweep_figure(lever_of(kSample), {mechanics::LeverKnob::effort_direction, 0}, kSheet_px);
    REQUIRE(drawing);
    // 10 kg × 9.80665 m/s² × 0.4 m ÷ 0.6 m = 65.4 N; 0.6 m ÷ 0.4 m = 1.5; four times as much
    // where cos = 1/4, at 75.5°.
    CHECK_THAT(drawing->description, ContainsSubstring("the effort is 65.4"));
    CHECK_THAT(drawing->description, ContainsSubstring("at 0°"));
    CHECK_THAT(drawing->description, ContainsSubstring("advantage 1.50"));
    CHECK_THAT(drawing->description, ContainsSubstring("the largest 262"));
    CHECK_THAT(drawing->description, ContainsSubstring("more than 4 times"));
}

TEST_CASE("two levers are compared number by number, at one scale") {
    const setup::LeverSetup a = lever_of(kSample);
    setup::LeverSetup b = a;
    b.lever.axis_at_m = 0.5;
    const auto drawing = comparison_figure(a, b, kSheet_px);
    REQUIRE(drawing);
    CHECK_FALSE(fault_in(*drawing));
    // By hand: with the axis in the middle the effort is the load's own weight, 98.1 N, half as
    // much again as 65.4 N.
    CHECK_THAT(drawing->description, ContainsSubstring("place of the axis"));
    CHECK_THAT(drawing->description, ContainsSubstring("effort 32.7"));
    CHECK_THAT(drawing->description, ContainsSubstring("more in B (+50 %)"));
    CHECK_THAT(drawing->description, ContainsSubstring("advantage 0.500 less in B"));
    const auto same = comparison_figure(a, a, kSheet_px);
    REQUIRE(same);
    CHECK_THAT(same->description, ContainsSubstring("effort equal"));
    CHECK_THAT(same->description, !ContainsSubstring("in B"));
}
