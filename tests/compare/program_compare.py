# SPDX-License-Identifier: MIT
"""The verb `compare`: the shipped versions, folders, cases, exit codes, formats."""
import json
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

PROGRAM = str(Path(sys.argv.pop(1)).resolve())
PROJECT = Path(__file__).resolve().parents[2]
MENDED = "pattern-overgrowth-score"


def run(*arguments, stdin=""):
    return subprocess.run([PROGRAM, "compare", *arguments], capture_output=True, text=True, cwd=PROJECT, timeout=300,
                          input=stdin, check=False)


def compared(*arguments, stdin="", code=4):
    done = run(*arguments, "--format", "json", stdin=stdin)
    assert done.returncode == code, done.stderr[:2000]
    return json.loads(done.stdout)


class Versions(unittest.TestCase):
    def test_the_mended_score_is_the_rule_that_differs(self):
        answer = compared("0.1.0", "0.2.0", "--babies", "2000")
        self.assertIn(MENDED, {d["id"] for d in answer["differences"] if d["part"] == "rule"})
        vignettes, newborns = answer["judged"]
        self.assertEqual((vignettes["cases"], newborns["cases"], newborns["babies"]), ("vignettes", "newborns", 2000))
        lost = {baby["case"] for baby in vignettes["changed"]
                if any(c["service"] == "genetics" and c["change"] == "lost" and c["by"] == [MENDED] for c in baby["changes"])}
        self.assertLessEqual({f"pattern-points-{mark}-and-naevus" for mark in ("ear-crease", "ear-pits", "kidney", "liver")}, lost)

    def test_backwards_what_was_lost_is_gained(self):
        there, back = compared("0.1.0", "0.2.0", "--babies", "0"), compared("0.2.0", "0.1.0", "--babies", "0")
        kinds = lambda answer, kind: {b["case"] for b in answer["judged"][0]["changed"] for c in b["changes"] if c["change"] == kind}
        self.assertEqual(kinds(there, "lost"), kinds(back, "gained"))
        self.assertTrue(kinds(there, "lost"))

    def test_a_book_is_itself(self):
        answer = compared("0.1.0", "rules/newborn/releases/0.1.0", "--babies", "200", code=0)
        self.assertEqual((answer["any_change"], answer["differences"]), (False, []))
        self.assertEqual(run("0.2.0", "0.2.0", "--babies", "10").returncode, 0)

    def test_the_same_seed_gives_the_same_bytes(self):
        arguments = ("0.1.0", "0.2.0", "--babies", "500", "--seed", "3", "--format", "json")
        self.assertEqual(run(*arguments).stdout, run(*arguments).stdout)
        self.assertNotEqual(run(*arguments).stdout, run(*arguments[:5], "4", *arguments[6:]).stdout)


class Cases(unittest.TestCase):
    BABY = "case: c1\nexamined: all\nhistory: none\nfindings: [earlobe creases, nevus simplex]\n"

    def file(self, text, name="cases.yaml"):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        path = Path(folder.name) / name
        path.write_text(text, encoding="utf-8")
        return str(path)

    def test_one_case_a_list_and_standard_input(self):
        one = compared("0.1.0", "0.2.0", "--cases", self.file(self.BABY))
        self.assertEqual([s["cases"] for s in one["judged"]], ["files"])
        self.assertEqual(one["judged"][0]["changed"][0]["case"], "c1")
        both = '[{"case": "a", "findings": ["white pupil"]}, {"case": "b", "examined": "all", "history": "none", "findings": ["earlobe creases", "nevus simplex"]}]'
        many = compared("0.1.0", "0.2.0", "--cases", "-", stdin=both)
        self.assertEqual((many["judged"][0]["babies"], [b["case"] for b in many["judged"][0]["changed"]]), (2, ["b"]))

    def test_a_wrong_case_is_told_at_its_place(self):
        done = run("0.1.0", "0.2.0", "--cases", self.file("findings: [ear lobe crises]\n"))
        self.assertEqual(done.returncode, 3)
        self.assertIn("cases.yaml:1:12", done.stderr)


class Usage(unittest.TestCase):
    def test_wrong_use_exits_2(self):
        for arguments in (("0.1.0",), ("0.1.0", "0.2.0", "x"), ("0.1.0", "9.9.9"), ("0.1.0", "0.2.0", "--babies", "-1"),
                          ("0.1.0", "0.2.0", "--babies", "many"), ("0.1.0", "0.2.0", "--format", "xml")):
            done = run(*arguments)
            self.assertEqual((done.returncode, done.stdout), (2, ""), arguments)
        self.assertIn("versions: 0.1.0, 0.2.0", run("0.1.0", "9.9.9").stderr)

    def test_a_broken_book_exits_3(self):
        with tempfile.TemporaryDirectory() as folder:
            (Path(folder) / "book.yaml").write_text("rulebook: {}\n", encoding="utf-8")
            done = run("0.1.0", folder)
            self.assertEqual((done.returncode, done.stdout), (3, ""))
            self.assertIn("book.yaml:1:", done.stderr)

    def test_the_page_is_whole_and_carries_the_caution(self):
        page = run("0.1.0", "0.2.0", "--babies", "300", "--format", "html").stdout
        self.assertTrue(page.startswith("<!DOCTYPE html>"))
        self.assertIn("Nothing here is a diagnosis", page)
        self.assertNotIn("<script", page)
        self.assertNotIn("http://", page.replace('http-equiv', ''))


if __name__ == "__main__":
    unittest.main()
