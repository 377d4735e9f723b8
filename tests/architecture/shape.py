# SPDX-License-Identifier: MIT
"""Sizes, first lines and the top level."""

import re
import subprocess

from project import Project

LONGEST_FILE = 399
LONGEST_FUNCTION = 59
LICENCE = "// SPDX-License-Identifier: MIT"
TOP_LEVEL = {"CMakeLists.txt", "README.md", "DEVELOPERS.md",
             "lib", "cli", "rules", "ontology", "tests", "examples"}


def header_lines(project: Project) -> list[str]:
    """Files without the licence line first, headers without an include guard."""
    found = []
    for file, lines in project.files.items():
        if not lines or lines[0] != LICENCE:
            found.append(f"{file}:1: the first line is not `{LICENCE}`")
        if not file.endswith(".cpp") and "#pragma once" not in lines:
            found.append(f"{file}:1: a header without `#pragma once`")
    return found


def long_files(project: Project) -> list[str]:
    return [f"{file}:{LONGEST_FILE + 1}: {len(lines)} lines, at most {LONGEST_FILE} allowed"
            for file, lines in project.files.items() if len(lines) > LONGEST_FILE]


def long_functions(project: Project) -> list[str]:
    """Functions longer than allowed, counted by ctags from the line of the name to the closing
    brace. Bodies behind a macro (TEST_CASE) are not functions to ctags and are not counted;
    clang-tidy's readability-function-size measures lib/ and cli/ a second time."""
    if not project.files:
        return []
    listing = subprocess.run(
        ["ctags", "--options=NONE", "--language-force=C++", "--kinds-C++=f", "--fields=ne",
         "--excmd=number", "--sort=no", "-f", "-", "-L", "-"],
        input="\n".join(project.files), cwd=project.root, text=True, capture_output=True, check=True)
    found = []
    for row in listing.stdout.splitlines():
        name, file, fields = row.split("\t", 2)
        begin, end = re.search(r"\bline:(\d+)", fields), re.search(r"\bend:(\d+)", fields)
        if begin and end and (length := int(end[1]) - int(begin[1]) + 1) > LONGEST_FUNCTION:
            found.append(f"{file}:{begin[1]}: `{name}` has {length} lines, "
                         f"at most {LONGEST_FUNCTION} allowed")
    return found


def top_level(project: Project) -> list[str]:
    """Entries that the design card does not name, and named ones that are missing. Dotfiles are
    free, and so are build folders, which are never committed."""
    present = {entry.name for entry in project.root.iterdir()
               if not entry.name.startswith((".", "build"))}
    return ([f"{name}: not an entry that the top level may have" for name in present - TOP_LEVEL]
            + [f"{name}: missing at the top level" for name in TOP_LEVEL - present])


def test_ratio(project: Project) -> float:
    """Lines that are not blank in tests/ (C++ and Python) for one in lib/ and cli/ (C++)."""
    source = sum(_weight(project.files[file]) for file in project.shipped())
    test = sum(_weight(lines) for file, lines in project.files.items() if file.startswith("tests/"))
    test += sum(_weight(path.read_text(encoding="utf-8").splitlines())
                for path in (project.root / "tests").rglob("*.py"))
    return test / max(source, 1)


def _weight(lines: list[str]) -> int:
    return sum(1 for line in lines if line.strip())
