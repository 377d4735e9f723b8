#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# One table: `assess --batch` beside general-purpose engines that run the shipped book's own rules, timed
# in one run on the same invented babies. Installs what tests/npm/bench/package-lock.json pins where npm is
# there; says skipped for what is absent. Fails only when an engine answers differently, never by the clock.
# Usage: tests/bench/run.sh [SECONDS]      (default: 10, for each engine; at least the build is in build/)
set -euo pipefail
cd "$(dirname "$0")/../.."
cmake --build build --target asterism bench_export_book bench_floor >/dev/null
if ! command -v npm >/dev/null || ! npm ci --prefix tests/npm/bench --ignore-scripts --no-audit --no-fund >/dev/null 2>&1; then
    echo "skipped: npm could not install what tests/npm/bench/package-lock.json pins"
fi
exec python3 -B tests/bench/bench.py build/tests/bench build/cli/asterism "${1:-10}"
