# SPDX-License-Identifier: MIT
"""The booklet of an invented book, whole, in each format; both books of tests/compare have the same ontology.

    python3 tests/handbook/golden.py PROGRAM [--update]      # after a change that is meant; read the diff
"""
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent / "support"))
from golden_answers import hold  # noqa: E402

ARGUMENTS = ["handbook", "--rulebook", "tests/compare/books/after", "--ontology", "tests/cli/small/ontology"]
FORMATS = {"markdown": "md", "html": "html"}


if __name__ == "__main__":
    hold(HERE, ARGUMENTS, FORMATS, 0)
