#!/bin/bash
# Makes the page and tests it in a real browser: test_web.sh [ARGUMENT]...
# Arguments are passed on to node --test. The native program is what its numbers are held against.
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
cd "$root"
scripts/install-packages.sh build web web-test
scripts/build.sh release steelyard
scripts/web.sh --out build/web/hosted
modules=build/web/tests
mkdir -p "$modules"
cp tests/web/package.json "$modules/"
[[ -d $modules/node_modules/playwright-core ]] || npm install --silent --no-audit --no-fund --prefix "$modules"
ln -sfn "../../$modules/node_modules" tests/web/node_modules
PAGE=$root/build/web/hosted PROGRAM=$root/build/release/bin/steelyard \
    NODE_MODULES=$root/$modules/node_modules node --test "$@" tests/web/
