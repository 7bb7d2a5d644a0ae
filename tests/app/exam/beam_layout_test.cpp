#include "app/exam/beam_layout.h"
#include "catch.h"

namespace steelyard::app {

namespace {

BeamLayout beam(float width_px, std::size_t count, float scale = 1.0F) {
    return {24.0F, 60.0F, width_px, count, scale};
}

} // namespace

TEST_CASE("A press anywhere on the beam finds the notch that it is nearest to") {
    for (const std::size_t count :
         {std::size_t{1}, std::size_t{2}, std::size_t{40}, std::size_t{100}}) {
        const BeamLayout one = beam(892.0F, count, 1.5F);
        INFO(count);
        for (std::size_t i = 0; i < count; ++i) {
            const float x = one.at(static_cast<double>(i));
            CHECK(x > one.left_px);
            CHECK(x < one.left_px + one.width_px);
            CHECK(one.nearest(x) == i);
            if (count > 1) {
                CHECK(one.nearest(x - 0.45F * one.pitch_px()) == i);
                CHECK(one.nearest(x + 0.45F * one.pitch_px()) == i);
            }
        }
        CHECK(one.nearest(-500.0F) == 0);
        CHECK(one.nearest(5000.0F) == count - 1);
    }
}

TEST_CASE("Numbers stand at every fifth notch, and at fewer where they would touch") {
    CHECK(beam(892.0F, 40).numbered_every(16.0F) == 5);
    CHECK(beam(892.0F, 100).numbered_every(24.0F) == 5);
    CHECK(beam(892.0F, 100, 1.5F).numbered_every(36.0F) == 10);
    for (const float width_px : {300.0F, 480.0F, 892.0F, 1800.0F})
        for (const std::size_t count : {std::size_t{5}, std::size_t{40}, std::size_t{100}}) {
            const BeamLayout one = beam(width_px, count, 2.0F);
            const auto every = static_cast<float>(one.numbered_every(48.0F));
            INFO(width_px << " px, " << count);
            CHECK((every * one.pitch_px() > 48.0F || every >= static_cast<float>(count)));
        }
}

TEST_CASE("The pointer slides to its notch and is there within 150 ms") {
    BeamPointer pointer;
    pointer.aim(3, false);
    CHECK(pointer.at() == 3.0); // the first time there is nowhere to come from
    CHECK(pointer.at_rest());
    pointer.aim(30, false);
    double before = pointer.at();
    double passed_s = 0.0;
    while (!pointer.at_rest()) {
        REQUIRE(passed_s < 0.5);
        pointer.advance(0.01);
        passed_s += 0.01;
        CHECK(pointer.at() > before);
        before = pointer.at();
    }
    CHECK(pointer.at() == 30.0);
    CHECK(passed_s < 0.165);
    pointer.aim(5, false);
    pointer.advance(60.0); // a frame after a long rest
    CHECK(pointer.at() > 5.0);
    pointer.aim(7, true);
    CHECK(pointer.at() == 7.0);
    CHECK(pointer.at_rest());
}

} // namespace steelyard::app
