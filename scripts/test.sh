#!/bin/bash
# Installs what is missing, builds Steelyard and runs all its tests:
#   test.sh [--preset NAME] [ARGUMENT OF CTEST]...
# for instance test.sh -R mechanics. The window's own tests start a virtual display.
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
preset=release
if [[ "${1:-}" == --preset ]]; then
    preset=$2
    shift 2
fi

echo "The tests: their packages (half a minute), compiling (about 4 minutes on two cores at the"
echo "first time, more if the program is not built yet), running (2 minutes)."
"$root/scripts/install-packages.sh" build test
begin=$SECONDS
"$root/scripts/build.sh" "$preset"
echo "Compiled in $((SECONDS - begin)) s."

cd "$root"
exec ctest --preset "$preset" --parallel "$(nproc)" "$@"
