#!/usr/bin/env bash
# The main job on a bare Debian 12: installs what is needed, builds, predicts the sheave's rim three ways, compares
# three plans, prints the results and writes pictures, JSON and a sheet to show into the folder given (default: ./asperity-demo).
source "$(dirname "${BASH_SOURCE[0]}")/../.ci/prepare"
OUT="${1:-$PWD/asperity-demo}"
install_packages "${BUILD_PACKAGES[@]}"
build_targets "$(grep -q 'ASPERITY_TESTS:BOOL=ON' "$BUILD/CMakeCache.txt" 2>/dev/null && echo ON || echo OFF)" asperity

for plan in plunge zigzag shallow; do
  echo
  status=0
  "$BUILD/src/cli/asperity" predict "$ROOT/scenes/sheave/$plan.toml" --out "$OUT/$plan" || status=$?
  # 1 says that something wanted is not met: for the demo that is an answer, not a failure.
  [ "$status" -le 1 ] || exit "$status"
done
# The choice: the plans side by side, and a sheet to show.
plans=("$ROOT"/scenes/sheave/{plunge,zigzag,planned-arc}.toml)
echo
"$BUILD/src/cli/asperity" compare "${plans[@]}" --draws 0 --out "$OUT/compare" || [ $? -eq 1 ]
"$BUILD/src/cli/asperity" sheet "${plans[@]}" -o "$OUT/sheet.html" || [ $? -eq 1 ]
echo
echo "Pictures, JSON and the sheet to show: $OUT"
