# SPDX-License-Identifier: MIT
"""Every deliberate break of the small book is told with the expected code at the expected place. The places are
marked in the breaks themselves, by hand; nothing here comes from an earlier run of the program."""
import json
import re
import shutil
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

import yaml

PROGRAM = str(Path(sys.argv.pop(1)).resolve())
HERE = Path(__file__).resolve().parent
MARK = "¦"


def breaks():
    return yaml.safe_load((HERE / "broken.yaml").read_text(encoding="utf-8"))


def to_bytes(text):
    """\\xNN in the table stands for a raw byte."""
    return re.sub(rb"\\x([0-9a-f]{2})", lambda m: bytes([int(m[1], 16)]), text.encode("utf-8"))


def place(text, offset):
    line = text.count("\n", 0, offset) + 1
    return line, offset - (text.rfind("\n", 0, offset) + 1) + 1


def materialise(one, folder):
    """Writes the broken book; gives the expected (file, line, column)."""
    shutil.copytree(HERE / "base", folder, dirs_exist_ok=True)
    name = one.get("file", "rules/book.yaml")
    path = folder / name
    if one["find"] == "*":
        text = one["put"]
    else:
        old = path.read_text(encoding="utf-8")
        assert one["find"] in old, one
        text = old.replace(one["find"], one["put"], 1)
    offset = text.find(MARK)
    text = text.replace(MARK, "")
    path.write_bytes(to_bytes(text))
    if "at" in one:
        name = one.get("at-file", name)
        text = (folder / name).read_text(encoding="utf-8")
        assert one["at"] in text, one
        offset = text.index(one["at"])
    assert offset >= 0, one
    return (name, *place(text, offset))


def check(folder, *more):
    return subprocess.run([PROGRAM, "check", str(folder / "rules"), "--ontology", str(folder / "ontology"), *more],
                          capture_output=True, timeout=120, check=False)


def found(done, folder):
    result = []
    for d in json.loads(done.stdout)["diagnostics"]:
        name = Path(d["file"]).relative_to(folder).as_posix() if d.get("file") else None
        result.append((d["code"], name, d.get("line"), d.get("column"), d["severity"]))
    return result


class Broken(unittest.TestCase):
    def test_the_base_is_clean(self):
        done = check(HERE / "base")
        self.assertEqual((done.returncode, done.stderr), (0, b""))

    def test_there_are_enough(self):
        self.assertGreaterEqual(len(breaks()), 80)

    def test_each_break_is_told_at_its_place(self):
        for number, one in enumerate(breaks()):
            with self.subTest(number=number, **one), tempfile.TemporaryDirectory() as folder:
                folder = Path(folder)
                expected = (one["code"], *materialise(one, folder))
                done = check(folder, "--format", "json")
                all_found = found(done, folder)
                self.assertIn(expected, [f[:4] for f in all_found], all_found)
                loaded = "counts" in json.loads(done.stdout)
                told = any(severity != "note" for *_, severity in all_found)
                self.assertEqual(done.returncode, 3 if not loaded else 4 if told else 0)

    def test_a_break_shows_line_and_caret(self):
        one = next(b for b in breaks() if b["code"] == "unknown-condition")
        with tempfile.TemporaryDirectory() as folder:
            _, line, column = materialise(one, Path(folder))
            text = check(Path(folder)).stderr.decode()
        shown = text.splitlines()
        at = next(i for i, row in enumerate(shown) if f"book.yaml:{line}:{column}: error:" in row)
        self.assertIn("[unknown-condition]", shown[at])
        self.assertEqual(shown[at + 2].index("^") - 2, column - 1)
        self.assertIn("`present`", shown[at + 3])

    def test_all_problems_in_one_run(self):
        with tempfile.TemporaryDirectory() as folder:
            folder = Path(folder)
            shutil.copytree(HERE / "base", folder, dirs_exist_ok=True)
            path = folder / "rules/book.yaml"
            text = path.read_text(encoding="utf-8")
            edits = (("first-steps: [photograph]", "first-steps: [fotograph]"), ("for: genetics", "for: genetiks"),
                     ("{ constellation: pair }", "{ constellation: pear }"), ("from: 6w", "from: six"))
            for old, new in edits:
                text = text.replace(old, new, 1)
            path.write_text(text, encoding="utf-8")
            codes = [f[0] for f in found(check(folder, "--format", "json"), folder)]
        self.assertEqual(sorted(codes), ["bad-duration", "unknown-action", "unknown-constellation", "unknown-service"])

    def test_an_unread_file_brings_no_follow_up(self):
        with tempfile.TemporaryDirectory() as folder:
            folder = Path(folder)
            shutil.copytree(HERE / "base", folder, dirs_exist_ok=True)
            (folder / "rules/book.yaml").write_text("rulebook: [", encoding="utf-8")
            codes = [f[0] for f in found(check(folder, "--format", "json"), folder)]
        self.assertEqual(codes, ["yaml-syntax"])


if __name__ == "__main__":
    unittest.main()
