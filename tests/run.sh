#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Builds everything and runs the whole test suite. May be run again at any time.
# Usage: tests/run.sh [--sanitize] [CTEST-ARGUMENT...]
#   --sanitize   build in build-sanitize/ with the address and undefined-behaviour sanitizers
# Environment: CI=true makes warnings errors; ASTERISM_JOBS is the number of parallel jobs (2);
#   ASTERISM_DATA and ASTERISM_FACTS name the folders of reference data (../shared/data and
#   ../shared/facts, where they exist). Tests that need an absent one are skipped and say so.
# The last line is `N passed, N failed, N skipped`, in tests as ctest counts them.
set -euo pipefail
cd "$(dirname "$0")/.."

if [[ ${1:-} == --help ]]; then
    sed -n '3,/^set /{/^# /s/^# //p}' "$0"
    exit
fi

step() { printf '\n==> %s\n' "$1"; current=$1; }
trap 'echo "tests/run.sh: failed: $current" >&2' ERR

build=build sanitize=OFF werror=OFF
if [[ ${1:-} == --sanitize ]]; then
    build=build-sanitize sanitize=ON
    shift
elif [[ ${CI:-} == true ]]; then
    # Instrumented code makes GCC warn of things that are not there, so only the plain build is strict.
    werror=ON
fi
jobs=${ASTERISM_JOBS:-2}

export_if_present() { # VARIABLE FOLDER
    if [[ -z ${!1:-} && -d $2 ]]; then
        export "$1=$(cd "$2" && pwd)"
    fi
    echo "$1=${!1:-(not set)}"
}

step "installing what is missing"
tests/install.sh build test

step "configuring $build/ (warnings as errors: $werror, sanitizers: $sanitize)"
# Compilations are shared between clones: paths are hashed relative to this folder.
export CCACHE_BASEDIR=$PWD CCACHE_NOHASHDIR=true
generator=(-G Ninja)
[[ ! -f $build/CMakeCache.txt ]] || generator=()
cmake -S . -B "$build" "${generator[@]}" -Wno-dev --log-level=WARNING \
    -DASTERISM_TESTS=ON -DASTERISM_CLI=ON -DASTERISM_WERROR=$werror -DASTERISM_SANITIZE=$sanitize

step "building with $jobs jobs"
cmake --build "$build" --parallel "$jobs"

step "running the tests"
if [[ $sanitize == ON ]]; then
    # Sanitized code is several times slower; the full number runs in the plain build.
    export ASTERISM_RANDOM_CASES=${ASTERISM_RANDOM_CASES:-2000}
fi
export_if_present ASTERISM_DATA ../shared/data
export_if_present ASTERISM_FACTS ../shared/facts
results=$PWD/$build/tests.xml
rm -f "$results"
status=0
ctest --test-dir "$build" --parallel "$jobs" --output-on-failure --no-tests=error \
    --output-junit "$results" "$@" || status=$?

# Counts from the JUnit file: a test that could not even start counts as failed, and a run in which
# nothing ran at all is a failure.
step "counting"
trap - ERR
python3 - "$results" "$status" <<'PYTHON'
import sys
import xml.etree.ElementTree as xml

results, ctest_status = sys.argv[1], int(sys.argv[2])
passed = failed = skipped = 0
try:
    cases = xml.parse(results).getroot().findall("testcase")
except (OSError, xml.ParseError) as problem:
    print(f"no results: {problem}")
    cases = []
for case in cases:
    note = case.find("skipped")
    if case.get("status") == "run":
        passed += 1
    elif case.get("status") == "disabled" or (
            note is not None and note.get("message", "").startswith("SKIP_")):
        skipped += 1
        reasons = {line for line in (case.findtext("system-out") or "").splitlines()
                   if line.startswith("skipped: ")}
        print(case.get("name"), *sorted(reasons), sep="\n    ")
    else:
        failed += 1
if passed + failed == 0:
    print("no test ran")
print(f"{passed} passed, {failed} failed, {skipped} skipped")
sys.exit(failed > 0 or passed == 0 or ctest_status != 0)
PYTHON
