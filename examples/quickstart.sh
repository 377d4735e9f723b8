#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# From a fresh clone to a first answer: installs the few libraries that the program needs, builds the
# program alone, and assesses one invented newborn. May be run again at any time.
set -euo pipefail
cd "$(dirname "$0")/.."

baby=examples/first-light/case.yaml

echo "==> installing what is missing"
tests/install.sh build

echo "==> building the program in build/"
options=()
if [[ ! -f build/CMakeCache.txt ]]; then
    options=(-G Ninja -DASTERISM_TESTS=OFF)
fi
cmake -S . -B build "${options[@]}" -Wno-dev --log-level=WARNING
cmake --build build --target asterism --parallel "${ASTERISM_JOBS:-2}"

echo "==> build/cli/asterism assess $baby"
build/cli/asterism assess "$baby"
