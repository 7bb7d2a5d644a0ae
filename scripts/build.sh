#!/bin/bash
# Configures a preset, if that was not done yet, and builds it: build.sh PRESET [TARGET]...
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
preset=$1
shift

cd "$root"
# Later changes of the build files are noticed by Ninja.
if [[ ! -f build/$preset/build.ninja ]]; then
    cmake --preset "$preset"
fi
exec ninja -C "build/$preset" -j "$(nproc)" "$@"
