# SPDX-License-Identifier: MIT
"""Which books an audit reads, and what it tells of a broken one: python3 tests/audit/books.py PROGRAM

The shelf is the small invented book, released once, with a working version that comes into force on
2031-02-01.
"""
import json
import re
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

PROJECT = Path(__file__).resolve().parents[2]
PROGRAM = str(Path(sys.argv[1]).resolve())
RULES = (PROJECT / "tests/cli/small/rules/book.yaml").read_text(encoding="utf-8")
NEXT = RULES.replace("version: 1.0.0, effective: 2026-01-01", "version: 1.1.0, effective: 2031-02-01")
JANUARY = '{"case":"a1","examined-on":"2031-01-05","examined":["all"],"findings":["white-pupil"]}\n'
FEBRUARY = '{"case":"b1","examined-on":"2031-02-05","examined":["all"],"findings":["white-pupil"]}\n'
WRONG = '{"case":"c1","examined-on":"2031-01-05","findings":["white-pupl"]}\n'
DECISIONS = "case,service,referred\na1,genetics,no\nb1,genetics,yes\n"


class Shelf(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)
        self.write("rules/releases/1.0.0/book.yaml", RULES)
        self.write("rules/book.yaml", NEXT)
        digest = json.loads(self.audit(JANUARY, rules="rules/releases/1.0.0").stdout)["rulebooks"][0]["sha256"]
        self.write("rules/releases/releases.yaml",
                   f"releases:\n  - {{ version: 1.0.0, effective: 2026-01-01, sha256: {digest} }}\n")

    def write(self, name, text):
        path = self.folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")

    def audit(self, cases, *arguments, rules="rules", decisions=DECISIONS):
        self.write("cases.jsonl", cases)
        self.write("decisions.csv", decisions)
        return subprocess.run([PROGRAM, "audit", str(self.folder / "cases.jsonl"), "--decisions", str(self.folder / "decisions.csv"),
                               "--rulebook", str(self.folder / rules), "--ontology", "tests/cli/small/ontology", "--format",
                               "json", *arguments], cwd=PROJECT, text=True, capture_output=True, check=False)

    def sound(self, done):
        self.assertEqual((done.returncode, done.stderr), (0, ""))
        return json.loads(done.stdout)

    def refused(self, done, *words):
        """Exit 3, the problems, and no report."""
        self.assertEqual(done.returncode, 3, done.stderr)
        self.assertEqual(list(json.loads(done.stdout)), ["schema", "diagnostics"])
        for word in words:
            self.assertIn(word, done.stderr)

    def test_both_books_judge_when_both_are_asked_for(self):
        for jobs in ("1", "4"):
            document = self.sound(self.audit(JANUARY + FEBRUARY, "--jobs", jobs))
            self.assertEqual([(b["id"], b["version"], b["effective"], b["babies"]) for b in document["rulebooks"]],
                             [("small", "1.0.0", "2026-01-01", 1), ("small", "1.1.0", "2031-02-01", 1)])
        self.assertEqual(document["missed"]["listed"][0]["rulebook"], "1.0.0")

    def test_a_broken_book_that_no_exam_day_asks_for_changes_nothing(self):
        before = self.sound(self.audit(JANUARY))
        for text in ("rules: [\n", "keys:\n  - { kye: x }\n", "classes:\n  - { finding: no-such }\n", "\t\n"):
            self.write("rules/more.yaml", text)
            after = self.sound(self.audit(JANUARY))
            for document in (before, after):
                document["rulebooks"][1]["sha256"] = ""
            self.assertEqual(before, after)

    def test_a_broken_book_that_is_asked_for_ends_the_audit(self):
        for text, places in (("rules: [\n", ["more.yaml:2:1"]), ("keys:\n  - { kye: x }\n", ["more.yaml:2:7", "did you mean `key`"]),
                             ("classes:\n  - { finding: white-pupl, class: red-flag, because: A., sources: [nobody-2000] }\n",
                              ["more.yaml:2:16", "did you mean `white-pupil`"])):
            self.write("rules/more.yaml", text)
            self.refused(self.audit(FEBRUARY + JANUARY), *places)
            self.refused(self.audit(JANUARY, "--as-of", "2031-02-01"), *places)
            self.sound(self.audit(FEBRUARY, "--as-of", "2031-01-31"))

    def test_a_vignette_is_no_matter_of_an_audit(self):
        before = self.audit(JANUARY + FEBRUARY)
        self.write("rules/vignettes/one.yaml", "vignettes: [\n")
        self.assertEqual(self.sound(self.audit(JANUARY + FEBRUARY)), self.sound(before))

    def test_it_tells_of_wrong_lines_in_the_same_run(self):
        self.write("rules/more.yaml", "keys:\n  - { kye: x }\n")
        one = self.audit(WRONG + FEBRUARY + JANUARY, "--jobs", "1")
        self.refused(one, "more.yaml:2:7", "cases.jsonl:1:53", "or `white-pupil`")
        many = self.audit(WRONG + FEBRUARY + JANUARY, "--jobs", "4")
        self.assertEqual((many.stdout, many.stderr), (one.stdout, one.stderr))

    def test_a_release_that_was_touched_is_told_at_once(self):
        self.write("rules/releases/1.0.0/book.yaml", RULES + "# touched\n")
        self.refused(self.audit(FEBRUARY), "releases.yaml:2:16", "[release-changed]")
        (self.folder / "rules/releases/1.0.0/book.yaml").unlink()
        self.refused(self.audit(FEBRUARY), "[missing-header]")

    def test_a_header_or_services_that_cannot_be_read_are_told_at_once(self):
        self.write("rules/book.yaml", NEXT.replace("label: genetics", "lable: genetics"))
        self.refused(self.audit(JANUARY), "book.yaml:5:26", "did you mean `label`")
        self.write("rules/book.yaml", NEXT.replace("version: 1.1.0", "vesrion: 1.1.0"))
        self.refused(self.audit(JANUARY), "did you mean `version`")

    def test_services_are_those_of_every_book(self):
        more = NEXT.replace("services:\n", "services:\n  - { service: ent, label: throat }\n")
        self.write("rules/book.yaml", more)
        decided = DECISIONS + "a1,ent,yes\n"
        document = self.sound(self.audit(JANUARY, decisions=decided))
        self.assertEqual([s["service"] for s in document["services"]], ["ent", "genetics", "ophthalmology", "orthopaedics"])
        self.assertEqual(document["services"][0]["undecided"], 1)  # the book in force does not know it
        self.refused(self.audit(JANUARY, decisions=DECISIONS + "a1,emt,yes\n"), "did you mean `ent`")
        self.write("rules/book.yaml", NEXT)
        self.write("rules/more.yaml", "\"services\": [{ service: ent, label: throat }]\n")
        document = self.sound(self.audit(JANUARY + FEBRUARY, decisions=decided))
        self.assertEqual([s["service"] for s in document["services"]], ["genetics", "ophthalmology", "orthopaedics", "ent"])

    def test_digests_are_those_of_the_files(self):
        self.write("rules/more.yaml", "keys:\n  - { key: feet, kind: field, because: Feet. }\n")
        read = self.sound(self.audit(FEBRUARY))["rulebooks"]
        unread = self.sound(self.audit(JANUARY))["rulebooks"]
        self.assertEqual([b["sha256"] for b in read], [b["sha256"] for b in unread])
        self.assertEqual([b["babies"] for b in read + unread], [0, 1, 1, 0])
        self.assertTrue(all(re.fullmatch("[0-9a-f]{64}", b["sha256"]) for b in read))
        self.assertNotEqual(read[0]["sha256"], read[1]["sha256"])


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
