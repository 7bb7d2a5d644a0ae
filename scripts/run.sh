#!/bin/bash
# Installs what is missing, builds Steelyard and starts it: run.sh [ARGUMENT]...
# Arguments are passed on: run.sh solve FILE, run.sh --help. Without arguments the window opens;
# where there is no display the same job is done without a window.
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
program=$root/build/release/bin/steelyard

# What the program itself prints may be read by another program, so all else is told on stderr.
{
    if [[ ! -x $program ]]; then
        echo "Steelyard's first start on this machine: packages are installed (about 1 minute), then"
        echo "the program is compiled (about 6 minutes on two cores). Later starts take a second."
    fi
    "$root/scripts/install-packages.sh" build
    was=$(stat -c %Y "$program" 2>/dev/null || echo none)
    begin=$SECONDS
    "$root/scripts/build.sh" release steelyard
    if [[ $(stat -c %Y "$program") != "$was" ]]; then
        echo "Compiled in $((SECONDS - begin)) s."
    fi
} >&2

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
echo "2. Its drawing (steelyard draw $setup --out $drawing --force):"
"$program" draw "$setup" --out "$drawing" --force
echo "   is in $drawing"
echo
echo "3. A question (steelyard ask):"
echo
exec "$program" ask
