#!/bin/bash
# Makes Steelyard a page that any web server can hand out, and shows it:
#   web.sh             builds build/web/page/, serves it on this machine and prints the address
#   web.sh --out DIR   builds, and copies the folder that is to be hosted to DIR
# All it needs comes from Debian: Emscripten, and the sources of Dear ImGui, SQLite and pugixml, which
# are fetched into build/web-sources/ and never committed.
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
sources=$root/build/web-sources
page=$root/build/web/page
out=
if [[ ${1:-} == --out ]]; then
    out=${2:?web.sh: --out needs a folder}
elif [[ $# -gt 0 ]]; then
    echo "web.sh: it knows --out DIR and nothing else." >&2
    exit 2
fi
cd "$root"

if [[ ! -f $page/steelyard.wasm ]]; then
    echo "The first time: packages are installed (2 minutes), then everything is compiled for the"
    echo "browser (about 8 minutes on two cores)."
fi
scripts/install-packages.sh web

# fetch NAME: a source package of this Debian, without touching the system's own lists.
fetch() {
    [[ -d $sources/$1 ]] && return
    local apt=$sources/apt
    mkdir -p "$apt"/{parts,lists/partial,cache/archives/partial}
    apt-get indextargets --format 'deb-src $(REPO_URI) $(RELEASE) $(COMPONENT)' \
        'Created-By: Packages' 'Origin: Debian' | sort -u > "$apt/sources.list"
    cat > "$apt/apt.conf" <<CONF
Dir::Etc::sourcelist "$apt/sources.list";
Dir::Etc::sourceparts "$apt/parts";
Dir::State::lists "$apt/lists";
Dir::Cache "$apt/cache";
APT::Sandbox::User "root";
CONF
    if [[ ! -f $apt/fresh ]]; then
        APT_CONFIG=$apt/apt.conf apt-get -qq update
        touch "$apt/fresh"
    fi
    (cd "$apt" && APT_CONFIG=$apt/apt.conf apt-get -qq source "$1" > source.log 2>&1) || {
        cat "$apt/source.log" >&2
        echo "web.sh: the source of $1 could not be fetched. Is this machine on the network?" >&2
        exit 1
    }
    mv "$(find "$apt" -maxdepth 1 -type d -name "$1-*" | head -1)" "$sources/$1"
}
mkdir -p "$sources"
fetch imgui
fetch sqlite3
fetch pugixml
if [[ ! -f $sources/sqlite3/sqlite3.c ]]; then
    (cd "$sources/sqlite3" && ./configure -q > configure.log 2>&1 && make -s sqlite3.c > make.log 2>&1)
fi

# The two fonts, with the signs that the program knows (src/app/look/fonts.cpp) and nothing else.
mkdir -p build/web/fonts
for weight in Regular SemiBold; do
    font=$(find /usr/share/fonts -name "Inter-$weight.otf" -o -name "Inter-$weight.ttf" | head -1)
    made=build/web/fonts/Inter-$weight.${font##*.}
    [[ -f $made ]] || pyftsubset "$font" --output-file="$made" --layout-features='' --no-hinting \
        --unicodes=20-17F,394,3A3,3B1-3C9,2009-202F,2070-209C,2190-2193,2212,221A,2248,2260-2265
done

export NODE_PATH=/usr/share/nodejs # Debian's emscripten beside another node than Debian's
if [[ ! -f build/web/build.ninja ]]; then
    cmake --preset web > build/web/configure.log 2>&1 || { cat build/web/configure.log >&2; exit 1; }
fi
NINJA_STATUS='[%f of %t, %e s] ' ninja -C build/web steelyard

# The program's own name is not the page's: a page begins with index.html.
mkdir -p "$page"
cp build/web/bin/steelyard.{js,wasm,data} "$page/"
cp build/web/bin/steelyard.html "$page/index.html"
cp scripts/package/steelyard.svg "$page/"
/usr/bin/python3 scripts/package/notices.py LICENSE "$page/licences.html" "$sources"
echo "The page, with gzip: $(gzip -9c "$page"/steelyard.* "$page"/*.html | wc -c) bytes."

if [[ -n $out ]]; then
    mkdir -p "$out"
    cp -r "$page"/. "$out/"
    echo "$out holds the page: put it on any web server."
    exit
fi
echo "Steelyard is at http://127.0.0.1:8765/ (stop with Ctrl+C)."
exec /usr/bin/python3 scripts/web_server.py "$page" 8765
