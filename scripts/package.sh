#!/bin/bash
# Makes the .deb that installs Steelyard where there is no compiler: build/steelyard_*.deb.
#   apt install ./build/steelyard_*.deb
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)

"$root/scripts/install-packages.sh" build package
"$root/scripts/build.sh" release steelyard documents
cd "$root/build"
rm -f steelyard_*.deb
cpack --config release/CPackConfig.cmake -B release/cpack >/dev/null
mv release/cpack/steelyard_*.deb .
echo "Made build/$(ls steelyard_*.deb). To install it: apt install ./build/$(ls steelyard_*.deb)"
