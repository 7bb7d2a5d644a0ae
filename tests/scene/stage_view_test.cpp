#include "catch.h"
#include "mechanics/lever/lever_geometry.h"
#include "mechanics/lever/random_lever.h"
#include "scene/stage_view.h"

#include <cmath>

using namespace steelyard;
using namespace steelyard::scene;

TEST_CASE("a fitted view shows the whole lever inside the margins, whatever its shape and size") {
    mechanics::RandomNumbers random(21);
    for (int i = 0; i < 3000; ++i) {
        mechanics::Lever lever = mechanics::random_lever(random, {});
        const double size = std::pow(10.0, random.between(-3.0, 2.0)); // millimetres to 100 m
        for (mechanics::Vec2& corner : lever.path_m)
            corner *= size;
        lever.axis_at_m *= size;
        lever.effort.at_m *= size;
        lever.own_weight.centre_at_m.reset();
        lever.loads = {{"load", mechanics::Weight{0.0, random.between(0.001, 1000.0)}}};
        const auto solved = mechanics::solve_lever(lever);
        REQUIRE(solved);
        const Point size_px{random.between(480.0, 3000.0), random.between(360.0, 2000.0)};
        const StageMargins margins{0.12 * size_px.x(), 0.25 * size_px.y(), 0.2 * size_px.y()};
        const StageView view = fit_lever(lever, *solved, size_px, margins);
        const double slack_px = 1e-6; // roundings of positions below 3000 px
        for (const mechanics::Vec2& corner : lever.path_m) {
            const Point at = view.to_sheet(corner);
            // Arrows may push the lever some way into the margins, never out of them.
            CHECK(at.x() >= 0.4 * margins.side_px - slack_px);
            CHECK(at.x() <= size_px.x() - 0.4 * margins.side_px + slack_px);
            CHECK(at.y() >= margins.top_px - slack_px);
            CHECK(at.y() <= size_px.y() - 0.75 * margins.bottom_px + slack_px);
        }
        CHECK(view.px_per_N > 0.0);
        CHECK(std::isfinite(view.px_per_N));
    }
}

TEST_CASE("without forces the lever lies in the middle between the margins") {
    mechanics::Lever lever;
    lever.loads.clear();
    const StageMargins margins{120.0, 170.0, 140.0};
    const StageView view =
        fit_lever(lever, *mechanics::solve_lever(lever), {940.0, 720.0}, margins);
    const Point middle = view.to_sheet({0.5, 0.0});
    CHECK(middle.x() == Approx(470.0));
    CHECK(middle.y() == Approx(0.5 * (170.0 + 720.0 - 140.0)));
    CHECK(view.px_per_m == Approx(940.0 - 2.0 * 120.0)); // a metre fills the width
}

TEST_CASE("arrows end between heading and strip") {
    mechanics::RandomNumbers random(24);
    const StageMargins margins{120.0, 170.0, 140.0};
    const Point size_px{940.0, 720.0};
    for (int i = 0; i < 1000; ++i) {
        const mechanics::Lever lever = mechanics::random_lever(random, {});
        const auto solved = mechanics::solve_lever(lever);
        REQUIRE(solved);
        const StageView view = fit_lever(lever, *solved, size_px, margins);
        const auto check = [&](const mechanics::Vec2& point_m, const mechanics::Vec2& force_N) {
            const Point tip =
                view.to_sheet(point_m) + view.px_per_N * Point(force_N.x(), -force_N.y());
            CHECK(tip.y() >= margins.top_px - 1e-6); // roundings of 1000 px
            CHECK(tip.y() <= size_px.y() - 0.75 * margins.bottom_px + 1e-6);
            CHECK(tip.x() >= 0.0);
            CHECK(tip.x() <= size_px.x());
        };
        for (const mechanics::ForceReading& load : solved->loads)
            check(load.point_m, load.force_N);
        check(solved->effort.point_m, solved->effort.force_N);
        check(solved->axis_m, solved->axis_reaction_N);
    }
}

TEST_CASE("the largest force gets a long arrow that stays on the stage") {
    mechanics::RandomNumbers random(22);
    for (int i = 0; i < 500; ++i) {
        const mechanics::Lever lever = mechanics::random_lever(random, {});
        const auto solved = mechanics::solve_lever(lever);
        REQUIRE(solved);
        const Point size_px{940.0, 720.0};
        const StageView view = fit_lever(lever, *solved, size_px, {});
        double largest_N =
            std::max(solved->effort.force_N.norm(), solved->own_weight.force_N.norm());
        for (const mechanics::ForceReading& load : solved->loads)
            largest_N = std::max(largest_N, load.force_N.norm());
        CHECK(largest_N * view.px_per_N < 0.5 * size_px.y());
        // Shortened to fit among others, it is still as long as a few grips are wide.
        CHECK(std::max(largest_N, solved->axis_reaction_N.norm()) * view.px_per_N > 60.0);
    }
}

TEST_CASE("a lever on which nothing pulls can be fitted") {
    mechanics::Lever lever;
    lever.loads.clear();
    const auto solved = mechanics::solve_lever(lever);
    REQUIRE(solved);
    const StageView view = fit_lever(lever, *solved, {940.0, 720.0}, {});
    CHECK(std::isfinite(view.px_per_N));
    CHECK(view.px_per_N > 0.0);
}

TEST_CASE("a stage smaller than its margins still gives a view that can be drawn") {
    const mechanics::Lever lever;
    const StageView view =
        fit_lever(lever, *mechanics::solve_lever(lever), {100.0, 90.0}, {120.0, 150.0, 150.0});
    CHECK(view.px_per_m > 0.0);
    CHECK(view.px_per_N > 0.0);
    CHECK(view.origin_px.allFinite());
}

TEST_CASE("from the world to the sheet and back gives the same point") {
    mechanics::RandomNumbers random(23);
    for (int i = 0; i < 2000; ++i) {
        StageView view;
        view.origin_px = {random.between(-2000.0, 2000.0), random.between(-2000.0, 2000.0)};
        view.px_per_m = std::pow(10.0, random.between(-2.0, 5.0));
        const mechanics::Vec2 world_m{random.between(-5.0, 5.0), random.between(-5.0, 5.0)};
        const mechanics::Vec2 back_m = view.to_world(view.to_sheet(world_m));
        // A position of some 1000 px is kept to 1e-12 px or so; seen from the world, by the scale.
        CHECK((back_m - world_m).norm() < 1e-11 / view.px_per_m + 1e-14);
    }
}

TEST_CASE("up in the world is up on the sheet") {
    const StageView view;
    CHECK(view.to_sheet({0.0, 1.0}).y() == view.origin_px.y() - view.px_per_m);
    CHECK(view.to_sheet({1.0, 0.0}).x() == view.origin_px.x() + view.px_per_m);
}

TEST_CASE("zooming in and out again gives the same view") {
    const StageView view;
    const Point about{321.0, 123.0};
    const StageView same = zoomed(zoomed(view, about, 3.7), about, 1.0 / 3.7);
    CHECK((same.origin_px - view.origin_px).norm() < 1e-10); // a few roundings of 1000 px
    CHECK(same.px_per_m == Approx(view.px_per_m).epsilon(1e-14));
    CHECK(same.px_per_N == view.px_per_N); // arrows keep their scale
}

TEST_CASE("round steps are 1, 2 or 5 times a power of ten, the largest not above") {
    CHECK(round_step_below(1.0) == Approx(1.0));
    CHECK(round_step_below(1.99) == Approx(1.0));
    CHECK(round_step_below(2.0) == Approx(2.0));
    CHECK(round_step_below(4.9) == Approx(2.0));
    CHECK(round_step_below(7.0) == Approx(5.0));
    CHECK(round_step_below(0.3) == Approx(0.2));
    CHECK(round_step_below(123456.0) == Approx(100000.0));
    for (double value = 1e-9; value < 1e9; value *= 1.7) {
        const double step = round_step_below(value);
        CHECK(step <= value * (1.0 + 1e-8));
        CHECK(step > value / 2.5 * (1.0 - 1e-8));
    }
}
