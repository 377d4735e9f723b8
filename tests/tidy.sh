#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Runs clang-tidy (.clang-tidy: a short list, all errors) on every source file of lib/ and cli/,
# two at a time, with the compile commands of build/. May be run again at any time.
# Usage: tests/tidy.sh [FILE...]
# The last line is `N passed, N failed`, in files.
set -euo pipefail
cd "$(dirname "$0")/.."

tidy=${CLANG_TIDY:-clang-tidy-16}
jobs=${ASTERISM_JOBS:-2}

echo "==> installing what is missing"
tests/install.sh build tidy

echo "==> configuring build/"
options=()
[[ -f build/CMakeCache.txt ]] || options=(-G Ninja -DASTERISM_TESTS=OFF)
cmake -S . -B build "${options[@]}" -Wno-dev --log-level=WARNING

if [[ $# -gt 0 ]]; then
    files=("$@")
else
    mapfile -t files < <(find lib cli -name '*.cpp' | LC_ALL=C sort)
fi
if [[ ${#files[@]} -eq 0 ]]; then
    echo "tests/tidy.sh: no source file found" >&2
    exit 1
fi

echo "==> checking ${#files[@]} files with $jobs jobs"
failures=$(mktemp)
trap 'rm -f "$failures"' EXIT
check() { # FILE: prints the findings of one file in one piece
    local out
    if ! grep -q "\"file\": \"$PWD/$1\"" build/compile_commands.json; then
        echo "$1: compiled by no target"
        echo "$1" >>"$failures"
    elif ! out=$("$tidy" --quiet -p build "$1" 2>&1); then
        printf '%s\n' "$out" | grep -v -E '^[0-9]+ (warnings?|errors?) ' || true
        echo "$1" >>"$failures"
    fi
}
export -f check
export tidy failures
# shellcheck disable=SC2016 # $1 is for the inner shell
printf '%s\0' "${files[@]}" | xargs -0 -n 1 -P "$jobs" bash -c 'check "$1"' check

failed=$(wc -l <"$failures")
LC_ALL=C sort "$failures" | sed 's/^/failed: /'
echo "$((${#files[@]} - failed)) passed, $failed failed"
[[ $failed -eq 0 ]]
