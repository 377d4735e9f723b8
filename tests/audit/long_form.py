# SPDX-License-Identifier: MIT
"""The long form of CSV, one row a finding, in an audit: python3 tests/audit/long_form.py PROGRAM

The same invented babies are written here in three ways, by Python's own json and csv; what the
program makes of them must not differ by a byte but for the file's name and its lines, and the lines
are checked against those that were written.
"""
import csv
import gzip
import io
import json
import random
import re
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

HERE = Path(__file__).resolve().parent
PROJECT = HERE.parents[1]
PROGRAM = str(Path(sys.argv[1]).resolve())
sys.path.insert(0, str(HERE))
import invented_year  # noqa: E402
from three_ways import baby, json_lines, long, on_each, on_first, on_last, parts, rows_of, scattered, table, wide  # noqa: E402


def run(*arguments, verb="audit"):
    return subprocess.run([PROGRAM, verb, *arguments], cwd=PROJECT, text=True, encoding="utf-8", capture_output=True,
                          check=False)


class Folder(unittest.TestCase):
    maxDiff = None

    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)

    def file(self, name, text):
        path = self.folder / name
        path.write_text(text, encoding="utf-8", newline="")
        return str(path)


class SameBabies(Folder):
    """Three ways to write the same babies."""

    def babies(self, count, seed):
        chance = random.Random(seed)
        babies = [baby(number, chance) for number in range(count)]
        outcome = [["case", "service", "referred", "at"]]
        for one in babies:
            plain = dict(one, findings=[parts(said)["finding"] for said in one["findings"] if parts(said)["finding"] != "lop ear"])
            outcome += invented_year.decisions(plain, chance)
        text = io.StringIO()
        csv.writer(text).writerows(outcome)
        self.decisions = self.file("decisions.csv", text.getvalue())
        return babies

    def audited(self, name, text, form, *arguments):
        path = self.file(name, text)
        done = run(path, "--decisions", self.decisions, "--unlisted", "not-referred", "--by", "unit", "--by", "examiner",
                   "--by", "month", "--list", "1000", "--format", form, *arguments)
        self.assertEqual((done.returncode, done.stderr), (0, ""))
        return done.stdout.replace(path, "<cases>").replace(Path(path).name, "<cases>")

    @staticmethod
    def without_lines(text):
        return re.sub(r'("line": |\bline\s+)\d+', r"\1N", text)

    def test_an_audit_of_each_is_the_same(self):
        babies = self.babies(1500, 11)
        ways = {"babies.jsonl": json_lines(babies), "wide.csv": wide(babies)}
        for spread in (on_each, on_first, on_last, scattered):
            ways[f"{spread.__name__}.csv"] = long(babies, spread)
        for form in ("json", "text", "csv", "html"):
            answers = {name: self.audited(name, text, form) for name, text in ways.items()
                       if form == "json" or name in ("babies.jsonl", "wide.csv", "on_each.csv")}
            first = answers["babies.jsonl"]
            for name, answer in answers.items():
                if name.startswith("on_") or name == "scattered.csv":
                    self.assertEqual(answer, answers["on_each.csv"], (form, name))  # lines and all
                self.assertEqual(self.without_lines(answer), self.without_lines(first), (form, name))
            if form == "json":
                self.check_lines(babies, answers)

    def check_lines(self, babies, answers):
        line = {"babies.jsonl": {}, "wide.csv": {}, "on_each.csv": {}}
        row = 2
        for number, one in enumerate(babies):
            line["babies.jsonl"][one["case"]], line["wide.csv"][one["case"]] = number + 1, number + 2
            line["on_each.csv"][one["case"]] = row
            row += len(rows_of(one))
        for name, where in line.items():
            document = json.loads(answers[name])
            self.assertEqual((document["babies"], document["refused"]), (len(babies), 0))
            self.assertGreater(document["missed"]["count"], 20)
            for part in ("missed", "not_indicated"):
                for listed in document[part]["listed"]:
                    self.assertEqual(listed["line"], where[listed["case"]])

    def test_threads_gzip_and_blocks(self):
        """More than two blocks of half a MiB, so that a baby's rows lie on both sides of a cut."""
        babies = self.babies(9000, 12)
        text = long(babies, on_each)
        self.assertGreater(len(json_lines(babies)), 3 << 19)
        one = self.audited("a.csv", text, "json", "--jobs", "1")
        self.assertEqual(one, self.audited("a.csv", text, "json", "--jobs", "5"))
        packed = self.folder / "a.csv.gz"
        packed.write_bytes(gzip.compress(text.encode()))
        done = run(str(packed), "--decisions", self.decisions, "--unlisted", "not-referred", "--by", "unit", "--by",
                   "examiner", "--by", "month", "--list", "1000", "--format", "json")
        self.assertEqual(done.stdout, one)
        self.assertEqual(self.without_lines(one), self.without_lines(self.audited("w.csv", wide(babies), "json")))

    def test_decisions_inside_the_cases(self):
        babies = self.babies(300, 13)
        for one in babies[::2]:
            one["decisions"] = {"referred": ["genetics", "ent"], "on": "2031-12-31"} if one["findings"] else {"referred": []}
        answers = [run(self.file(name, text), "--format", "json").stdout
                   for name, text in (("a.jsonl", json_lines(babies)), ("b.csv", wide(babies)), ("c.csv", long(babies, scattered)))]
        self.assertEqual(json.loads(answers[0])["decided"], 150)
        for answer in answers[1:]:
            self.assertEqual(self.without_lines(answer), self.without_lines(answers[0]))

    def test_batch_and_convert_read_the_same(self):
        babies = [{key: value for key, value in one.items() if key not in ("unit", "examiner")} for one in self.babies(400, 14)]
        for one in babies[::3]:
            one["decisions"] = {"referred": ["genetics"], "on": "2031-12-31"}
        ways = [("a.jsonl", json_lines(babies))]
        for name, text in (("b.csv", wide(babies)), ("c.csv", long(babies, scattered)), ("d.csv", long(babies, on_each))):
            rows = list(csv.DictReader(io.StringIO(text)))
            for row in rows:
                del row["unit"], row["examiner"]
            ways.append((name, table(list(rows[0]), rows)))
        batches, converted = [], []
        for name, text in ways:
            path = self.file(name, text)
            for verb, answers, more in (("assess", batches, ["--batch"]), ("convert", converted, ["--to", "jsonl"])):
                done = run(path, *more, verb=verb)
                self.assertEqual(done.returncode, 0, done.stderr)
                answers.append(done.stdout)
        self.assertEqual(batches[0].count("\n"), 400)
        self.assertEqual(converted[0].count("\n"), 400)
        for answers in (batches, converted):
            self.assertEqual([answers[0]] * len(answers), answers)

    def test_the_example_as_rows_of_findings(self):
        """The year of the README, written as one row a finding."""
        first_light = PROJECT / "examples" / "first-light"
        with (first_light / "year.csv").open(encoding="utf-8", newline="") as rows:
            year = list(csv.DictReader(rows))
        columns = ["case", "finding", *(key for key in year[0] if key not in ("case", "findings"))]
        split = [{**{key: value for key, value in row.items() if key != "findings"}, "finding": finding}
                 for row in year for finding in row["findings"].split("|")]
        arguments = ("--decisions", str(first_light / "decisions.csv"), "--unlisted", "not-referred", "--by", "unit",
                     "--format", "json")
        one = run(str(first_light / "year.csv"), *arguments)
        other = run(self.file("year.csv", table(columns, split)), *arguments)
        self.assertEqual((one.returncode, other.returncode, other.stderr), (0, 0, ""))
        self.assertEqual(self.without_lines(other.stdout), self.without_lines(one.stdout))

    def test_the_example_of_rows_of_findings(self):
        """Counted by hand: three independent minor variants sent to genetics, a white pupil sent nowhere."""
        done = run("examples/first-light/findings.csv", "--by", "unit", "--format", "json")
        self.assertEqual((done.returncode, done.stderr), (0, ""))
        document = json.loads(done.stdout)
        self.assertEqual((document["babies"], document["decided"]), (4, 4))
        self.assertEqual(sorted(v["value"] for v in document["strata"][0]["values"]), ["hill ward", "lake ward"])
        missed = [(one["case"], one["service"], one["line"]) for one in document["missed"]["listed"]]
        self.assertIn(("fl-102", "ophthalmology", 5), missed)
        self.assertNotIn("fl-101", [case for case, service, _ in missed if service == "genetics"])


HEAD = "case,sex,examined-on,examined,finding,state,side,unit\n"
GOOD = "a,female,2031-01-05,all,low-set ears,present,right,hill\na,,,,cleft palate,absent,,\n"
LAST = "z,male,2031-01-07,all,white pupil,,,lake\n"

# name: (rows between GOOD and LAST, babies, refused, places and words on stderr)
FAULTS = {
    "nothing wrong": ("b,male,2031-01-06,,,,,\n", 3, 0, []),
    "days in conflict": ("b,male,2031-01-06,,seizures,,,\nb,male,2031-01-07,,cleft palate,,,\n", 2, 1,
                         ["5:8: error: case `b` has `2031-01-07` under `examined-on` here and `2031-01-06`",
                          "4:8: note: the earlier row", "[rows-disagree]"]),
    "wards in conflict": ("b,male,2031-01-06,,seizures,,,hill\nb,,,,cleft palate,absent,,lake\n", 2, 1,
                          ["5:27: error: case `b` has `lake` under `unit` here and `hill`"]),
    "all of a baby's faults in one run": (
        "b,male,2031-01-06,,low-set eers,,,\nb,female,2031-02-30,,cleft palate,absnt,,\nb,,,,,,left,\n", 2, 1,
        ["4:20: error: unknown finding `low-set eers`", "did you mean `low-set ears`", "5:3: error: case `b` has `female`",
         "5:10: error: case `b` has `2031-02-30`", "5:35: error: unknown state `absnt`", "did you mean `absent`",
         "6:8: error: `left` under `side` speaks of a finding"]),
    "a day that is none": ("b,male,2031-02-30,,seizures,,,\n", 2, 1, ["4:8: error: `2031-02-30` is not understood"]),
    "no day on any row": ("b,male,,,seizures,,,\nb,,,,low-set eers,,,\n", 2, 1,
                          ["4:1: error: case `b` has no `examined-on`", "5:6: error: unknown finding `low-set eers`"]),
    "a day before any book": ("b,male,2019-01-06,,seizures,,,\n", 2, 1, ["4:8: error: no book was in force on 2019-01-06"]),
    "rows apart": ("b,male,2031-01-06,,seizures,,,\na,,,,white pupil,,,\n", 2, 1,
                   ["5:1: error: rows of case `a` stand apart", "the first stand in line 2"]),
    "rows apart, the later ones alone dated": ("b,male,,,seizures,,,\nc,male,2031-01-06,,,,,\nb,,2031-01-06,,,,,\n", 3, 2,
                                               ["4:1: error: case `b` has no `examined-on`", "6:1: error: rows of case `b`"]),
    "rows apart and wrong": ("b,male,2031-01-06,,,,,\na,,,,low-set eers,,,\n", 2, 1,
                             ["5:1: error: rows of case `a` stand apart", "5:6: error: unknown finding"]),
    "a row without a case": ("b,male,2031-01-06,,,,,\n,,,,seizures,,,\n", 3, 1, ["5:1: error: a row of one finding must name its case"]),
    "a row too short": ("b,male,2031-01-06,,seizures,,,\nb,male\nc,,2031-01-06,,,,,\n", 2, 3,
                        ["5:1: error: expected 8 cells as in the header, found 2", "4:1: error: a row that may be of case `b`",
                         "6:1: error: a row that may be of case `c`"]),
    "a stray quote": ("b,male,2031-01-06,,sei\"zures,,,\n", 0, 3,
                      ["4:1: error: a quote inside a cell is not doubled", "2:1: error: a row that may be of case `a`",
                       "5:1: error: a row that may be of case `z`"]),
    "blank lines between": ("\nb,male,2031-01-06,,seizures,,,\n\n\nb,,,,low-set eers,,,\n", 2, 1,
                            ["8:6: error: unknown finding `low-set eers`"]),
    "a side of what has none": ("b,male,2031-01-06,,cleft palate,,left,\n", 2, 1, ["4:20: error: `cleft palate` has no left and right"]),
    "a contradiction over two rows": ("b,male,2031-01-06,,seizures,,,\nb,,,,seizures,absent,,\n", 2, 1,
                                      ["4:20: error:", "5:6: note:", "[contradiction]"]),
}


class Faults(Folder):
    """What goes wrong is told at its line and column, costs its baby alone, and shows in the exit code."""

    def audit(self, text, *arguments):
        return run(self.file("f.csv", text), "--by", "unit", "--format", "json", *arguments)

    def check(self, rows, babies, refused, words):
        done = self.audit(HEAD + GOOD + rows + LAST)
        self.assertEqual(done.returncode, 3 if refused else 0, done.stderr)
        document = json.loads(done.stdout)
        for text in words:
            self.assertIn(text if text.startswith(("did", "[", "the")) else f"f.csv:{text}", done.stderr)
        self.assertNotIn("unknown key", done.stderr)
        self.assertEqual((document["babies"], document["refused"]), (babies, refused), done.stderr)
        other = self.audit(HEAD + GOOD + rows + LAST, "--jobs", "4")
        self.assertEqual((other.stdout, other.stderr), (done.stdout, done.stderr))

    def test_a_caret_stands_under_what_is_wrong(self):
        done = self.audit(HEAD + GOOD + "b,male,2031-01-06,,low-set eers,,,\n")
        self.assertIn("  b,male,2031-01-06,,low-set eers,,,\n                     ^^^^^^^^^^^^\n", done.stderr)

    def test_a_torn_last_row_costs_its_baby(self):
        whole = HEAD + GOOD + "b,male,2031-01-06,,seizures,,,\nb,,,,cleft palate,present,,\n"
        for cut in range(4, len("b,,,,cleft palate,present,")):
            done = self.audit(whole[:-cut])
            self.assertEqual(done.returncode, 3, cut)
            self.assertIn("f.csv:5:1: error: expected 8 cells", done.stderr)
            self.assertIn("f.csv:4:1: error: a row that may be of case `b` cannot be read", done.stderr)
            self.assertEqual(json.loads(done.stdout)["babies"], 1)
        done = self.audit(whole + 'c,male,2031-01-06,,"seizures,,,\n')
        self.assertIn("f.csv:6:1: error: a quoted cell is not closed", done.stderr)
        self.assertEqual(json.loads(done.stdout)["babies"], 1)  # b may lack a row

    def test_every_wrong_column_in_one_run(self):
        done = self.audit("case,fidning,finding,findings,colour,unti,examined-no,unit\na,,,,,,,\n")
        self.assertEqual((done.returncode, [d["code"] for d in json.loads(done.stdout)["diagnostics"]]),
                         (3, ["unreadable-cases"] + ["unknown-column"] * 5))
        places = {d["column"]: d["help"] for d in json.loads(done.stdout)["diagnostics"] if d["code"] == "unknown-column"}
        self.assertEqual(places[6], "did you mean `finding`")
        self.assertEqual(places[31], "name it with --by to group by it, or with --ignore")
        self.assertEqual((places[38], places[43]), ("did you mean `unit`", "did you mean `examined-on` or `examined`"))

    def test_columns_of_the_form_are_no_groups(self):
        done = self.audit(HEAD + GOOD, "--by", "state")
        self.assertEqual(done.returncode, 3)
        self.assertIn("column `state` speaks of the examination here", done.stdout)
        plain = self.audit("case,examined-on,findings,state\na,2031-01-05,seizures,north\n", "--by", "state")
        self.assertEqual([s["by"] for s in json.loads(plain.stdout)["strata"]], ["unit", "state"])

    def test_a_column_passed_over_may_differ_by_row(self):
        text = "case,examined-on,finding,note\na,2031-01-05,seizures,first\na,,cleft palate,second\n"
        self.assertEqual(self.audit(text).returncode, 3)
        done = self.audit(text, "--ignore", "note")
        self.assertEqual((done.returncode, json.loads(done.stdout)["babies"]), (0, 1))

    def test_an_unknown_service_stands_at_its_cell(self):
        done = self.audit("case,examined-on,finding,referred\na,2031-01-05,seizures,genetics|genetix\n")
        self.assertEqual(done.returncode, 3)
        self.assertIn("f.csv:2:32: error: unknown service `genetix`; did you mean `genetics`", done.stderr)

    def test_one_book_for_all_needs_no_day(self):
        text = "case,finding\na,seizures\nb,\n"
        self.assertEqual(json.loads(self.audit(text).stdout)["refused"], 2)
        done = self.audit(text, "--as-of", "2031-01-01")
        self.assertEqual((done.returncode, json.loads(done.stdout)["babies"]), (0, 2))

    def test_a_row_of_one_baby_is_placed_at_its_cell_too(self):
        done = self.audit("case,examined-on,findings,unit\na,2031-01-05,seizures,hill\nb,2031-01-05,seizures|low-set eers,hill\n")
        self.assertIn("f.csv:3:23: error: unknown finding `low-set eers`", done.stderr)


def add_tests():
    for name, row in FAULTS.items():
        def test(self, row=row):
            self.check(*row)
        setattr(Faults, "test_fault_" + "".join(c if c.isalnum() else "_" for c in name), test)


add_tests()

if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
