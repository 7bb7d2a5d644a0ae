// How long one solution of a lever takes: it is done anew in every frame of a drag.

#include "mechanics/lever/lever_solve.h"

#include <benchmark/benchmark.h>
#include <cmath>

using namespace steelyard::mechanics;

namespace {

/// The yardstick: 100 sines, each of what the last one gave, so that none can be left out.
void hundred_sines(benchmark::State& state) {
    double x = 1.0;
    for (auto _ : state) {
        for (int i = 0; i < 100; ++i)
            x = std::sin(x + 1.0);
        benchmark::DoNotOptimize(x);
    }
}
BENCHMARK(hundred_sines);

void solve(benchmark::State& state, const Lever& lever) {
    for (auto _ : state) {
        auto result = solve_lever(lever);
        benchmark::DoNotOptimize(result);
    }
}

void lever_solve_plain(benchmark::State& state) {
    solve(state, Lever{});
}
BENCHMARK(lever_solve_plain);

/// A bent lever of five corners with five loads of all kinds, own weight and a dry axle.
void lever_solve_everything(benchmark::State& state) {
    Lever lever;
    lever.path_m = {{0.0, 0.0}, {0.3, 0.1}, {0.6, 0.0}, {0.7, 0.4}, {1.1, 0.5}};
    lever.axis_at_m = 0.35;
    lever.loads = {{"one", Weight{0.0, 10.0}},
                   {"two", Weight{0.2, 5.0}},
                   {"three", PointForce{0.5, 40.0, -1.0}},
                   {"four", PointForce{0.9, 25.0, 2.0}},
                   {"hinge", Couple{3.0}}};
    lever.effort = {"hand", 1.3, -1.2};
    lever.own_weight.mass_kg = 2.0;
    lever.friction = {0.2, 0.01};
    solve(state, lever);
}
BENCHMARK(lever_solve_everything);

} // namespace
