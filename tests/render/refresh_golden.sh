#!/usr/bin/env bash
# Draws the kept pictures anew. First shows what would change: old, new and difference of each on one sheet, in a
# folder it names; with --keep the new ones replace the kept ones (say in the commit why they changed).
set -euo pipefail
here="$(cd "$(dirname "$0")" && pwd)"
source "$here/../../.ci/prepare"
out="${ASPERITY_GOLDEN_OUT:-$(mktemp -d)}"
mkdir -p "$out"
build_targets ON test_render
ASPERITY_GOLDEN_OUT="$out" "$BUILD/tests/render/test_render" --gtest_filter='GoldenPicture.*' --gtest_brief=1
echo "old | new | difference (x4):"
ls "$out"/*-sheet.png
if [ "${1:-}" = "--keep" ]; then
  mkdir -p "$here/golden"
  for picture in "$out"/*.png; do
    case "$picture" in *-sheet.png) ;; *) cp "$picture" "$here/golden/" ;; esac
  done
  echo "kept in $here/golden"
fi
