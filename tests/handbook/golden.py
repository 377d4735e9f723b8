# SPDX-License-Identifier: MIT
"""The booklet of an invented book, whole, in each format; both books of tests/compare have the same ontology.

    python3 tests/handbook/golden.py PROGRAM [--update]      # after a change that is meant; read the diff
"""
import subprocess
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
PROJECT = HERE.parents[1]
BOOK = ["--rulebook", "tests/compare/books/after", "--ontology", "tests/cli/small/ontology"]
FORMATS = {"markdown": "md", "html": "html"}


def booklet(program, form):
    return subprocess.run([program, "handbook", *BOOK, "--format", form], capture_output=True, text=True,
                          encoding="utf-8", cwd=PROJECT, timeout=60, check=False)


def main():
    program, update = str(Path(sys.argv[1]).resolve()), "--update" in sys.argv
    problems = 0
    for form, suffix in FORMATS.items():
        path, done = HERE / "golden" / f"invented.{suffix}", booklet(program, form)
        if update:
            path.parent.mkdir(exist_ok=True)
            path.write_text(done.stdout, encoding="utf-8")
        if (done.returncode, done.stderr) != (0, ""):
            problems += 1
            print(f"{form}: exit {done.returncode}, {done.stderr}")
        if done.stdout != path.read_text(encoding="utf-8"):
            problems += 1
            print(f"{form}: not as in {path.relative_to(PROJECT)}:\n{done.stdout}")
    print(f"{len(FORMATS)} formats, {problems} problems")
    sys.exit(problems > 0)


if __name__ == "__main__":
    main()
