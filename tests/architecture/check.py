#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Checks the shape of the project and prints every breach as `file:line: message`.

Usage: check.py ROOT
Exit: 0 nothing found, 1 something found.
Environment: ASTERISM_STRICT=1 makes a test : source ratio below one a breach.
"""

import os
import sys
from pathlib import Path

import arrows
import shape
from project import Project


def breaches(root: Path, strict: bool = False) -> list[str]:
    """Everything that is wrong with the tree at `root`, in order of place."""
    project = Project(root)
    found = [
        *arrows.wrong_arrows(project),
        *arrows.cycles(project),
        *shape.header_lines(project),
        *shape.long_files(project),
        *shape.long_functions(project),
        *shape.top_level(project),
    ]
    ratio = shape.test_ratio(project)
    if strict and ratio < 1:
        found.append(f"tests: {ratio:.2f} lines of test for one of source, expected at least 1")
    return sorted(set(found))


def main() -> int:
    root = Path(sys.argv[1])
    found = breaches(root, strict=os.environ.get("ASTERISM_STRICT") == "1")
    for breach in found:
        print(breach)
    project = Project(root)
    print(f"{len(project.files)} C++ files read; "
          f"{shape.test_ratio(project):.2f} lines of test for one of source; "
          f"{len(found)} breaches")
    return 1 if found or not project.files else 0


if __name__ == "__main__":
    sys.exit(main())
