# SPDX-License-Identifier: MIT
"""Two invented books that differ in one edit of every kind: the whole answer, in each format.

    python3 tests/compare/golden.py PROGRAM [--update]      # after a change that is meant; read the diff
"""
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent / "support"))
from golden_answers import hold  # noqa: E402

ARGUMENTS = ["compare", "tests/compare/books/before", "tests/compare/books/after",
             "--ontology", "tests/cli/small/ontology", "--babies", "0"]
FORMATS = {"text": "txt", "json": "json", "html": "html"}


if __name__ == "__main__":
    hold(HERE, ARGUMENTS, FORMATS, 4)
