#!/bin/bash
# Formats all sources by .clang-format, and takes away braces around a single statement.
#
#   scripts/format.sh           # writes the files
#   scripts/format.sh --check   # only shows what would change; its status is 1 if anything would
#
# Two passes: the setting of clang-format 14 that takes braces away also breaks lines before lambdas
# where .clang-format alone does not.
set -euo pipefail
cd "$(dirname "$0")/.."

passing=$(mktemp -d)
trap 'rm -r "$passing"' EXIT
{ cat .clang-format; echo 'RemoveBracesLLVM: true'; } > "$passing/style"

format() {
    find src tests -name '*.h' -o -name '*.cpp' > "$passing/files"
    xargs clang-format-14 -i --style="file:$passing/style" < "$passing/files"
    xargs clang-format-14 -i --style=file < "$passing/files"
}

case "${1:-}" in
"") format ;;
--check)
    cp -r .clang-format src tests "$passing"
    (cd "$passing" && format)
    same=0
    diff -ru src "$passing/src" || same=1
    diff -ru tests "$passing/tests" || same=1
    exit $same
    ;;
*)
    echo "scripts/format.sh [--check]" >&2
    exit 2
    ;;
esac
