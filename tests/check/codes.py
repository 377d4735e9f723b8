# SPDX-License-Identifier: MIT
"""Every code that the sources emit has a page, every page a code that the sources emit, and every code a test."""
import json
import re
import subprocess
import sys
import unittest
from pathlib import Path

import yaml

PROGRAM = str(Path(sys.argv.pop(1)).resolve())
HERE = Path(__file__).resolve().parent
PROJECT = HERE.parents[1]
CODE = r'"([a-z0-9]+(?:-[a-z0-9]+)*)"'
# A code stands first in these calls; `fail` and `parsed` hand theirs on.
DIRECT = re.compile(r"(?:\b(?:error|warning|note|fail)\(|\badd\(\s*\{|\bDiagnostic \w+\{)\s*(?:std::string\()?" + CODE
                    + r"(?=\s*,|\)\s*,)")
PARSED = re.compile(r"\b(?:parsed|take|read_\w+|list|put)\([^;{}]*?" + CODE + r",[^;{}]*parse_\w+")
# These make `unknown-NAME` of the name they are given.
NAMED = re.compile(r"(?<![.\w])(?:yaml::)?(?:unknown_word|look_up|resolve_word|report_unresolved|link|known)\([^;\"()]*"
                   r"(?:\([^;\"()]*\)[^;\"()]*)*" + CODE)
# A problem of a batch line: { line, "code", message }.
LINE = re.compile(r"\{\s*row\.line,\s*" + CODE)
# Calls whose code is no literal: each hands on a code that stands literally elsewhere.
HANDED_ON = {"lib/yaml/reader.cpp", "lib/yaml/read_yaml.cpp", "lib/ontology/names.cpp", "lib/cases/read_case.cpp",
             "lib/batch/block_judge.cpp", "lib/base/diagnostic.cpp", "lib/review/check_unused.cpp",
             "lib/audit/decisions.cpp"}
ANY = re.compile(r"\bdiagnostics_?(?:\(\))?\s*\.\s*(?:error|warning|note)\(\s*([^\s])|\bproblems\.(?:error|warning|note)\(\s*([^\s])")


def sources():
    for folder in ("lib", "cli"):
        for path in sorted((PROJECT / folder).rglob("*")):
            if path.suffix in (".h", ".cpp") and not path.name.startswith("codes"):
                yield path.relative_to(PROJECT).as_posix(), path.read_text(encoding="utf-8")


def emitted():
    codes = {}
    for name, text in sources():
        for pattern in (DIRECT, PARSED, LINE):
            for match in pattern.finditer(text):
                codes.setdefault(match[1], name)
        for match in NAMED.finditer(text if name != "lib/ontology/names.cpp" else ""):
            codes.setdefault("unknown-" + match[1], name)
        if name == "lib/review/check_unused.cpp":
            for match in re.finditer(r'"(unused-[a-z]+)"', text):
                codes.setdefault(match[1], name)
    return codes


def run(*arguments):
    return subprocess.run([PROGRAM, "check", *arguments], capture_output=True, text=True, timeout=120, check=False)


def pages():
    return {page["code"]: page for page in json.loads(run("--explain", "all", "--format", "json").stdout)["codes"]}


class Codes(unittest.TestCase):
    def test_every_emitted_code_has_a_page(self):
        self.assertEqual({c: f for c, f in emitted().items() if c not in pages()}, {})

    def test_every_page_has_a_code_that_is_emitted(self):
        self.assertEqual(set(pages()) - set(emitted()), set())

    def test_no_code_escapes_the_search(self):
        for name, text in sources():
            if name in HANDED_ON:
                continue
            for match in ANY.finditer(text):
                self.assertEqual(match[1] or match[2], '"', f"{name}: {text[match.start():match.start() + 80]!r}")

    def test_a_page_says_everything(self):
        for code, page in pages().items():
            for part in ("means", "matters", "mend", "example"):
                self.assertGreater(len(page[part]), 6, (code, part))
            for part in ("means", "matters", "mend"):
                self.assertTrue(page[part].endswith("."), (code, part))

    def test_every_code_has_a_test(self):
        """In the table of broken books, or by name in another test."""
        tabled = {one["code"] for table in ("broken.yaml", "records.yaml")
                  for one in yaml.safe_load((HERE / table).read_text(encoding="utf-8"))}
        others = "\n".join(p.read_text(encoding="utf-8", errors="replace") for p in (PROJECT / "tests").rglob("*")
                           if p.suffix in (".py", ".cpp", ".h", ".yaml", ".txt") and p.name != "codes.py")
        missing = sorted(c for c in pages() if c not in tabled and f'"{c}"' not in others and f"[{c}]" not in others)
        self.assertEqual(missing, [])


class Explain(unittest.TestCase):
    def test_one_page(self):
        done = run("--explain", "milder-child")
        self.assertEqual((done.returncode, done.stderr), (0, ""))
        self.assertTrue(done.stdout.startswith("milder-child\n"))
        self.assertIn("how to mend it", done.stdout)

    def test_a_slip_is_told_with_the_nearest(self):
        done = run("--explain", "milder-chlid")
        self.assertEqual((done.returncode, done.stdout), (2, ""))
        self.assertIn("`milder-child`", done.stderr)

    def test_all_codes_are_listed_in_order(self):
        listed = [line.split()[0] for line in run("--codes").stdout.splitlines()]
        self.assertEqual(listed, sorted(pages()))
        self.assertEqual(len(set(listed)), len(listed))


if __name__ == "__main__":
    unittest.main()
