#!/bin/bash
# Installs the packages that are missing: install-packages.sh [SECTION]...
# A section is a heading of packages.txt: build (the default), test, bench, ci.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
sections=("${@:-build}")

wanted=()
for section in "${sections[@]}"; do
    mapfile -t names < <(awk -v heading="[$section]" \
        '/^\[/ { inside = ($0 == heading) } inside && /^[a-z]/' "$here/packages.txt")
    if [[ ${#names[@]} -eq 0 ]]; then
        echo "install-packages.sh: packages.txt has no section [$section]." >&2
        exit 2
    fi
    wanted+=("${names[@]}")
done

if ! command -v apt-get >/dev/null; then
    echo "This is no Debian or Ubuntu, so nothing is installed. Steelyard needs the like of:" >&2
    echo "  ${wanted[*]}" >&2
    exit 0
fi

# Asked for all at once, which takes no time; a name may also be provided by another package.
installed=$(dpkg-query -W -f '${db:Status-Abbrev} ${Package} ${Provides}\n' |
    awk '/^ii/ { gsub(/[,()=]/, " "); for (i = 2; i <= NF; i++) print $i }')
mapfile -t missing < <(printf '%s\n' "${wanted[@]}" | sort -u |
    grep -vxFf <(printf '%s\n' "$installed"))
[[ ${#missing[@]} -gt 0 ]] || exit 0

as_root=()
if [[ $EUID -ne 0 ]]; then
    if ! command -v sudo >/dev/null; then
        echo "Packages are missing, only root may install them, and there is no sudo here." >&2
        echo "Ask whoever looks after this machine for:" >&2
        echo "  apt-get install --no-install-recommends ${missing[*]}" >&2
        exit 1
    fi
    as_root=(sudo)
fi

echo "Installing ${#missing[@]} packages: ${missing[*]}"
"${as_root[@]}" apt-get update -qq
# env, since sudo does not pass variables on
"${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
    apt-get install -y -qq --no-install-recommends "${missing[@]}"
