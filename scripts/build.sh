#!/bin/bash
# Configures a preset, where that is due, and builds it: build.sh PRESET [TARGET]...
# Without a target all is built, the tests too, which are then configured if they were not before.
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
preset=$1
shift
cd "$root"
cache=build/$preset/CMakeCache.txt

has_free_MB() { [[ $(df -Pm . | awk 'NR == 2 { print $4 }') -ge $1 ]]; }

configure() {
    if ! has_free_MB 1000; then
        echo "The disk that holds $root is nearly full: a build needs 1 GB. Make room and try again." >&2
        exit 1
    fi
    mkdir -p build
    cmake --preset "$preset" "$@" > build/configure.log 2>&1 || {
        cat build/configure.log >&2
        echo "The build could not be prepared; the lines above say what is missing." >&2
        exit 1
    }
}

# Later changes of the build files are noticed by Ninja.
if [[ $# -eq 0 ]] && ! grep -qs '^BUILD_TESTING:BOOL=ON' "$cache"; then
    configure -DBUILD_TESTING=ON
elif [[ ! -f build/$preset/build.ninja ]]; then
    configure
fi

export NINJA_STATUS='[%f of %t, %e s] '
if ! ninja -C "build/$preset" -j "$(nproc)" "$@"; then
    has_free_MB 50 || echo "The disk that holds $root is full. Make room and try again." >&2
    exit 1
fi
