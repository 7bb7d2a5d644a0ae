// Figures of exercises, of all that come with the program.

#include "catch.h"
#include "publish/figures/body_figure.h"
#include "publish/figures/comparison_figure.h"
#include "publish/figures/sweep_figure.h"
#include "publish/pictures/drawing_check.h"
#include "publish/shipped_setups.h"
#include "setup/muscle/muscle_file.h"
#include "setup/units/format_quantity.h"
#include "words/body/body_words.h"

#include <cmath>

using namespace steelyard;
using namespace steelyard::publish;

namespace {

setup::BodySetup shipped_body(const std::string& name) {
    return shipped_setup<setup::BodySetup>("body/" + name);
}

bool says(const scene::Drawing& drawing, const std::string& words) {
    for (const scene::Shape& shape : drawing.shapes) {
        const auto* label = std::get_if<scene::Label>(&shape);
        if (label != nullptr && label->text.find(words) != std::string::npos)
            return true;
    }
    return false;
}

} // namespace

TEST_CASE(
    "every exercise has a sound figure with the torque of each joint that could be the axis") {
    const auto muscles = setup::shipped_muscles();
    REQUIRE(muscles);
    BodyFigureStyle style;
    style.caption = true;
    for (const setup::BodySetup& setup : shipped_bodies()) {
        INFO(setup.head.name);
        const auto drawing = body_figure(setup, *muscles, style);
        REQUIRE(drawing);
        CHECK_FALSE(fault_in(*drawing));
        CHECK(drawing->size_px == style.sheet_px);
        const auto reading =
            words::read_body(setup, *muscles, setup.axes, *words::hardest_place(setup));
        REQUIRE(reading);
        for (const words::HingeReading& hinge : reading->hinges) {
            const std::string torque = setup::format_quantity(
                std::abs(hinge.muscle_Nm), setup::Dimension::torque, setup.head.units);
            CHECK_THAT(drawing->description,
                       ContainsSubstring(words::axis_word(setup.axes, hinge.hinge) + " " + torque));
        }
        CHECK(says(*drawing, "not medical advice"));
    }
}

TEST_CASE("the figure stands where the first axis works hardest, or where it is asked to") {
    const auto muscles = setup::shipped_muscles();
    const setup::BodySetup curl = shipped_body("curl-dumbbell");
    const auto hardest = words::hardest_place(curl);
    REQUIRE(hardest);
    const auto torque_at = [&](double progress) {
        return std::abs(
            words::read_body(curl, *muscles, curl.axes, progress)->hinges.front().muscle_Nm);
    };
    for (int percent = 0; percent <= 100; ++percent) {
        // Brent's method leaves the peak to about the root of rounding, far below 1e-6 of it.
        CHECK(torque_at(0.01 * percent) <= torque_at(*hardest) * (1.0 + 1.0e-6));
    }
    BodyFigureStyle style;
    style.progress = 0.0;
    const auto start = body_figure(curl, *muscles, style);
    REQUIRE(start);
    CHECK_THAT(start->description, ContainsSubstring("at 0 % of the way"));
}

TEST_CASE("a place beyond the path is refused") {
    BodyFigureStyle style;
    style.progress = 1.5;
    const auto drawing = body_figure(shipped_body("curl-dumbbell"), {}, style);
    REQUIRE_FALSE(drawing);
    CHECK(drawing.error().key == "progress");
}

TEST_CASE("the sweep of an exercise tells where each joint works hardest; one that holds still has "
          "none") {
    const auto muscles = setup::shipped_muscles();
    REQUIRE(muscles);
    for (const setup::BodySetup& setup : shipped_bodies()) {
        INFO(setup.head.name);
        const auto drawing = sweep_figure(setup, *muscles, {960.0, 720.0});
        if (!setup.exercise.path) {
            REQUIRE_FALSE(drawing);
            CHECK(drawing.error().key == "path");
            continue;
        }
        REQUIRE(drawing);
        CHECK_FALSE(fault_in(*drawing));
        mechanics::Exercise slow = setup.exercise;
        slow.tempo.reset();
        const auto reading = mechanics::read_repetition(slow, setup.axes);
        REQUIRE(reading);
        for (const mechanics::PeakTorque& peak : reading->peaks) {
            CHECK_THAT(drawing->description,
                       ContainsSubstring(" " + setup::format_quantity(std::abs(peak.torque_Nm),
                                                                      setup::Dimension::torque,
                                                                      setup.head.units)));
        }
    }
}

TEST_CASE("the curl's torque peaks where the forearm is level") {
    // The weights of dumbbell, forearm and hand all hang from a forearm that turns about the elbow
    // of an upright arm: their arms are longest when it is level, at 90° of flexion (statics). The
    // hand and forearm lie on one line, so all three peak together.
    const auto drawing =
        sweep_figure(shipped_body("curl-dumbbell"), *setup::shipped_muscles(), {960.0, 720.0});
    REQUIRE(drawing);
    CHECK_THAT(drawing->description, ContainsSubstring("N·m at 90°"));
}

TEST_CASE("two exercises are compared joint by joint, at one scale") {
    const setup::BodySetup near = shipped_body("crate-near");
    const setup::BodySetup far = shipped_body("crate-far");
    const auto drawing = comparison_figure(near, far, {960.0, 720.0});
    REQUIRE(drawing);
    CHECK_FALSE(fault_in(*drawing));
    // The crate farther out has the longer arm about the low back, so it asks more (statics); of
    // the leg's joints that need not be so.
    const std::size_t back = drawing->description.find("low back ");
    REQUIRE(back != std::string::npos);
    const std::size_t end = drawing->description.find_first_of(";", back);
    CHECK_THAT(drawing->description.substr(back, end - back), ContainsSubstring("more in B"));
    const auto same = comparison_figure(near, near, {960.0, 720.0});
    REQUIRE(same);
    CHECK_THAT(same->description, ContainsSubstring("equal"));
    CHECK_THAT(same->description, !ContainsSubstring("in B"));
}
