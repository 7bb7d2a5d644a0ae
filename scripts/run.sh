#!/bin/bash
# Builds Steelyard, having installed what is missing, and starts it: run.sh [ARGUMENT]...
# Arguments are passed on: run.sh solve FILE, run.sh --help. Without arguments the window opens;
# where there is no display the same job is done without a window.
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
program=$root/build/release/bin/steelyard

# What the program itself prints may be read by another program, so all else is told on stderr.
"$root/scripts/install-packages.sh" build >&2
"$root/scripts/build.sh" release steelyard >&2

if [[ $# -gt 0 || -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]]; then
    exec "$program" "$@"
fi

setup=wheelbarrow
drawing=$root/build/$setup.png
echo "There is no display here, so no window can open. The same job without a window:"
echo
echo "1. A setup, solved (steelyard solve $setup):"
echo
"$program" solve "$setup"
echo
echo "2. Its drawing (steelyard draw $setup --out $drawing):"
"$program" draw "$setup" --out "$drawing"
echo "   is in $drawing"
echo
echo "3. A question (steelyard ask):"
echo
exec "$program" ask
