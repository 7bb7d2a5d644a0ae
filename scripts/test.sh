#!/bin/bash
# Builds Steelyard, having installed what is missing, and runs all its tests:
#   test.sh [--preset dev|release|asan] [ARGUMENT OF CTEST]...
# for instance test.sh -R mechanics. The window is tested on a virtual display.
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
preset=release
if [[ "${1:-}" == --preset ]]; then
    preset=$2
    shift 2
fi

"$root/scripts/install-packages.sh" build test
"$root/scripts/build.sh" "$preset"

cd "$root"
exec xvfb-run --auto-servernum --server-args="-screen 0 1600x1000x24" \
    ctest --preset "$preset" --parallel "$(nproc)" "$@"
