#!/bin/bash
# Makes the page and tests it in a real browser: test_web.sh [ARGUMENT]...
# Arguments are passed on to node --test. The page's numbers are held against those of the native
# program: PROGRAM where that is set, else the release build's, which is made first.
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
cd "$root"
scripts/install-packages.sh web web-test
command -v npm > /dev/null || scripts/install-packages.sh npm
if [[ -z ${PROGRAM:-} ]]; then
    scripts/install-packages.sh build
    scripts/build.sh release steelyard
    PROGRAM=$root/build/release/bin/steelyard
fi
scripts/web.sh --out build/web/hosted
NODE_PATH=/usr/share/nodejs ninja -C build/web questions
modules=build/web/tests
mkdir -p "$modules"
cp tests/web/package.json "$modules/"
[[ -d $modules/node_modules/playwright-core ]] ||
    npm install --silent --no-audit --no-fund --prefix "$modules"
trap 'rm -f tests/web/node_modules' EXIT # node looks for libraries beside the tests
ln -sfn "../../$modules/node_modules" tests/web/node_modules
export PROGRAM
PAGE=$root/build/web/hosted QUESTIONS=$root/build/web/bin/questions.js \
    node --test --test-concurrency=1 "$@" tests/web/*.test.mjs
