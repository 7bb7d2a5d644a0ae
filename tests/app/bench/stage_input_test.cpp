#include "app/bench/sample_bench.h"
#include "app/bench/stage_input.h"
#include "app/platform/key.h"
#include "catch.h"
#include "mechanics/lever/lever_geometry.h"
#include "scene/lever/lever_parts.h"

#include <algorithm>
#include <cmath>

using namespace steelyard;
using namespace steelyard::app;
using scene::Point;

namespace {

constexpr double kDegree = mechanics::kPi / 180.0;

/// The sample on a stage where a metre is 700 px and 10 N are 5 px: the lever lies from (150, 392)
/// to (850, 392), its axis at (430, 392), the tip of the crate's arrow near (150, 441).
struct Stage {
    BenchModel model = sample_bench();
    StageState state;

    Stage() {
        state.view.px_per_N = 0.5;
        state.chosen = kHand;
    }

    Point grip(const scene::LeverPart& part, scene::Hold hold) const {
        const scene::LeverPose pose{model.state.hand_N, 0.0};
        for (const scene::Grip& grip :
             scene::lever_grips(model.state.setup.lever, model.solved, state.view, pose))
            if (grip.part == part && grip.hold == hold)
                return grip.at_px;
        FAIL("no such grip");
        return {};
    }

    void point(const StagePointer& pointer) {
        const scene::LeverPose pose{model.state.hand_N, 0.0};
        if (const auto intent = point_on_stage(model, pointer, pose, state))
            update(model, *intent);
    }
    void press_at(const Point& at) {
        StagePointer pointer;
        pointer.at_px = at;
        pointer.on_stage = pointer.pressed = true;
        point(pointer);
    }
    void move_to(const Point& at, bool snap_off = false) {
        StagePointer pointer;
        pointer.at_px = at;
        pointer.on_stage = true;
        pointer.moved_px = {1.0, 0.0};
        pointer.snap_off = snap_off;
        point(pointer);
    }
    void release_at(const Point& at) {
        StagePointer pointer;
        pointer.at_px = at;
        pointer.on_stage = pointer.released = true;
        point(pointer);
    }
    void drag(const Point& from, const Point& to, bool snap_off = false) {
        press_at(from);
        move_to(to, snap_off);
        release_at(to);
    }
    void press_key(int key, int modifiers = 0) {
        if (const auto intent = press_on_stage(model, {key, modifiers}, state))
            update(model, *intent);
    }
    double value(const scene::LeverPart& part, LeverField field) const {
        return value_of(model.state.handled(), {part, field}).value();
    }
};

} // namespace

TEST_CASE("a dragged place follows the pointer along the lever and snaps to round lengths") {
    Stage stage;
    stage.drag({150.0, 392.0}, {293.0, 450.0}); // 143 px: 20.4 cm along; off the lever is no matter
    CHECK(stage.value(kCrate, LeverField::place) == Approx(0.20).epsilon(1e-12)); // one rounding
    CHECK(stage.state.chosen == kCrate);
}

TEST_CASE("snapping can be held off") {
    Stage stage;
    stage.drag({150.0, 392.0}, {293.0, 450.0}, true);
    CHECK(stage.value(kCrate, LeverField::place) == Approx(143.0 / 700.0).epsilon(1e-12));
}

TEST_CASE("the grip stays under the pointer where it was taken, it does not jump to it") {
    Stage stage;
    stage.drag({156.0, 399.0}, {156.0 + 70.0, 399.0}, true);
    CHECK(stage.value(kCrate, LeverField::place) == Approx(0.1).epsilon(1e-12));
}

TEST_CASE("taking hold and letting go without a move changes nothing") {
    Stage stage;
    stage.press_at({156.0, 399.0});
    stage.release_at({156.0, 399.0});
    CHECK_FALSE(stage.model.history.can_undo());
    stage.move_to({500.0, 392.0});
    CHECK_FALSE(stage.model.history.can_undo());
}

TEST_CASE("the axis is taken hold of anywhere on its stand") {
    Stage stage;
    const Point pin = stage.grip({scene::PartKind::axis, 0}, scene::Hold::place);
    const Point on_stand = pin + Point(8.0, 38.0);
    stage.press_at(on_stand);
    REQUIRE(stage.state.held);
    CHECK(stage.state.held->part.kind == scene::PartKind::axis);
    const double before_m = stage.model.state.setup.lever.axis_at_m;
    stage.move_to(on_stand + Point(70.0, 0.0)); // a tenth of a metre
    CHECK(stage.model.state.setup.lever.axis_at_m == Approx(before_m + 0.1));
    stage.release_at(on_stand + Point(70.0, 0.0));
    // Beside the stand there is nothing to take hold of.
    stage.press_at(pin + Point(30.0, 30.0));
    CHECK_FALSE(stage.state.held);
}

TEST_CASE("the axis is dragged too") {
    Stage stage;
    stage.drag({430.0, 392.0}, {640.0, 392.0});
    CHECK(stage.value(kAxis, LeverField::place) == Approx(0.7).epsilon(1e-12));
}

TEST_CASE("the tip of a weight makes it heavier, sideways moves do not matter") {
    Stage stage;
    const Point tip = stage.grip(kCrate, scene::Hold::tip);
    // By hand: 40 px are 80 N more, so 178.0665 N / 9.80665 m/s² = 18.1577 kg.
    stage.drag(tip, tip + Point(9.0, 40.0), true);
    CHECK(stage.value(kCrate, LeverField::mass) ==
          Approx((98.0665 + 80.0) / 9.80665).epsilon(1e-12));
    stage.drag(stage.grip(kCrate, scene::Hold::tip), {150.0, 300.0}); // above the lever
    CHECK(stage.value(kCrate, LeverField::mass) == 0.0);
}

TEST_CASE("the tip of a solved effort turns it, and snaps to 5°") {
    Stage stage;
    const Point place = stage.grip(kHand, scene::Hold::place);
    const Point tip = stage.grip(kHand, scene::Hold::tip);
    stage.drag(tip, place + 100.0 * Point(std::cos(48.7 * kDegree), std::sin(48.7 * kDegree)));
    CHECK(stage.value(kHand, LeverField::direction) == Approx(-50.0 * kDegree).epsilon(1e-12));
    CHECK(stage.model.solved.effort_N); // still solved for
    stage.drag(stage.grip(kHand, scene::Hold::tip),
               place + 100.0 * Point(std::cos(48.7 * kDegree), std::sin(48.7 * kDegree)), true);
    CHECK(stage.value(kHand, LeverField::direction) == Approx(-48.7 * kDegree).epsilon(1e-12));
}

TEST_CASE("the tip of an effort by hand sets direction and size at once") {
    Stage stage;
    stage.press_key(key::kH);
    const Point place = stage.grip(kHand, scene::Hold::place);
    stage.drag(stage.grip(kHand, scene::Hold::tip), place + Point(30.0, 40.0), true);
    // By hand: 3-4-5, 50 px are 100 N.
    CHECK(stage.value(kHand, LeverField::force) == Approx(100.0).epsilon(1e-12));
    CHECK(stage.value(kHand, LeverField::direction) ==
          Approx(std::atan2(-4.0, 3.0)).epsilon(1e-12));
}

TEST_CASE("a drag is one step of undo, the nudges after it another") {
    Stage stage;
    const std::string before = exact_text(stage.model.state);
    stage.press_at({150.0, 392.0});
    for (double x = 160.0; x < 400.0; x += 3.0)
        stage.move_to({x, 392.0});
    stage.release_at({400.0, 392.0});
    const std::string dragged = exact_text(stage.model.state);
    for (int i = 0; i < 5; ++i)
        stage.press_key(key::kRight);
    update(stage.model, Undo{});
    CHECK(exact_text(stage.model.state) == dragged);
    update(stage.model, Undo{});
    CHECK(exact_text(stage.model.state) == before);
    CHECK_FALSE(stage.model.history.can_undo());
}

TEST_CASE("nudges of one number are one step, those of another number are their own") {
    Stage stage;
    stage.state.chosen = kCrate;
    stage.press_key(key::kRight);
    stage.press_key(key::kRight);
    stage.press_key(key::kUp);
    stage.press_key(key::kUp);
    CHECK(stage.value(kCrate, LeverField::place) == Approx(0.02));
    CHECK(stage.value(kCrate, LeverField::mass) == 11.0);
    update(stage.model, Undo{});
    CHECK(stage.value(kCrate, LeverField::mass) == 10.0);
    CHECK(stage.value(kCrate, LeverField::place) == Approx(0.02));
    update(stage.model, Undo{});
    CHECK(stage.value(kCrate, LeverField::place) == 0.0);
}

TEST_CASE("arrow keys nudge by a small step, with Shift by ten of them") {
    Stage stage;
    stage.state.chosen = kAxis;
    stage.press_key(key::kRight);
    CHECK(stage.value(kAxis, LeverField::place) == Approx(0.41));
    stage.press_key(key::kLeft, key::kWithShift);
    CHECK(stage.value(kAxis, LeverField::place) == Approx(0.31));
    stage.state.chosen = kCrate;
    stage.press_key(key::kDown);
    CHECK(stage.value(kCrate, LeverField::mass) == Approx(9.5));
    stage.press_key(key::kUp, key::kWithShift);
    CHECK(stage.value(kCrate, LeverField::mass) == Approx(14.5));
    stage.state.chosen = kHand;
    stage.press_key(key::kRight, key::kWithControl); // clockwise
    CHECK(stage.value(kHand, LeverField::direction) == Approx(-91.0 * kDegree));
    stage.press_key(key::kUp); // no size while it is solved for
    CHECK(stage.value(kHand, LeverField::direction) == Approx(-91.0 * kDegree));
}

TEST_CASE("in US units nudges are by half an inch, a pound and a pound-force") {
    Stage stage;
    stage.press_key(key::kU);
    stage.state.chosen = kAxis;
    stage.press_key(key::kRight);
    CHECK(stage.value(kAxis, LeverField::place) == Approx(0.4 + 0.0127).epsilon(1e-12));
    stage.state.chosen = kCrate;
    stage.press_key(key::kUp);
    // Source: international yard and pound agreement of 1959, 1 lb = 0.45359237 kg.
    CHECK(stage.value(kCrate, LeverField::mass) == Approx(10.45359237).epsilon(1e-12));
    stage.press_key(key::kH);
    stage.state.chosen = kHand;
    const double before_N = stage.value(kHand, LeverField::force);
    stage.press_key(key::kUp);
    CHECK(stage.value(kHand, LeverField::force) - before_N ==
          Approx(0.45359237 * 9.80665).epsilon(1e-9)); // difference of two numbers near 65
}

TEST_CASE("a double click on a grip asks to type its number") {
    Stage stage;
    StagePointer pointer;
    pointer.on_stage = pointer.pressed = pointer.double_clicked = true;
    pointer.at_px = stage.grip(kCrate, scene::Hold::tip);
    stage.point(pointer);
    CHECK(stage.state.to_type == LeverNumber{kCrate, LeverField::mass});
    stage.state.to_type.reset();
    pointer.at_px = stage.grip(kCrate, scene::Hold::place);
    stage.point(pointer);
    CHECK(stage.state.to_type == LeverNumber{kCrate, LeverField::place});
    stage.state.to_type.reset();
    pointer.at_px = {600.0, 200.0}; // nothing is there
    stage.point(pointer);
    CHECK_FALSE(stage.state.to_type);
    CHECK_FALSE(stage.model.history.can_undo());
}

TEST_CASE("Enter asks to type the main number of the chosen part") {
    Stage stage;
    stage.state.chosen = kCrate;
    stage.press_key(key::kEnter);
    CHECK(stage.state.to_type == LeverNumber{kCrate, LeverField::mass});
}

TEST_CASE("zooming keeps the point under the pointer where it is, and the lever as it is") {
    Stage stage;
    const Point at{333.0, 271.0};
    const mechanics::Vec2 world_m = stage.state.view.to_world(at);
    StagePointer pointer;
    pointer.on_stage = true;
    pointer.at_px = at;
    for (const double notches : {1.0, 1.0, -3.0, 0.5}) {
        pointer.wheel = notches;
        stage.point(pointer);
        CHECK((stage.state.view.to_sheet(world_m) - at).norm() < 1e-9); // roundings of some 100 px
    }
    CHECK(stage.state.view_is_own);
    CHECK_FALSE(stage.model.history.can_undo());
}

TEST_CASE("any number of turns of the wheel leaves a view that can be drawn") {
    for (const double notches : {1.0, -1.0}) {
        Stage stage;
        StagePointer pointer;
        pointer.on_stage = true;
        pointer.at_px = {333.0, 271.0};
        pointer.wheel = notches;
        for (int i = 0; i < 20000; ++i)
            stage.point(pointer);
        const scene::StageView& view = stage.state.view;
        CHECK(view.px_per_m > 1e-3);
        CHECK(view.px_per_m < 1e8);
        CHECK(view.origin_px.allFinite());
        CHECK(place_step_m(view, setup::UnitSystem::si) > 0.0);
        CHECK(std::isfinite(place_step_m(view, setup::UnitSystem::us)));
    }
}

TEST_CASE("dragging with the right button pans, and Home goes back") {
    Stage stage;
    StagePointer pointer;
    pointer.on_stage = pointer.panning = true;
    pointer.at_px = {333.0, 271.0};
    pointer.moved_px = {12.0, -7.0};
    const Point before = stage.state.view.origin_px;
    stage.point(pointer);
    CHECK((stage.state.view.origin_px - before - pointer.moved_px).norm() < 1e-9);
    stage.press_key(key::kHome);
    CHECK_FALSE(stage.state.view_fits);
    CHECK_FALSE(stage.state.view_is_own);
}

TEST_CASE("a load that goes while its arrow is held is let go") {
    Stage stage;
    stage.press_key(key::kInsert);
    const scene::LeverPart added{scene::PartKind::load, 1};
    stage.press_at(stage.grip(added, scene::Hold::tip));
    REQUIRE(stage.state.held);
    REQUIRE(stage.state.held->part == added);
    stage.press_key(key::kZ, key::kWithControl);
    REQUIRE(stage.model.state.setup.lever.loads.size() == 1);
    const std::string before = exact_text(stage.model.state);
    stage.move_to({500.0, 500.0});
    stage.move_to({510.0, 500.0});
    CHECK(exact_text(stage.model.state) == before);
    CHECK_FALSE(stage.state.held);
}

TEST_CASE("a new load stands on the lever, however short the lever is") {
    for (const double length_m : {0.004, 0.007, 0.5, 1.0, 30.0}) {
        Stage stage;
        setup::LeverSetup setup = sample_setup();
        setup.lever.path_m = {{0.0, 0.0}, {length_m, 0.0}};
        setup.lever.axis_at_m = 0.4 * length_m;
        setup.lever.effort.at_m = length_m;
        stage.model = make_bench(setup, std::nullopt);
        stage.press_key(key::kInsert);
        INFO(length_m << " m: " << stage.model.message);
        REQUIRE(stage.model.state.setup.lever.loads.size() == 2);
        CHECK(stage.value({scene::PartKind::load, 1}, LeverField::place) <= length_m);
    }
}

TEST_CASE("Delete removes the chosen load, and Tab goes on from a part that is gone") {
    Stage stage;
    stage.press_key(key::kInsert);
    stage.state.chosen = {scene::PartKind::load, 1};
    stage.press_key(key::kDelete);
    CHECK(stage.model.state.setup.lever.loads.size() == 1);
    stage.press_key(key::kDelete); // load 1 is gone: nothing more to remove
    CHECK(stage.model.state.setup.lever.loads.size() == 1);
    stage.press_key(key::kUp);
    stage.press_key(key::kTab);
    const auto parts = parts_of(stage.model.state.setup.lever);
    CHECK(std::find(parts.begin(), parts.end(), stage.state.chosen) != parts.end());
}

TEST_CASE("Tab visits every part and comes back, Shift+Tab the other way") {
    Stage stage;
    const auto parts = parts_of(stage.model.state.setup.lever);
    stage.state.chosen = parts.front();
    for (std::size_t i = 1; i <= parts.size(); ++i) {
        stage.press_key(key::kTab);
        CHECK(stage.state.chosen == parts[i % parts.size()]);
    }
    stage.press_key(key::kTab, key::kWithShift);
    CHECK(stage.state.chosen == parts.back());
}

TEST_CASE("snapping steps are round and some pixels wide at every zoom") {
    scene::StageView view;
    for (double px_per_m = 0.5; px_per_m < 1.0e6; px_per_m *= 1.37) {
        view.px_per_m = px_per_m;
        const double step_m = place_step_m(view, setup::UnitSystem::si);
        INFO(px_per_m << " px/m: step " << step_m << " m");
        CHECK(step_m * px_per_m <= 10.0 * (1.0 + 1e-9)); // 1, 2 or 5 below 10 px
        CHECK(step_m * px_per_m >= 10.0 / 2.5 * (1.0 - 1e-9));
        CHECK(scene::round_step_below(step_m) == Approx(step_m).epsilon(1e-9));
        CHECK(place_step_m(view, setup::UnitSystem::us) / 0.0254 ==
              Approx(scene::round_step_below(10.0 / px_per_m / 0.0254)).epsilon(1e-9));
    }
}

TEST_CASE("the centre of the lever's own weight is dragged, and spread evenly again") {
    Stage stage;
    auto setup = stage.model.state.setup;
    setup.lever.own_weight.mass_kg = 4.0;
    update(stage.model, OpenSetup{setup});
    const double before_N = stage.model.solved.effort_N.value();
    const scene::LeverPart own{scene::PartKind::own_weight, 0};
    const Point from = stage.grip(own, scene::Hold::place);
    stage.drag(from, from + Point(-70.0, 0.0), true); // 700 px are a metre
    const double moved_m = stage.value(own, LeverField::place);
    CHECK(moved_m == Approx(0.5 * mechanics::path_length(setup.lever.path_m) - 0.1).epsilon(1e-9));
    // Worked by hand: 4 kg act 10 cm farther left about the axis, and the effort makes up for it.
    const auto& lever = stage.model.state.setup.lever;
    const double change_Nm = 4.0 * lever.gravity_m_s2 * 0.1;
    CHECK(std::abs(stage.model.solved.effort_N.value() - before_N) *
              stage.model.solved.effort.arm_m ==
          Approx(change_Nm).epsilon(1e-9));
    update(stage.model, SpreadOwnWeight{});
    CHECK(stage.model.solved.effort_N.value() == before_N);
    update(stage.model, Undo{});
    CHECK(stage.value(own, LeverField::place) == moved_m);
}

TEST_CASE("what is not drawn cannot be taken hold of") {
    Stage stage;
    auto setup = stage.model.state.setup;
    setup.lever.own_weight.mass_kg = 4.0;
    update(stage.model, OpenSetup{setup});
    const auto has_own_weight = [&] {
        const auto grips = bench_grips(stage.model, {}, stage.state);
        return std::any_of(grips.begin(), grips.end(), [](const scene::Grip& grip) {
            return grip.part.kind == scene::PartKind::own_weight;
        });
    };
    CHECK(has_own_weight());
    stage.state.all_forces = false;
    CHECK_FALSE(has_own_weight());
}

TEST_CASE("of grips at one place the chosen part's is taken") {
    Stage stage;
    auto setup = stage.model.state.setup;
    setup.lever.own_weight = {4.0, setup.lever.axis_at_m};
    update(stage.model, OpenSetup{setup});
    const scene::LeverPart own{scene::PartKind::own_weight, 0};
    const Point both = stage.grip(own, scene::Hold::place);
    for (const scene::LeverPart& chosen : {kAxis, own}) {
        stage.state.chosen = chosen;
        stage.press_at(both);
        CHECK(stage.state.chosen == chosen);
        stage.release_at(both);
    }
}
