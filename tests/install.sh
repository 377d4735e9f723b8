#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Installs those Debian packages of the given stages (tests/packages.txt) that are missing.
# Does nothing, and asks for no rights, where none is.
# Usage: tests/install.sh STAGE...
set -euo pipefail
cd "$(dirname "$0")/.."

if ! command -v dpkg-query >/dev/null; then
    echo "install: not a Debian system; the needed libraries are named in tests/packages.txt" >&2
    exit 0
fi

installed() {
    [[ $(dpkg-query -W -f '${db:Status-Status}' "$1" 2>/dev/null) == installed ]]
}

missing=()
for stage in "$@"; do
    mapfile -t packages < <(awk -v stage="$stage" '$1 == stage { print $2 }' tests/packages.txt)
    if [[ ${#packages[@]} -eq 0 ]]; then
        echo "install: tests/packages.txt knows no stage \`$stage\`" >&2
        exit 2
    fi
    for package in "${packages[@]}"; do
        installed "$package" || missing+=("$package")
    done
done

if [[ ${#missing[@]} -eq 0 ]]; then
    echo "install: nothing missing"
    exit 0
fi

as_root=()
[[ $(id -u) -eq 0 ]] || as_root=(sudo)
echo "install: ${missing[*]}"
export DEBIAN_FRONTEND=noninteractive
"${as_root[@]}" apt-get update -qq
"${as_root[@]}" apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
