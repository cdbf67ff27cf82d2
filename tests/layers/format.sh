#!/usr/bin/env bash
# Fails if a source file is not as clang-format would write it.
set -euo pipefail
cd "$(dirname "$0")/../.."
find include src tests \( -name '*.cpp' -o -name '*.h' \) -print0 | xargs -0 clang-format --dry-run --Werror
