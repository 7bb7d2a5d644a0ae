#!/bin/bash
# Times what we promise about speed and prints ratios measured in one run; exit status 1 when a
# promise is not kept. Arguments go to Google Benchmark: bench.sh --benchmark_filter=lever
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)

"$root/scripts/install-packages.sh" build test bench
cd "$root"
cmake --preset release -DBUILD_TESTING=ON -DSTEELYARD_BENCH=ON >/dev/null
ninja -C build/release -j "$(nproc)" bench learner_bench
# Without arguments, also what the model of the learner promises: two minutes of simulation.
if [[ $# -eq 0 ]]; then
    build/release/bin/learner_bench
fi
# Frames are timed where every machine can: on a virtual display, drawn by software.
exec xvfb-run --auto-servernum --server-args="-screen 0 1920x1080x24 -noreset" \
    env LIBGL_ALWAYS_SOFTWARE=1 build/release/bin/bench "$@"
