#!/usr/bin/env bash
# Data flows one way: a room includes only rooms before it. Files stay short, and the README shows the reference job as
# it is in scenes.
set -euo pipefail
cd "$(dirname "$0")/../.."
ROOMS=(base shape job gcode passes motion chart sweep cut surface texture finding predict number tolerance compare study calibrate report picture render viewer sheet cli)
failures=0

rank() { for i in "${!ROOMS[@]}"; do [ "${ROOMS[$i]}" = "$1" ] && { echo "$i"; return; }; done; echo -1; }

for room in "${ROOMS[@]}"; do
  mine=$(rank "$room")
  while IFS=: read -r file include; do
    other=$(sed -E 's/.*"asperity\/([a-z]+)\/.*/\1/' <<<"$include")
    theirs=$(rank "$other")
    if [ "$theirs" -lt 0 ] || [ "$theirs" -gt "$mine" ]; then
      echo "$file includes room '$other', which does not come before '$room'"
      failures=$((failures + 1))
    fi
  done < <(grep -rHE '#include "asperity/' "include/asperity/$room" "src/$room" 2>/dev/null | sed 's/:#include/:#include/')
done

# The engine draws nothing and prints nothing.
if grep -rnE '#include <(epoxy|GL|GLFW|imgui|iostream|cstdio)' include/asperity/{base,shape,job,gcode,passes,motion,chart,sweep,cut,surface,texture,finding,predict,number,tolerance,compare,study,calibrate} \
     src/{base,shape,job,gcode,passes,motion,chart,sweep,cut,surface,texture,finding,predict,number,tolerance,compare,study,calibrate} 2>/dev/null; then
  echo "the engine must not draw or print"; failures=$((failures + 1))
fi

while read -r lines file; do
  limit=400
  case "$file" in include/*) limit=150 ;; tests/*) limit=420 ;; esac
  if [ "$lines" -gt "$limit" ]; then echo "$file has $lines lines, more than $limit"; failures=$((failures + 1)); fi
done < <(find include src tests -name '*.h' -o -name '*.cpp' | xargs wc -l | grep -v ' total$')

.ci/same_reference || { echo "README's job file reference differs from scenes/reference.toml"; failures=$((failures + 1)); }

[ "$failures" -eq 0 ] && echo "layers, sizes and reference: fine"
exit "$failures"
