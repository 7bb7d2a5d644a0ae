#!/bin/bash
# Shows exported items in an independent renderer from npm, answers them there and compares scores:
# test_qti.sh. Needs Chromium and the network; CI leaves it out. PROGRAM names the program where it is
# not the release build's; COUNT says how many questions.
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
cd "$root"
"$root/scripts/install-packages.sh" web-test
command -v npm > /dev/null || scripts/install-packages.sh npm
tests=tests/publish/exchange/rendered
modules=build/qti_tests
mkdir -p "$modules"
cp "$tests/package.json" "$modules/"
[[ -d $modules/node_modules/playwright-core ]] ||
    npm install --silent --no-audit --no-fund --prefix "$modules"
trap 'rm -f "$tests/node_modules"' EXIT # node looks for libraries beside the tests
ln -sfn "$root/$modules/node_modules" "$tests/node_modules"
PROGRAM=${PROGRAM:-$root/build/release/bin/steelyard} node --test "$tests"/*.test.mjs
