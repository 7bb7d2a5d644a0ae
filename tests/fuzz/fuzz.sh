#!/bin/sh
# Gives each reader new bytes for so many seconds. Usage: fuzz.sh [SECONDS]; FUZZ_TARGET for one alone.
set -eu
cd "$(dirname "$0")/../.."
seconds=${1:-600}
program=build/fuzz/bin/fuzz_readers
found=build/fuzz/found
mkdir -p "$found"
shipped_of() {
    case $1 in
    setup) echo assets/setups ;;
    body) echo assets/body ;;
    muscles) echo assets/muscles ;;
    lesson) echo assets/lessons ;;
    family) echo question_bank/families ;;
    items) echo question_bank/items ;;
    blueprint) echo assets/blueprints ;;
    esac
}
for corpus in tests/fuzz/corpus/*/; do
    target=$(basename "$corpus")
    [ "${FUZZ_TARGET:-$target}" = "$target" ] || continue
    mkdir -p "build/fuzz/grown/$target"
    echo "== $target"
    # -close_fd_mask: what a reader prints is not looked at.
    FUZZ_TARGET=$target "$program" -max_total_time="$seconds" -timeout=20 -rss_limit_mb=2048 \
        -max_len=20000 -print_final_stats=1 -artifact_prefix="$found/$target-" \
        "build/fuzz/grown/$target" "$corpus" $(shipped_of "$target")
done
