# SPDX-License-Identifier: MIT
"""The C++ files of the project, their rooms and their includes."""

import re
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

SUFFIXES = {".h", ".hpp", ".cpp"}
INCLUDE = re.compile(r"""^\s*#\s*include\s*[<"]([^>"]+)[>"]""")


@dataclass(frozen=True)
class Include:
    """One #include line: where it stands and the path that it names."""
    file: str
    line: int
    path: str


class Project:
    """A tree with lib/, cli/ and tests/. Files are named by their path from the root."""

    def __init__(self, root: Path):
        self.root = root

    @cached_property
    def files(self) -> dict[str, list[str]]:
        """Each C++ file with its lines."""
        found = {}
        for folder in ("lib", "cli", "tests"):
            for path in sorted((self.root / folder).rglob("*")):
                if path.suffix in SUFFIXES and path.is_file():
                    name = path.relative_to(self.root).as_posix()
                    found[name] = path.read_text(encoding="utf-8").splitlines()
        return found

    def shipped(self) -> list[str]:
        """The files of lib/ and cli/."""
        return [name for name in self.files if not name.startswith("tests/")]

    def includes(self, file: str) -> list[Include]:
        """The #include lines of a file. Quotes and angle brackets are the same to us."""
        return [Include(file, number, match[1])
                for number, line in enumerate(self.files[file], 1)
                if (match := INCLUDE.match(line))]

    def target(self, include: Include) -> str | None:
        """The file of ours that an include means; None for a foreign header."""
        beside = Path(include.file).parent / include.path
        for candidate in (beside, Path("lib") / include.path, Path(include.path)):
            name = (self.root / candidate).resolve()
            if name.is_relative_to(self.root.resolve()):
                name = name.relative_to(self.root.resolve()).as_posix()
                if name in self.files:
                    return name
        return None


def room(file: str) -> str:
    """The room of a file: `base` for lib/base/span.h, `cli` for anything below cli/."""
    parts = file.split("/")
    if parts[0] == "lib":
        return parts[1] if len(parts) > 2 else "lib"
    return parts[0]
