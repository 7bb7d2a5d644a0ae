#!/bin/bash
# Builds Steelyard, having installed what is missing, and starts it: run.sh [ARGUMENT]...
# Arguments are passed on: run.sh solve FILE, run.sh --help. Without arguments the window opens;
# where there is no display the same job is done without a window.
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
program=$root/build/release/bin/steelyard

"$root/scripts/install-packages.sh" build >&2
"$root/scripts/build.sh" release steelyard >&2

if [[ $# -gt 0 || -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]]; then
    exec "$program" "$@"
fi

setup=$root/assets/setups/wheelbarrow.setup.toml
drawing=$root/build/wheelbarrow.png
echo "There is no display here, so no window can open. The same without a window:"
echo
echo "The setup $setup, solved:"
"$program" solve "$setup"
echo
"$program" draw "$setup" --out "$drawing"
echo "Its drawing: $drawing"
echo
exec "$program" ask
