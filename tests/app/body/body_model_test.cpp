#include "app/body/body_input.h"
#include "app/body/sample_body.h"
#include "app/platform/key.h"
#include "catch.h"
#include "mechanics/resistance/resistance_kinds.h"
#include "words/body/body_reading.h"

#include <cmath>

using namespace steelyard;
using namespace steelyard::app;
using mechanics::Hinge;
using mechanics::Segment;
using mechanics::Vec3;
using scene::Point;

namespace {

/// An exercise on a stage, with a hand.
struct Stage {
    BodyModel model;
    scene::BodyStage stage;
    BodyStageState hand;

    explicit Stage(const std::string& name)
        : model(make_body(exercise_named(name), known_muscles())) {
        const auto& setup = model.state.setup;
        stage = scene::fit_body(setup.exercise.body_case,
                                scene::solved_along(setup.exercise, {0.0, 0.5, 1.0}),
                                scene::camera_of(setup.view), {940.0, 720.0}, {});
    }

    BodyGrip grip(const std::string& name, BodyHold hold = BodyHold::place) const {
        for (const BodyGrip& grip : body_grips(model, stage))
            if (grip.name == name && grip.hold == hold)
                return grip;
        FAIL("there is no grip " << name);
        return {};
    }
    void point(const StagePointer& pointer) {
        if (const auto intent = point_on_body(model, stage, pointer, setup::UnitSystem::si, hand))
            update(model, *intent);
    }
    /// Presses on a grip and drags it by some pixels, in steps as a hand does.
    void drag(const std::string& name, const Point& by_px, BodyHold hold = BodyHold::place,
              bool snap_off = false) {
        StagePointer pointer;
        pointer.at_px = grip(name, hold).at_px;
        pointer.on_stage = pointer.pressed = true;
        point(pointer);
        pointer.pressed = false;
        pointer.snap_off = snap_off;
        for (int step = 0; step < 8; ++step) {
            pointer.moved_px = by_px / 8.0;
            pointer.at_px += pointer.moved_px;
            point(pointer);
        }
        pointer.moved_px = Point::Zero();
        pointer.released = true;
        point(pointer);
    }
    void press(int key, int modifiers = 0) {
        if (const auto intent =
                press_on_body(model, stage, {key, modifiers}, setup::UnitSystem::si, hand))
            update(model, *intent);
    }
    double start_deg(Hinge hinge) const {
        return model.exercise().body_case.pose[hinge] * 180.0 / mechanics::kPi;
    }
};

bool same_pose(const mechanics::Exercise& one, const mechanics::Exercise& other) {
    return one.body_case.pose.angle_rad == other.body_case.pose.angle_rad &&
           one.path.has_value() == other.path.has_value() &&
           (!one.path || one.path->end_angle_rad == other.path->end_angle_rad);
}

} // namespace

TEST_CASE("An exercise opens where its first axis works hardest", "[body-model]") {
    const Stage stage("curl-dumbbell");
    CHECK(stage.model.progress == Approx(words::hardest_place(stage.model.state.setup).value()));
    // A dumbbell curl is hardest with the forearm level: at 90 degrees with the arm hanging.
    // Source: published moment-arm reasoning of any statics text; the margin is for the forearm's
    // own weight, whose centre lies on the same line, and the search's step.
    CHECK(stage.model.posed.pose[Hinge::right_elbow_flexion] * 180.0 / mechanics::kPi ==
          Approx(90.0).margin(3.0));
}

TEST_CASE("A hand dragged along its way goes through the repetition and changes nothing",
          "[body-model]") {
    Stage stage("curl-dumbbell");
    update(stage.model, Scrub{0.5});
    const mechanics::Exercise before = stage.model.exercise();
    const auto trail = trail_of(before, carrier_of(before.body_case.resistances.front()));
    const std::string name = before.body_case.resistances.front().name;
    const Point way = stage.stage.to_sheet(trail[20]) - stage.grip(name).at_px;
    stage.drag(name, way);
    CHECK(stage.model.progress == Approx(20.0 / 32.0).margin(0.02));
    CHECK(same_pose(stage.model.exercise(), before));
    CHECK_FALSE(stage.model.history.can_undo());
}

TEST_CASE("A hand pulled off its way poses the arm, in one step of undo", "[body-model]") {
    Stage stage("curl-dumbbell");
    const mechanics::Exercise before = stage.model.exercise();
    const std::string name = before.body_case.resistances.front().name;
    const BodyGrip taken = stage.grip(name);
    const Point by{70.0, -30.0};
    stage.drag(name, by);
    CHECK_FALSE(same_pose(stage.model.exercise(), before));
    // As near to where it was dragged as the elbow's range lets the whole path move.
    const Point reached = stage.grip(name).at_px;
    CHECK((reached - taken.at_px - by).norm() < 0.8 * by.norm());
    update(stage.model, UndoBody{});
    CHECK(same_pose(stage.model.exercise(), before));
    CHECK_FALSE(stage.model.history.can_undo());
    update(stage.model, RedoBody{});
    CHECK(stage.grip(name).at_px == reached);
}

TEST_CASE("A joint that the repetition leaves still poses the body at once", "[body-model]") {
    Stage stage("curl-dumbbell");
    const double before_deg = stage.start_deg(Hinge::right_shoulder_flexion);
    stage.drag("right elbow", {40.0, -10.0});
    CHECK(stage.start_deg(Hinge::right_shoulder_flexion) > before_deg + 5.0);
    CHECK(stage.start_deg(Hinge::left_shoulder_flexion) == Approx(before_deg));
}

TEST_CASE("A load's arrow is dragged to make it heavier", "[body-model]") {
    Stage stage("curl-dumbbell");
    const std::string name = stage.model.exercise().body_case.resistances.front().name;
    const BodyNumber size{{BodyPartKind::load, 0}, BodyField::size};
    const double before_kg = value_of(stage.model.standing(), size).value();
    stage.drag(name, {0.0, 40.0}, BodyHold::tip);
    const double after_kg = value_of(stage.model.standing(), size).value();
    // So many newtons as the arrows' scale says, in steps of half a kilogram.
    const double asked_kg = before_kg + 40.0 / stage.stage.px_per_N / mechanics::kStandardGravity;
    CHECK(after_kg == Approx(asked_kg).margin(0.26));
    CHECK(std::remainder(after_kg, 0.5) == Approx(0.0).margin(1e-9));
    update(stage.model, UndoBody{});
    CHECK(value_of(stage.model.standing(), size).value() == before_kg);
}

TEST_CASE("A pulley follows the hand, and never goes below the floor", "[body-model]") {
    Stage stage("curl-cable");
    const Vec3 before_m = fixture_place(stage.model.exercise(), 0).value();
    stage.drag("pulley of the cable", {60.0, -80.0}, BodyHold::place, true);
    const Vec3 after_m = fixture_place(stage.model.exercise(), 0).value();
    CHECK(after_m.x() - before_m.x() == Approx(60.0 / stage.stage.px_per_m));
    CHECK(after_m.y() - before_m.y() == Approx(80.0 / stage.stage.px_per_m));
    CHECK(after_m.z() == before_m.z());
    stage.drag("pulley of the cable", {0.0, 600.0});
    CHECK(fixture_place(stage.model.exercise(), 0)->y() == 0.0);
}

TEST_CASE("Keys choose a grip and move it by a centimetre", "[body-model]") {
    Stage stage("curl-cable");
    const double progress = stage.model.progress;
    stage.press(key::kRight); // nothing chosen: through the repetition
    CHECK(stage.model.progress == Approx(progress + 0.02));
    while (!stage.hand.chosen || stage.hand.chosen->kind != BodyPartKind::fixture)
        stage.press(key::kTab);
    const double before_m = fixture_place(stage.model.exercise(), 0)->x();
    stage.press(key::kRight);
    stage.press(key::kRight, key::kWithShift);
    CHECK(fixture_place(stage.model.exercise(), 0)->x() == Approx(before_m + 0.06));
    update(stage.model, UndoBody{}); // a run of nudges is one step
    CHECK(fixture_place(stage.model.exercise(), 0)->x() == Approx(before_m));
    stage.press(key::kEscape);
    CHECK_FALSE(stage.hand.chosen);
}

TEST_CASE("A typed angle holds where the repetition stands", "[body-model]") {
    Stage stage("curl-dumbbell");
    update(stage.model, Scrub{0.5});
    const BodyNumber angle{
        {BodyPartKind::joint, mechanics::index_of(mechanics::Joint::right_shoulder)},
        BodyField::angle,
        Hinge::right_shoulder_flexion};
    update(stage.model, SetBodyNumber{angle, 0.5, 0});
    CHECK(value_of(stage.model.standing(), angle).value() == Approx(0.5));
    CHECK(stage.model.posed.pose[Hinge::right_shoulder_flexion] == Approx(0.5));
    // Far beyond its range it stops at the end of the range.
    update(stage.model, SetBodyNumber{angle, 99.0, 0});
    CHECK(stage.model.posed.pose[Hinge::right_shoulder_flexion] ==
          Approx(mechanics::hinge_info(Hinge::right_shoulder_flexion).most_rad));
}

TEST_CASE("A size that cannot be is refused with a sentence and changes nothing", "[body-model]") {
    Stage stage("curl-band");
    const mechanics::Exercise before = stage.model.exercise();
    // A band that is far too short would be stretched beyond its table.
    update(stage.model, SetBodyNumber{{{BodyPartKind::load, 0}, BodyField::slack}, 0.1, 0});
    CHECK_FALSE(stage.model.message.empty());
    CHECK(same_pose(stage.model.exercise(), before));
    CHECK(value_of(stage.model.standing(), {{BodyPartKind::load, 0}, BodyField::slack}) ==
          value_of({before, 0.0}, {{BodyPartKind::load, 0}, BodyField::slack}));
}

TEST_CASE("No drag of any grip of any shipped exercise breaks the model", "[body-model]") {
    for (const char* name :
         {"squat-bar-back", "lateral-raise-straight", "bench-press", "push-up", "leg-curl-machine",
          "trunk-rotation-cable-far", "curl-band", "kettlebell-swing", "neck-partner"}) {
        Stage stage(name);
        INFO(name);
        for (const BodyGrip& grip : body_grips(stage.model, stage.stage))
            for (const Point& by : {Point(150.0, -90.0), Point(-400.0, 260.0)}) {
                INFO(grip.name);
                const std::vector<BodyGrip> now = body_grips(stage.model, stage.stage);
                const bool there = std::any_of(now.begin(), now.end(), [&](const BodyGrip& one) {
                    return one.name == grip.name && one.hold == grip.hold;
                });
                if (there) // an arrow that vanished or joints that now hide one another
                    stage.drag(grip.name, by, grip.hold);
                for (const Hinge axis : stage.model.state.setup.axes)
                    CHECK(std::isfinite(stage.model.solved.muscle(axis)));
                CHECK(mechanics::check_pose(stage.model.posed.body, stage.model.posed.pose));
            }
        while (stage.model.history.can_undo())
            update(stage.model, UndoBody{});
        CHECK(same_pose(stage.model.exercise(), exercise_named(name).exercise));
    }
}
