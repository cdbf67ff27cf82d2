#!/usr/bin/env bash
# Installs what is needed (Debian 12, as root or with sudo), builds, runs every test.
source "$(dirname "${BASH_SOURCE[0]}")/../.ci/prepare"
install_packages "${BUILD_PACKAGES[@]}" libgtest-dev libbenchmark-dev clang-format python3-scipy libgwyddion20-dev libglib2.0-dev \
  xvfb xdotool xauth x11-utils chromium
build_targets ON
ctest --test-dir "$BUILD" --output-on-failure -j "$(nproc)"
