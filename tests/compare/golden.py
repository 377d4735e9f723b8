# SPDX-License-Identifier: MIT
"""Two invented books that differ in one edit of every kind: the whole answer, in each format.

    python3 tests/compare/golden.py PROGRAM [--update]      # after a change that is meant; read the diff
"""
import subprocess
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
PROJECT = HERE.parents[1]
SMALL = ["--ontology", "tests/cli/small/ontology", "--babies", "0"]
FORMATS = {"text": "txt", "json": "json", "html": "html"}


def answer(program, form):
    books = ["tests/compare/books/before", "tests/compare/books/after"]
    return subprocess.run([program, "compare", *books, *SMALL, "--format", form], capture_output=True, text=True,
                          encoding="utf-8", cwd=PROJECT, timeout=60, check=False)


def main():
    program, update = str(Path(sys.argv[1]).resolve()), "--update" in sys.argv
    problems = 0
    for form, suffix in FORMATS.items():
        path, done = HERE / "golden" / f"invented.{suffix}", answer(program, form)
        if update:
            path.parent.mkdir(exist_ok=True)
            path.write_text(done.stdout, encoding="utf-8")
        if (done.returncode, done.stderr) != (4, ""):
            problems += 1
            print(f"{form}: exit {done.returncode}, {done.stderr}")
        if done.stdout != path.read_text(encoding="utf-8"):
            problems += 1
            print(f"{form}: not as in {path.relative_to(PROJECT)}:\n{done.stdout}")
    print(f"{len(FORMATS)} formats, {problems} problems")
    sys.exit(problems > 0)


if __name__ == "__main__":
    main()
