#!/bin/bash
# Proves the front door on a machine that has nothing: makes a minimal Debian in a folder, clones the
# committed tree into it and runs the README's two commands there, word for word.
#   bare_machine.sh 12|13 [front-door|package|web] [FOLDER]
# front-door (as meant when nothing is said): run.sh without a display, run.sh with one, test.sh.
# package: makes the .deb there, installs it on a second bare machine, opens it from its menu entry,
# removes it. web: makes the page there, and looks that it is whole and can be handed out. FOLDER is where the machines stand: build/bare when not said.
# Needs root, and Debian's mirrors. Prints what each step took; exit status 0 when all is in order.
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
version=${1:-}
what=${2:-front-door}
folder=${3:-$root/build/bare}

case $version in
    12) suite=bookworm ;;
    13) suite=trixie ;;
    *) echo "bare_machine.sh: say which Debian, 12 or 13." >&2; exit 2 ;;
esac
[[ $EUID -eq 0 ]] || { echo "bare_machine.sh: only root may make a machine in a folder." >&2; exit 2; }
"$root/scripts/install-packages.sh" bare

report=()
# took NAME SECONDS: notes what a step took.
took() { report+=("$(printf '%-40s %5d s' "$1" "$2")"); }
fail() { printf 'bare_machine.sh: %s\n' "$*" >&2; exit 1; }

# Where this machine itself gets its packages from.
mirror_of() { apt-get indextargets --format '$(REPO_URI)' 'Created-By: Packages' "$@" | sort -u; }

# fresh_machine FOLDER: the minimal Debian, from a kept copy when there is one.
fresh_machine() {
    local machine=$1 kept=$folder/$suite.tar begin=$SECONDS mirror
    rm -rf --one-file-system "$machine"
    mkdir -p "$machine"
    if [[ ! -f $kept ]]; then
        mirror=$(mirror_of 'Origin: Debian' 'Label: Debian' | head -1)
        debootstrap --variant=minbase "$suite" "$machine" "$mirror" > "$folder/debootstrap.log" 2>&1 || {
            tail -20 "$folder/debootstrap.log" >&2
            fail "the minimal Debian $version could not be made; $folder/debootstrap.log says why"
        }
        tar -C "$machine" -cf "$kept.part" . && mv "$kept.part" "$kept"
    else
        tar -C "$machine" -xf "$kept"
    fi
    # As an installed Debian has it: the security updates beside the release, and a name server.
    local security
    security=$(mirror_of 'Origin: Debian' 'Label: Debian-Security' | head -1)
    if [[ -n $security ]]; then
        echo "deb $security $suite-security main" >> "$machine/etc/apt/sources.list"
    fi
    cp -L /etc/resolv.conf "$machine/etc/resolv.conf"
    cp /etc/apt/apt.conf.d/*registry* "$machine/etc/apt/apt.conf.d/" 2>/dev/null || true
    took "a bare Debian $version" $((SECONDS - begin))
}

# inside MACHINE COMMAND: runs a line in the machine's shell, with nothing of this machine's
# environment but the display, in namespaces of its own: all that it started ends with it.
inside() {
    local machine=$1
    unshare --mount --pid --fork --kill-child --mount-proc="$machine/proc" bash -c '
        mount --rbind /dev "$0/dev"
        exec chroot "$0" /usr/bin/env -i HOME=/srv LANG=C.UTF-8 TERM=dumb PATH="$1" "${@:3}" \
            /bin/bash -c "cd /srv/steelyard 2>/dev/null || cd /srv; $2"' \
        "$machine" /usr/local/sbin:/usr/local/bin:/usr/sbin:/usr/bin:/sbin:/bin "$2" "${@:3}"
}

# The two commands, as a reader of the README would copy them: its only lines that begin so.
command_of() {
    local line
    line=$(sed -n "s|^    \(scripts/$1\)\( *#.*\)\{0,1\}$|\1|p" "$root/README.md" | head -1)
    [[ -n $line ]] || fail "the README has no line with the command scripts/$1"
    echo "$line"
}

display=
# A display of this machine's: the bare one has none yet, as its packages are not to be needed.
start_display() {
    local read_end
    exec {read_end}< <(exec Xvfb -displayfd 1 -screen 0 1280x720x24 -nolisten tcp 2>/dev/null)
    display_server=$!
    read -r -t 30 -u "$read_end" display || fail "no virtual display could be started"
    display=:$display
}
stop_display() { [[ -z $display ]] || kill "$display_server" 2>/dev/null || true; }
trap stop_display EXIT

# window_opens MACHINE COMMAND PICTURE: runs a command until a window of ours stands there and has
# been drawn, keeps a picture of it, and ends the program.
window_opens() {
    local machine=$1 line=$2 picture=$3 program begin=$SECONDS window= colours=0
    start_display
    inside "$machine" "$line" DISPLAY="$display" LIBGL_ALWAYS_SOFTWARE=1 \
        > "$folder/window.log" 2>&1 &
    program=$!
    while ! window=$(DISPLAY=$display xdotool search --onlyvisible --name '^Steelyard$' 2>/dev/null); do
        kill -0 "$program" 2>/dev/null && ((SECONDS - begin < 120)) || {
            cat "$folder/window.log" >&2
            fail "no window opened"
        }
        sleep 0.2
    done
    while ((colours < 20)); do
        ((SECONDS - begin < 120)) || fail "the window stayed empty"
        sleep 0.3
        DISPLAY=$display import -window root "$picture"
        colours=$(identify -format '%k' "$picture")
    done
    took "the window is open and drawn" $((SECONDS - begin))
    kill "$program" 2>/dev/null || true
    wait "$program" 2>/dev/null || true
    stop_display
    display=
}

# clone_into MACHINE: the committed tree, and nothing else of this folder.
clone_into() {
    mkdir -p "$1/srv"
    git clone --quiet --no-hardlinks "$root" "$1/srv/steelyard"
}

front_door() {
    local machine=$folder/debian$version begin run test
    run=$(command_of run.sh)
    test=$(command_of test.sh)
    fresh_machine "$machine"
    clone_into "$machine"

    begin=$SECONDS
    inside "$machine" "$run" ${CXXFLAGS:+CXXFLAGS="$CXXFLAGS"} | tee "$folder/run.log"
    grep -q 'Ideal advantage' "$folder/run.log" ||
        fail "without a display, $run solved no setup"
    [[ -s $machine/srv/steelyard/build/wheelbarrow.png ]] || fail "without a display, $run drew nothing"
    took "$run: packages, build, the job" $((SECONDS - begin))

    window_opens "$machine" "$run" "$folder/window.png"

    begin=$SECONDS
    inside "$machine" "$test" CI=true ${CXXFLAGS:+CXXFLAGS="$CXXFLAGS"}
    took "$test: packages, build, all tests" $((SECONDS - begin))
}

package() {
    local maker=$folder/debian$version user=$folder/debian$version-user begin
    if [[ ! -d $maker/srv/steelyard ]]; then
        fresh_machine "$maker"
        clone_into "$maker"
    fi
    begin=$SECONDS
    inside "$maker" scripts/package.sh
    took "the package" $((SECONDS - begin))

    fresh_machine "$user"
    cp "$maker"/srv/steelyard/build/steelyard_*.deb "$user/srv/"
    inside "$user" "dpkg-query -W -f '\${Package}\n' > before"
    begin=$SECONDS
    inside "$user" "apt-get update -qq && DEBIAN_FRONTEND=noninteractive \
        apt-get install -y -qq --no-install-recommends ./steelyard_*.deb" > "$folder/install.log" 2>&1 || {
        tail -20 "$folder/install.log" >&2
        fail "the package does not install"
    }
    took "installed on another bare Debian $version" $((SECONDS - begin))
    inside "$user" 'steelyard solve wheelbarrow' > /dev/null || fail "the installed program solves nothing"
    window_opens "$user" \
        "$(sed -n 's/^Exec=\([^ ]*\).*/\1/p' "$user/usr/share/applications/steelyard.desktop")" \
        "$folder/installed-window.png"
    inside "$user" 'apt-get purge -y -qq steelyard' > /dev/null 2>&1
    local left
    left=$(find "$user" -xdev -path "$user/proc" -prune -o -ipath '*steelyard*' ! -name '*.deb' -print |
        grep -v "^$user/srv/" || true)
    [[ -z $left ]] || fail "removing it leaves files: $left"
}

web() {
    local machine=$folder/debian$version begin=$SECONDS file
    fresh_machine "$machine"
    clone_into "$machine"
    begin=$SECONDS
    inside "$machine" 'scripts/web.sh --out /srv/hosted' ${CXXFLAGS:+CXXFLAGS="$CXXFLAGS"}
    for file in index.html steelyard.js steelyard.wasm steelyard.data licences.html; do
        [[ -s $machine/srv/hosted/$file ]] || fail "the page has no $file"
    done
    took "the page: packages, sources, build" $((SECONDS - begin))
    inside "$machine" 'timeout 20 scripts/web.sh | grep "http://127.0.0.1"' ||
        fail "the page is not handed out"
}

mkdir -p "$folder"
case $what in
    front-door) front_door ;;
    package) package ;;
    web) web ;;
    *) fail "what is '$what'? It does front-door, package or web." ;;
esac
echo
echo "=== Debian $version, $what"
printf '%s\n' "${report[@]}"
