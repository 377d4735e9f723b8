# SPDX-License-Identifier: MIT
"""Every single edit of a book is told by `compare`, under the thing that was edited.

Each word of the invented book that can be another word is made another one, each list item is left out: one edit at a
time. An edit that leaves the book unreadable is counted apart; all others must show.
"""
import json
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

PROGRAM = str(Path(sys.argv[1]).resolve())
PROJECT = Path(__file__).resolve().parents[2]
BOOK = PROJECT / "tests/compare/books/before"
FEWEST_EDITS = 60

CLASSES = ["minor-variant", "major-anomaly", "normal-variant", "red-flag"]
URGENCIES = ["routine", "urgent", "same-day", "emergency"]
SERVICES = ["genetics", "ophthalmology", "orthopaedics"]
FINDINGS = ["slanting-eyes", "palmar-crease", "deep-crease", "white-pupil", "nubbin", "breech"]
STRENGTHS = ["study", "guideline", "common-practice", "project-choice"]

WORDS = [("class: ", CLASSES), ("urgency: ", URGENCIES), ("service: ", SERVICES), ("present: ", FINDINGS), ("strength: ", STRENGTHS),
         ("for: ", SERVICES), ("kind: ", ["field", "sequence", "system"]), ("count: ", CLASSES)]
NAME = re.compile(r"(?:rule|finding|key|tally|constellation|action|service): ([a-z-]+)")


def edits(lines):
    """Each edit as the number of the line, what was done, and the new lines."""
    for number, line in enumerate(lines):
        yield from reworded(number, line, lines)
        for pattern, text in ((r"at-least: (\d)", "at-least: {}"), (r"points: (\d)", "points: {}"), (r"to: (\d)w", "to: {}w")):
            for match in re.finditer(pattern, line):
                value = int(match[1])
                for other in (value - 1, value + 1):
                    yield number, f"{match[0]} -> {other}", replaced(lines, number, match, text.format(other))
        for match in re.finditer(r"because: ([^,}]+)", line):
            yield number, "because", replaced(lines, number, match, "because: Another reason.")
        if re.match(r"\s+(first-steps|follow-up): ", line):
            yield number, "line left out", lines[:number] + lines[number + 1:]


def reworded(number, line, lines):
    for key, words in WORDS:
        for match in re.finditer(re.escape(key) + r"([a-z-]+)", line):
            if key == "service: " and "label:" in line:
                continue  # there it is the service's own name
            for other in words:
                if other != match[1]:
                    yield number, f"{match[0]} -> {other}", replaced(lines, number, match, key + other)


def replaced(lines, number, match, text):
    line = lines[number]
    return lines[:number] + [line[:match.start()] + text + line[match.end():]] + lines[number + 1:]


def owner(lines, number):
    """The name of the thing in which a line stands: the nearest list item at the book's first level."""
    while not re.match(r"  - ", lines[number]):
        number -= 1
    return NAME.search(lines[number])[1]


def compared(folder):
    done = subprocess.run([PROGRAM, "compare", str(BOOK), str(folder), "--ontology", "tests/cli/small/ontology", "--babies", "0",
                           "--format", "json"], capture_output=True, text=True, cwd=PROJECT, timeout=60, check=False)
    return done.returncode, json.loads(done.stdout) if done.stdout else {}


def main():
    lines = (BOOK / "book.yaml").read_text(encoding="utf-8").splitlines(keepends=True)
    told = unreadable = 0
    problems = []
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name) / "book"
        shutil.copytree(BOOK, folder)
        for number, what, edited in edits(lines):
            (folder / "book.yaml").write_text("".join(edited), encoding="utf-8")
            code, answer = compared(folder)
            if code == 3:
                unreadable += 1
            elif code == 4 and owner(lines, number) in {d["id"] for d in answer["differences"]}:
                told += 1
            else:
                problems.append(f"line {number + 1}: {what}: exit {code}, {[d['id'] for d in answer.get('differences', [])]}")
    print("\n".join(problems))
    print(f"{told} edits told, {unreadable} refused, {len(problems)} not told")
    sys.exit(bool(problems) or told < FEWEST_EDITS)


if __name__ == "__main__":
    main()
