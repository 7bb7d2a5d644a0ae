#!/bin/bash
# Installs the packages that are missing: install-packages.sh [SECTION]...
# A section is a heading of packages.txt: build (the default), test, bench, package, bare, ci.
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

stop() {
    printf '%s\n' "$@" >&2
    exit 1
}

as_root=()
if [[ $EUID -ne 0 ]]; then
    command -v sudo >/dev/null ||
        stop "Packages are missing, only root may install them, and there is no sudo here." \
            "Ask whoever looks after this machine for:" \
            "  apt-get install --no-install-recommends ${missing[*]}"
    as_root=(sudo)
fi

free_MB=$(df -Pm /usr | awk 'NR == 2 { print $4 }')
[[ $free_MB -ge 1500 ]] ||
    stop "The packages need up to 1.5 GB in /usr, where $free_MB MB are free. Make room and try again."

begin=$SECONDS
echo "Installing ${#missing[@]} packages: ${missing[*]}"
# env, since sudo does not pass variables on
apt=("${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get -qq -o Dpkg::Use-Pty=0)
"${apt[@]}" update -o APT::Update::Error-Mode=any ||
    stop "The list of packages could not be fetched. Is this machine on the network?" \
        "Try again when it is: what is installed already stays."

mapfile -t unknown < <(apt-get --simulate install "${missing[@]}" 2>&1 |
    sed -n "s/^E: Unable to locate package //p
            s/^E: Package '\(.*\)' has no installation candidate/\1/p")
[[ ${#unknown[@]} -eq 0 ]] ||
    stop "This distribution has no package called ${unknown[*]}." \
        "Steelyard is made for Debian 12 and 13; on others, the .deb that scripts/package.sh makes" \
        "on a Debian 12 machine may serve."

said=$(mktemp)
trap 'rm -f "$said"' EXIT
"${apt[@]}" install -y --no-install-recommends "${missing[@]}" > "$said" 2>&1 || {
    cat "$said" >&2
    stop "The packages could not be installed; the lines above say why. When the network or the disk" \
        "was at fault, try again: what is installed already stays."
}
echo "Installed in $((SECONDS - begin)) s."
