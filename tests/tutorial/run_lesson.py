# SPDX-License-Identifier: MIT
"""Carries out examples/tutorial/README.md in a copy of its book, step by step.

    python3 tests/tutorial/run_lesson.py PROGRAM
"""
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from lesson import Edit, agrees, steps

PROJECT = Path(__file__).resolve().parents[2]
TUTORIAL = PROJECT / "examples/tutorial"
FEWEST_COMMANDS, FEWEST_EDITS = 16, 7  # fewer, and the lesson was not read


class Desk:
    """A folder to work in, with the program on the path."""

    def __init__(self, program, folder):
        self.folder, self.status = folder, 0
        tools = folder.parent / "bin"
        tools.mkdir()
        (tools / "asterism").symlink_to(Path(program).resolve())
        self.environment = {**os.environ, "PATH": f"{tools}{os.pathsep}{os.environ['PATH']}", "NO_COLOR": "1", "LC_ALL": "C.UTF-8"}

    def run(self, command):
        if command == "echo $?":
            return [str(self.status)]
        done = subprocess.run(["bash", "-c", command], cwd=self.folder, env=self.environment, stdout=subprocess.PIPE,
                              stderr=subprocess.STDOUT, text=True, encoding="utf-8", timeout=120, check=False)
        self.status = done.returncode
        return done.stdout.splitlines()


def carry_out(desk, text):
    """The problems found, and how much was done."""
    problems, done = [], {"commands": 0, "edits": 0}
    for step in steps(text):
        if isinstance(step, Edit):
            step.apply(desk.folder)
            done["edits"] += 1
            continue
        seen = desk.run(step.text)
        done["commands"] += 1
        if not agrees(step.expected, seen):
            problems.append("\n".join([f"README.md:{step.line}: $ {step.text}", "--- expected", *step.expected, "--- seen", *seen]))
    return problems, done


def main():
    text = (TUTORIAL / "README.md").read_text(encoding="utf-8")
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name) / "book"
        shutil.copytree(TUTORIAL / "book", folder)
        desk = Desk(sys.argv[1], folder)
        problems, done = carry_out(desk, text)
    print("\n\n".join(problems))
    print(f"{done['commands']} commands, {done['edits']} edits, {len(problems)} problems")
    sys.exit(bool(problems) or done["commands"] < FEWEST_COMMANDS or done["edits"] < FEWEST_EDITS)


if __name__ == "__main__":
    main()
