# SPDX-License-Identifier: MIT
"""Reads a lesson written in Markdown as the steps that a person would carry out.

    Write the file `F`:            and a block     the file is written
    Add at the end of `F`:         and a block     the block goes to its end
    In `F`, change                 and a diff      the lines after - become the lines after +
    ```console                                     each `$ command` is run, its output compared

`...` on a line of its own stands for any lines, also none; within a line, for any words.
"""
import re
from dataclasses import dataclass
from pathlib import Path

FENCE = re.compile(r"^```(\w*)$")
WRITE = re.compile(r"Write the file\s+`([^`]+)`:$")
ADD = re.compile(r"Add at the end of\s+`([^`]+)`:$")
CHANGE = re.compile(r"[Ii]n\s+`([^`]+)`, change$")


class LessonError(Exception):
    """The lesson cannot be carried out as it is written."""


@dataclass
class Command:
    line: int
    text: str
    expected: list[str]


@dataclass
class Edit:
    line: int
    kind: str  # write, add, change
    file: str
    text: str

    def apply(self, folder: Path) -> None:
        path = folder / self.file
        if self.kind != "write" and not path.exists():
            raise LessonError(f"line {self.line}: there is no file {self.file}")
        if self.kind == "write":
            if path.exists():
                raise LessonError(f"line {self.line}: {self.file} is there already")
            path.write_text(self.text, encoding="utf-8")
        elif self.kind == "add":
            path.write_text(path.read_text(encoding="utf-8") + self.text, encoding="utf-8")
        else:
            self.change(path)

    def change(self, path: Path) -> None:
        marked = [(line[0], line[1:]) for line in self.text.splitlines(keepends=True)]
        before = "".join(line for mark, line in marked if mark in "- ")
        after = "".join(line for mark, line in marked if mark in "+ ")
        text = path.read_text(encoding="utf-8")
        if text.count(before) != 1:
            raise LessonError(f"line {self.line}: the lines to change stand {text.count(before)} times in {self.file}")
        path.write_text(text.replace(before, after), encoding="utf-8")


def blocks(text):
    """Each fenced block: its line, its language, its text, and the paragraph before it."""
    before, language, start, inside = [], None, 0, []
    for number, line in enumerate(text.splitlines(), 1):
        fence = FENCE.match(line)
        if language is None and fence:
            language, start, inside = fence[1], number + 1, []
        elif language is not None and line == "```":
            yield start, language, "".join(one + "\n" for one in inside), " ".join(before)
            language, before = None, []
        elif language is not None:
            inside.append(line)
        elif line.strip():
            before.append(line.strip())
        elif before and FENCE.match(line) is None and not before[-1].endswith((":", "change")):
            before = []
    if language is not None:
        raise LessonError(f"line {start}: the block is never closed")


def commands(start, text):
    found = []
    for number, line in enumerate(text.splitlines(), start):
        if line.startswith("$ "):
            found.append(Command(number, line[2:], []))
        elif not found:
            raise LessonError(f"line {number}: output before any command")
        else:
            found[-1].expected.append(line)
    return found


def steps(text):
    """Commands and edits in the order of the lesson; a block that is neither is an error."""
    for start, language, content, before in blocks(text):
        if language == "console":
            yield from commands(start, content)
            continue
        for kind, pattern in (("write", WRITE), ("add", ADD), ("change", CHANGE)):
            match = pattern.search(before)
            if match and (kind == "change") == (language == "diff"):
                yield Edit(start, kind, match[1], content)
                break
        else:
            raise LessonError(f"line {start}: nothing says what to do with this block")


def same_line(expected, seen):
    return re.fullmatch(".*".join(re.escape(part) for part in expected.split("...")), seen) is not None


def agrees(expected, seen):
    """Whether the lines seen are the lines expected, `...` standing for any."""
    if not expected:
        return not seen
    if expected[0] == "...":
        return any(agrees(expected[1:], seen[at:]) for at in range(len(seen) + 1))
    return bool(seen) and same_line(expected[0], seen[0]) and agrees(expected[1:], seen[1:])
