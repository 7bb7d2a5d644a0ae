#!/bin/bash
# Builds Steelyard, having installed what is missing, and runs all its tests:
#   test.sh [--preset NAME] [ARGUMENT OF CTEST]...
# for instance test.sh -R mechanics. The window's own test starts a virtual display.
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
exec ctest --preset "$preset" --parallel "$(nproc)" "$@"
