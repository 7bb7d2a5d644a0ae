#pragma once
// A bench with a plain lever on it whose numbers can be worked in the head, and what tests ask of
// any bench.

#include "app/bench/bench_model.h"

#include <string>

namespace steelyard::app {

/// 1 m long, axis at 0.4 m, 10 kg at the left end, effort down at the right end. Under standard
/// gravity the load pulls 98.0665 N, so its torque is 39.2266 N·m and the effort 65.3777 N.
inline setup::LeverSetup sample_setup() {
    setup::LeverSetup setup;
    setup.head.name = "Sample";
    setup.lever.axis_at_m = 0.4;
    setup.lever.loads = {{"crate", mechanics::Weight{0.0, 10.0}}};
    setup.lever.effort = {"hand", 1.0, mechanics::kDown_rad};
    return setup;
}

inline BenchModel sample_bench() {
    return make_bench(sample_setup(), std::nullopt);
}

/// Everything that undo restores, exact to the last bit: written setups keep their values exactly.
inline std::string exact_text(const BenchState& state) {
    return setup::write_lever_setup(state.setup) +
           (state.hand_N ? "by hand " + std::to_string(*state.hand_N) : "solved");
}

inline constexpr scene::LeverPart kAxis{scene::PartKind::axis, 0};
inline constexpr scene::LeverPart kCrate{scene::PartKind::load, 0};
inline constexpr scene::LeverPart kHand{scene::PartKind::effort, 0};

} // namespace steelyard::app
