#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# The checks of the HTML pages that need npm: installs the packages of stage `pages`, and what
# tests/npm/package-lock.json pins, then runs axe-core on every page. Says skipped, and succeeds, where npm or a browser is missing.
# Usage: tests/npm/check.sh [PROGRAM]      (default: build/cli/asterism)
# The last line is `N passed, N failed, N skipped`.
set -euo pipefail
cd "$(dirname "$0")/../.."

end() { # PASSED FAILED SKIPPED
    echo "$1 passed, $2 failed, $3 skipped"
    exit "$2"
}

program=${1:-build/cli/asterism}
if [[ ! -x $program ]]; then
    echo "tests/npm/check.sh: no program $program; build it first (tests/run.sh)" >&2
    end 0 1 0
fi
# A browser and npm, where they can be had; what is still missing is said below.
tests/install.sh pages || true
if ! command -v npm >/dev/null; then
    echo "skipped: npm is not installed"
    end 0 0 1
fi
if ! npm ci --prefix tests/npm --ignore-scripts --no-audit --no-fund; then
    echo "skipped: npm could not install what tests/npm/package-lock.json pins"
    end 0 0 1
fi
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
passed=0 failed=0 skipped=0
count() { # COMMAND...
    local status=0
    "$@" || status=$?
    case $status in
    0) passed=$((passed + 1)) ;;
    77) skipped=$((skipped + 1)) ;;
    *) failed=$((failed + 1)) ;;
    esac
}
count python3 -B tests/formats/accessibility.py "$program" "$folder"
count python3 -B tests/standards/published.py "$program"
end "$passed" "$failed" "$skipped"
