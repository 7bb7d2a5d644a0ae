// The words of every figure: none stands on another, none leaves the sheet.

#include "catch.h"
#include "publish/figures/body_figure.h"
#include "publish/figures/comparison_figure.h"
#include "publish/figures/lever_comparison_figure.h"
#include "publish/figures/lever_figure.h"
#include "publish/figures/lever_sweep_figure.h"
#include "publish/figures/sweep_figure.h"
#include "publish/shipped_setups.h"
#include "scene/marks/label_board.h"
#include "setup/muscle/muscle_file.h"

using namespace steelyard;
using namespace steelyard::publish;
using scene::Point;

namespace {

const Point kUsual_px(960.0, 720.0);
const Point kSmall_px(860.0, 640.0);

void check_labels(const scene::Drawing& drawing) {
    std::vector<scene::Label> labels;
    for (const scene::Shape& shape : drawing.shapes)
        if (const auto* label = std::get_if<scene::Label>(&shape))
            labels.push_back(*label);
    REQUIRE(labels.size() > 3);
    for (std::size_t i = 0; i < labels.size(); ++i) {
        scene::Rect room = scene::room_of(labels[i], 1.0);
        INFO(drawing.title << ": '" << labels[i].text << "'");
        CHECK(room.low.x() >= 0.0);
        CHECK(room.low.y() >= 0.0);
        CHECK(room.high.x() <= drawing.size_px.x());
        CHECK(room.high.y() <= drawing.size_px.y());
        // A hair of air around letters may be shared.
        room.low += Point(1.0, 1.0);
        room.high -= Point(1.0, 1.0);
        for (std::size_t j = 0; j < i; ++j) {
            INFO("and '" << labels[j].text << "'");
            CHECK_FALSE(room.overlaps(scene::room_of(labels[j], 1.0)));
        }
    }
}

template <typename Setup> Setup in_units(Setup setup, setup::UnitSystem units) {
    setup.head.units = units;
    return setup;
}

/// Pairs that anyone might compare: neighbours in the list, which have much in common, and some
/// that have not.
template <typename Setup, typename Work>
void for_pairs(const std::vector<Setup>& setups, const Work& work) {
    for (std::size_t i = 0; i < setups.size(); ++i)
        for (const std::size_t step : {1U, 2U, 9U})
            work(setups[i], setups[(i + step) % setups.size()]);
}

} // namespace

TEST_CASE("no word of an exercise's figure stands on another or leaves the sheet") {
    const auto muscles = setup::shipped_muscles();
    REQUIRE(muscles);
    BodyFigureStyle style;
    style.caption = true;
    for (const setup::BodySetup& setup : shipped_bodies()) {
        for (const auto units : {setup::UnitSystem::si, setup::UnitSystem::us}) {
            style.sheet_px = kUsual_px;
            const auto drawing = body_figure(in_units(setup, units), *muscles, style);
            REQUIRE(drawing);
            check_labels(*drawing);
        }
    }
}

TEST_CASE("no word of a sweep stands on another or leaves the sheet") {
    const auto muscles = setup::shipped_muscles();
    REQUIRE(muscles);
    for (const setup::BodySetup& setup : shipped_bodies()) {
        if (!setup.exercise.path)
            continue;
        for (const auto units : {setup::UnitSystem::si, setup::UnitSystem::us}) {
            const auto drawing = sweep_figure(in_units(setup, units), *muscles, kUsual_px);
            REQUIRE(drawing);
            check_labels(*drawing);
        }
    }
}

TEST_CASE("no word of a comparison of exercises stands on another or leaves the sheet") {
    for_pairs(shipped_bodies(), [](const setup::BodySetup& a, const setup::BodySetup& b) {
        const auto drawing = comparison_figure(a, b, kUsual_px);
        REQUIRE(drawing);
        check_labels(*drawing);
    });
}

TEST_CASE("no word of a lever's figure stands on another or leaves the sheet") {
    for (const setup::LeverSetup& setup : shipped_levers()) {
        for (const auto units : {setup::UnitSystem::si, setup::UnitSystem::us}) {
            const auto solved = mechanics::solve_lever(setup.lever);
            REQUIRE(solved);
            check_labels(captioned_lever_figure(in_units(setup, units), *solved, kUsual_px));
        }
    }
}

TEST_CASE("no word of a lever's sweep stands on another or leaves the sheet") {
    for (const setup::LeverSetup& setup : shipped_levers()) {
        for (const mechanics::LeverChange& change : mechanics::possible_changes(setup.lever)) {
            const auto drawing = sweep_figure(setup, change, kUsual_px);
            if (drawing) // a lever that nothing balances has none: see lever_sweep_test
                check_labels(*drawing);
        }
    }
}

TEST_CASE("no word of a comparison of levers stands on another or leaves the sheet") {
    for_pairs(shipped_levers(), [](const setup::LeverSetup& a, const setup::LeverSetup& b) {
        for (const Point& sheet_px : {kUsual_px, kSmall_px}) {
            const auto drawing = comparison_figure(a, b, sheet_px);
            REQUIRE(drawing);
            check_labels(*drawing);
        }
    });
}
