#include "app/bench/lever_shape.h"
#include "app/bench/sample_bench.h"
#include "catch.h"
#include "mechanics/lever/lever_geometry.h"
#include "mechanics/lever/random_lever.h"

using namespace steelyard;
using namespace steelyard::app;
using mechanics::Vec2;

namespace {

/// Moves a corner of the sample, 1 m long from the origin to the right.
BenchModel with_end_at(const Vec2& to_m) {
    BenchModel model = sample_bench();
    update(model, MoveCorner{1, to_m, 1});
    return model;
}

} // namespace

TEST_CASE("a lever that is lengthened keeps what acts on it in its place") {
    const BenchModel model = with_end_at({1.5, 0.0});
    const mechanics::Lever& lever = model.state.setup.lever;
    CHECK(mechanics::path_length(lever.path_m) == 1.5);
    CHECK(std::abs(lever.axis_at_m - 0.4) < 1e-15);
    CHECK(std::abs(lever.effort.at_m - 1.0) < 1e-15);
    CHECK(std::abs(*model.solved.effort_N - 65.3777) < 1e-3); // as before: only the beam is longer
}

TEST_CASE("a lever that is pulled out at its start keeps what acts on it in its place") {
    BenchModel model = sample_bench();
    update(model, MoveCorner{0, {-0.5, 0.0}, 1});
    const mechanics::Lever& lever = model.state.setup.lever;
    CHECK(std::abs(mechanics::path_length(lever.path_m) - 1.5) < 1e-12);
    CHECK((mechanics::point_at(lever.path_m, lever.axis_at_m) - Vec2(0.4, 0.0)).norm() < 1e-12);
    CHECK((model.solved.loads[0].point_m - Vec2(0.0, 0.0)).norm() < 1e-12);
    CHECK(std::abs(*model.solved.effort_N - 65.3777) < 1e-3);
}

TEST_CASE("a lever that is shortened takes along what would hang beyond its end") {
    const BenchModel model = with_end_at({0.8, 0.0});
    CHECK(std::abs(model.state.setup.lever.effort.at_m - 0.8) < 1e-15);
    CHECK(std::abs(*model.solved.effort_N - 98.0665) < 1e-3); // arms 0.4 and 0.4 m
}

TEST_CASE("a lever that would have no length is refused, with the reason") {
    const BenchModel model = with_end_at({0.0, 0.0});
    CHECK_FALSE(model.message.empty());
    CHECK(exact_text(model.state) == exact_text(sample_bench().state));
}

TEST_CASE("a further corner changes no number until it is pulled") {
    BenchModel model = sample_bench();
    update(model, AddCorner{});
    REQUIRE(model.state.setup.lever.path_m.size() == 3);
    CHECK(*model.solved.effort_N == *sample_bench().solved.effort_N);
    update(model, MoveCorner{1, {0.5, 0.2}, 1});
    // The axis, 0.4 m along, now lies on the rising half: nearest to (0.4, 0) on the line from
    // (0, 0) to (0.5, 0.2) is (0.5, 0.2) × 0.2 / 0.29 = (0.3448, 0.1379).
    CHECK((model.solved.axis_m - Vec2(0.2 / 0.29 * 0.5, 0.2 / 0.29 * 0.2)).norm() < 1e-12);
}

TEST_CASE("an inner corner can be removed, and an end cannot") {
    BenchModel model = sample_bench();
    update(model, AddCorner{});
    update(model, RemoveCorner{1});
    CHECK(model.state.setup.lever.path_m == sample_setup().lever.path_m);
    update(model, RemoveCorner{0});
    CHECK(model.state.setup.lever.path_m == sample_setup().lever.path_m);
    CHECK_FALSE(model.message.empty());
}

TEST_CASE("corners of any lever can be pulled anywhere: it is solved again, or refused") {
    mechanics::RandomNumbers random(21);
    for (int i = 0; i < 500; ++i) {
        setup::LeverSetup setup;
        setup.lever = mechanics::random_lever(random, {true, true, false});
        BenchModel model = make_bench(setup, std::nullopt);
        for (int step = 0; step < 5; ++step) {
            const auto corner = static_cast<std::size_t>(
                random.between(0.0, static_cast<double>(model.state.setup.lever.path_m.size())));
            update(model,
                   MoveCorner{corner, {random.between(-1.0, 1.0), random.between(-1.0, 1.0)}, 0});
            if (step == 2)
                update(model, AddCorner{});
        }
        CHECK(mechanics::solve_lever(model.state.setup.lever).has_value());
        while (model.history.can_undo())
            update(model, Undo{});
        CHECK(exact_text(model.state) == exact_text({setup, std::nullopt}));
    }
}

TEST_CASE("a load of another kind is as large as before") {
    BenchModel model = sample_bench();
    update(model, ChangeLoad{0, LoadKind::pull});
    CHECK(std::abs(
              std::get<mechanics::PointForce>(model.state.setup.lever.loads[0].action).magnitude_N -
              98.0665) < 1e-9);
    update(model, ChangeLoad{0, LoadKind::torque});
    CHECK(std::abs(
              std::abs(
                  std::get<mechanics::Couple>(model.state.setup.lever.loads[0].action).torque_Nm) -
              39.2266) < 1e-4);
    CHECK(std::abs(*model.solved.effort_N - 65.3777) < 1e-3);
    update(model, ChangeLoad{0, LoadKind::weight});
    const auto& weight = std::get<mechanics::Weight>(model.state.setup.lever.loads[0].action);
    // It hangs on the longer side, 0.75 m along: 39.2266 N·m over an arm of 0.35 m.
    CHECK(weight.at_m == 0.75);
    CHECK(std::abs(weight.mass_kg - 39.2266 / 0.35 / 9.80665) < 1e-4);
}

TEST_CASE("parts and the setup can be given names") {
    BenchModel model = sample_bench();
    update(model, NamePart{kCrate, "keg"});
    update(model, NamePart{kHand, "left hand"});
    update(model, NameSetup{"Keg on a plank"});
    CHECK(model.state.setup.lever.loads[0].name == "keg");
    CHECK(model.state.setup.lever.effort.name == "left hand");
    CHECK(model.state.setup.head.name == "Keg on a plank");
    update(model, NamePart{kCrate, ""});
    CHECK(model.state.setup.lever.loads[0].name == "keg");
    CHECK_FALSE(model.message.empty());
}
