# SPDX-License-Identifier: MIT
"""`asterism audit` on an invented unit of eight babies, and on years of them.

    python3 tests/audit/program.py PROGRAM [--update]     # rewrites golden/; read the diff

What the unit's tables must be was counted by hand: see EXPECTED.
"""
import csv
import gzip
import io
import json
import re
import subprocess
import sys
import tempfile
import unittest
from html.parser import HTMLParser
from pathlib import Path

HERE = Path(__file__).resolve().parent
PROJECT = HERE.parents[1]
PROGRAM = str(Path(sys.argv[1]).resolve())
UPDATE = "--update" in sys.argv
sys.path.insert(0, str(HERE))
import invented_year  # noqa: E402

SMALL = ["--rulebook", "tests/cli/small/rules", "--ontology", "tests/cli/small/ontology"]
CASES, DECISIONS = "tests/audit/unit/cases.jsonl", "tests/audit/unit/decisions.csv"
# By hand: suggested, unsettled, not suggested; each referred, not referred.
EXPECTED = {"genetics": [[2, 2], [1, 0], [1, 1]], "ophthalmology": [[2, 0], [0, 1], [0, 4]],
            "orthopaedics": [[0, 0], [0, 0], [0, 1]]}


def run(*arguments, small=True):
    return subprocess.run([PROGRAM, "audit", *arguments, *(SMALL if small else [])], cwd=PROJECT, text=True,
                          encoding="utf-8", capture_output=True, check=False)


def unit(*arguments):
    return run(CASES, "--decisions", DECISIONS, *arguments)


def neutral(text):
    text = re.sub(r"\b[0-9a-f]{64}\b", "<sha256>", text)
    text = re.sub(r"\([0-9a-f]{8}\)", "(<digest>)", text)
    return re.sub(r'"engine": "[^"]*"', '"engine": "<version>"', text)


def cells(table):
    return [[table[row][column] for column in ("referred", "not_referred")]
            for row in ("suggested", "unsettled", "not_suggested")]


class Unit(unittest.TestCase):
    maxDiff = None

    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)

    def document(self, *arguments):
        done = unit("--format", "json", *arguments)
        self.assertEqual((done.returncode, done.stderr), (0, ""))
        return json.loads(done.stdout)

    def file(self, name, text):
        path = self.folder / name
        path.write_text(text, encoding="utf-8")
        return str(path)

    def test_golden(self):
        for form, suffix in {"text": "txt", "json": "json", "csv": "csv", "html": "html"}.items():
            done = unit("--by", "unit", "--by", "month", "--format", form)
            self.assertEqual((done.returncode, done.stderr), (0, ""))
            path = HERE / "golden" / f"unit.{suffix}"
            if UPDATE:
                path.write_text(neutral(done.stdout), encoding="utf-8")
            self.assertEqual(neutral(done.stdout), path.read_text(encoding="utf-8"), form)

    def test_tables_counted_by_hand(self):
        document = self.document()
        self.assertEqual({s["service"]: cells(s["table"]) for s in document["services"]}, EXPECTED)
        genetics = document["services"][0]
        self.assertEqual((genetics["sensitivity"]["count"], genetics["sensitivity"]["total"]), (2, 4))
        self.assertAlmostEqual(genetics["sensitivity"]["low"], 0.15, places=2)  # Wilson, 2 of 4
        self.assertEqual((genetics["ppv"]["count"], genetics["ppv"]["total"]), (2, 3))
        # Po 3/6, Pe 4/6*3/6 + 2/6*3/6 = 1/2: kappa 0. AC1: mean margin 7/12, Pe 35/72, (1/2 - 35/72)/(37/72) = 1/37.
        self.assertAlmostEqual(genetics["agreement"]["kappa"]["value"], 0)
        self.assertAlmostEqual(genetics["agreement"]["ac1"]["value"], 1 / 37)

    def test_what_cannot_be_joined_is_counted_and_named(self):
        document = self.document()
        self.assertEqual(document["without_decision"], {"count": 1, "cases": ["a8"]})
        self.assertEqual(document["without_case"], {"count": 1, "decisions": 1, "cases": ["ghost"]})
        self.assertEqual(document["services"][2]["undecided"], 6)
        everything = self.document("--unlisted", "not-referred")
        self.assertEqual(everything["decided"], 8)
        self.assertEqual(everything["services"][2]["undecided"], 0)

    def test_lists_by_urgency_with_reasons(self):
        document = self.document()
        missed = document["missed"]["listed"]
        self.assertEqual([(m["case"], m["service"], m["rules"]) for m in missed],
                         [("<script>alert(1)</script>", "genetics", ["two-minor-variants"]), ("a3", "genetics", ["pupil-not-red"])])
        self.assertEqual([m["case"] for m in document["not_indicated"]["listed"]], ["=1+1"])
        self.assertEqual(self.document("--list", "1")["missed"]["count"], 2)
        self.assertEqual(len(self.document("--list", "1")["missed"]["listed"]), 1)

    def test_days_from_exam_to_referral(self):
        genetics, eyes, _ = self.document()["services"]
        self.assertEqual([(d["urgency"], d["in_time"], d["late"], d["missed"]) for d in genetics["delays"]],
                         [("urgent", 2, 0, 2)])
        self.assertEqual([(d["urgency"], d["in_time"], d["late"], d["median_days"], d["longest_days"])
                          for d in eyes["delays"]], [("same-day", 1, 1, 0.5, 1)])

    def test_the_day_may_be_called_on(self):
        text = Path(PROJECT / DECISIONS).read_text(encoding="utf-8")
        other = run(CASES, "--decisions", self.file("d.csv", text.replace("referred,at", "referred,on")), "--format", "json")
        self.assertEqual(json.loads(other.stdout), self.document())
        both = run(CASES, "--decisions", self.file("d.csv", "case,service,referred,at,on\n"))
        self.assertIn("column `on` is named twice", both.stderr)
        rows = [dict(zip(("case", "service", "referred", "at"), row)) for row in csv.reader(io.StringIO(text))][1:]
        lines = self.file("d.jsonl", "\n".join(json.dumps(
            {k: v for k, v in row.items() if v} | ({"referred": row["referred"] == "yes"} if row["referred"] else {}))
            for row in rows))
        self.assertEqual(json.loads(run(CASES, "--decisions", lines, "--format", "json").stdout), self.document())

    def test_strata_add_up(self):
        document = self.document("--by", "unit", "--by", "examiner", "--by", "month")
        self.assertEqual([s["by"] for s in document["strata"]], ["unit", "examiner", "month"])
        for strata in document["strata"]:
            for at, service in enumerate(document["services"]):
                parts = [cells(value["services"][at]["table"]) for value in strata["values"]]
                total = [[sum(part[r][c] for part in parts) for c in range(2)] for r in range(3)]
                self.assertEqual(total, cells(service["table"]))
        self.assertIn("not given", [v["value"] for v in document["strata"][1]["values"]])

    def test_csv_holds_no_formula(self):
        done = unit("--by", "unit", "--format", "csv")
        rows = list(csv.reader(io.StringIO(done.stdout)))
        self.assertTrue(all(len(row) == len(rows[0]) for row in rows))
        for cell in (cell for row in rows for cell in row):
            self.assertFalse(cell.startswith(("=", "+", "@", "\t", "\r")), cell)
            if cell.startswith("-"):
                float(cell)
        self.assertIn("'=1+1", [row[10] for row in rows])
        self.assertIn("'=HYPERLINK(\"x\")", [row[3] for row in rows])

    def test_page_is_inert_and_whole(self):
        page = unit("--by", "unit", "--format", "html").stdout
        tags = []

        class Reader(HTMLParser):
            def handle_starttag(self, tag, attributes):
                tags.append(tag)
                assert not any(name.startswith("on") for name, _ in attributes), attributes
                for name, value in attributes:
                    assert name not in ("src", "href") or value.startswith(("#", "data:")), value

        Reader().feed(page)
        self.assertNotIn("script", tags)
        self.assertIn("svg", tags)
        self.assertIn("Content-Security-Policy", page)
        self.assertIn("&lt;script&gt;alert(1)&lt;/script&gt;", page)
        self.assertEqual(tags.count("svg"), 4)

    def test_suppression_leaves_no_small_count_and_no_baby(self):
        done = unit("--suppress-below", "3", "--by", "unit", "--format", "json")
        document = json.loads(done.stdout)
        for service in document["services"]:
            counts = [c for row in cells(service["table"]) for c in row if c is not None]
            self.assertTrue(all(count >= 3 for count in counts), service)
        for form in ("text", "json", "csv", "html"):
            text = unit("--suppress-below", "3", "--by", "unit", "--format", form).stdout
            for baby in (r"\ba3\b", r"\ba8\b", "ghost", r"alert\(1\)", r"=1\+1"):
                self.assertIsNone(re.search(baby, text), (form, baby))

    def test_the_example_of_the_readme(self):
        done = run("examples/first-light/year.csv", "--decisions", "examples/first-light/decisions.csv", "--unlisted",
                   "not-referred", "--by", "unit", "--format", "json", small=False)
        self.assertEqual((done.returncode, done.stderr), (0, ""))
        document = json.loads(done.stdout)
        self.assertEqual((document["babies"], document["refused"], document["without_case"]["count"]), (400, 0, 0))
        tables = {one["service"]: cells(one["table"]) for one in document["services"]}
        self.assertEqual(tables["ophthalmology"][0], [1, 0])  # the one white pupil of the year was sent

    def test_decisions_inside_the_cases(self):
        lines = [json.loads(line) for line in Path(PROJECT / CASES).read_text(encoding="utf-8").splitlines()[:3]]
        lines[0]["decisions"] = {"referred": ["genetics"], "on": "2031-01-20"}
        lines[1]["decisions"] = {"referred": []}
        path = self.file("own.jsonl", "\n".join(map(json.dumps, lines)))
        document = json.loads(run(path, "--format", "json").stdout)
        self.assertEqual((document["decided"], document["without_decision"]["cases"]), (2, ["a3"]))
        self.assertEqual(cells(document["services"][0]["table"])[0], [1, 1])
        self.assertEqual(document["services"][0]["delays"][0]["late"], 1)  # 15 days, 14 allowed
        lines[0]["decisions"]["referred"] = ["genetix"]
        done = run(self.file("wrong.jsonl", "\n".join(map(json.dumps, lines))))
        self.assertEqual(done.returncode, 3)
        self.assertIn("did you mean `genetics`", done.stderr)
        self.assertEqual(run(path, "--decisions", DECISIONS).returncode, 3)  # decided in two places

    def test_every_wrong_decision_in_one_run(self):
        wrong = self.file("d.csv", "case,service,referred,at\na1,genetcs,yes,\na1,genetics,maybe,\n"
                                   "a2,genetics,no,2031-02-30\na3,genetics,no,\na3,genetics,yes,\n,genetics,yes,\n"
                                   "a6,none,,\na6,genetics,yes,\na7,genetics\n")
        done = run(CASES, "--decisions", wrong)
        self.assertEqual((done.returncode, done.stdout), (3, ""))
        for words in ("d.csv:2:4: error: unknown service `genetcs`", "did you mean `genetics`",
                      "d.csv:3:13: error: expected yes or no", "d.csv:4:16: error:", "[bad-date]",
                      "d.csv:6:1: error: `genetics` is decided twice for case `a3`", "d.csv:7:1: error: a decision without",
                      "referred to a service and to `none`", "d.csv:10:1: error: expected 4 cells"):
            self.assertIn(words, done.stderr)
        header = self.file("h.csv", "case,servise,referred\n")
        self.assertIn("did you mean `service`", run(CASES, "--decisions", header).stderr)
        lines = self.file("d.jsonl", '{"case":"a1","service":"genetcs","referred":true}\n[1]\n{"case":"a1"}\n')
        done = run(CASES, "--decisions", lines, "--format", "json")
        self.assertEqual(done.returncode, 3)
        self.assertEqual([d["line"] for d in json.loads(done.stdout)["diagnostics"]][:2], [1, 2])

    def test_the_code_of_each_wrong_row(self):
        head = "case,service,referred\n"
        for name, text, code in (("a.csv", "case,referred\na1,yes\n", "missing-column"),
                                 ("b.csv", head + ",genetics,yes\n", "missing-case"),
                                 ("c.csv", head + "a1,,yes\n", "missing-service"),
                                 ("d.csv", head + "a1,genetics,maybe\n", "bad-value"),
                                 ("e.jsonl", "[1]\n", "bad-json")):
            done = run(CASES, "--decisions", self.file(name, text), "--format", "json")
            self.assertEqual(done.returncode, 3)
            self.assertEqual([d["code"] for d in json.loads(done.stdout)["diagnostics"]], [code])

    def test_a_file_that_ends_early_gives_no_report(self):
        whole = gzip.compress(Path(PROJECT / CASES).read_bytes())
        torn = self.folder / "cases.jsonl.gz"
        torn.write_bytes(whole[:len(whole) // 2])
        table = self.file("cases.csv", "case,colour\na1,blue\n")
        for cases, code in ((str(torn), "unreadable-file"), (table, "unreadable-cases")):
            done = run(cases, "--decisions", DECISIONS, "--format", "json")
            self.assertEqual(done.returncode, 3)
            document = json.loads(done.stdout)
            self.assertIn(code, [d["code"] for d in document["diagnostics"]])
            self.assertNotIn("services", document)

    def test_bad_cases_are_counted_and_the_rest_goes_on(self):
        good = Path(PROJECT / CASES).read_text(encoding="utf-8")
        bad = good + ('{"case":"b1","examined-on":"2031-01-05","findings":["slantin-eyes"]}\n{"case":"b2"\n'
                      '{"case":"b3","examined-on":"2019-01-05"}\n{"case":"b4"}\n{"case":"a1","examined-on":"2031-01-05"}\n'
                      '{"case":"b5","examined-on":"2031-01-05","unitt":"x"}\n{"examined-on":"2031-01-05"}\n')
        done = run(self.file("bad.jsonl", bad), "--decisions", DECISIONS, "--format", "json")
        self.assertEqual(done.returncode, 3)
        document = json.loads(done.stdout)
        self.assertEqual((document["babies"], document["refused"]), (8, 7))
        self.assertEqual({s["service"]: cells(s["table"]) for s in document["services"]}, EXPECTED)
        for words in ("bad.jsonl:9:", "or `slanting-eyes`", "bad.jsonl:10:", "bad.jsonl:11:", "no book was in force",
                      "bad.jsonl:12:", "no `examined-on`", "stands twice, first in line 1", "unknown key `unitt`",
                      "a case without a name"):
            self.assertIn(words, done.stderr)

    def test_wrong_use(self):
        for arguments, words in (([], "one file of cases"), ([CASES, "--unlisted", "not-referred"], "--decisions"),
                                 ([CASES, "--suppress-below", "1"], "--suppress-below"), ([CASES, "--by", "sex"], "--by sex"),
                                 ([CASES, "--unlisted", "no", "--decisions", DECISIONS], "--unlisted"),
                                 ([CASES, "--format", "pdf"], "pdf"), ([CASES, "--list", "-1"], "--list")):
            done = run(*arguments)
            self.assertEqual((done.returncode, done.stdout), (2, ""), arguments)
            self.assertIn(words, done.stderr)
        slip = run(CASES, "--by", "untis")
        self.assertIn("--by untis: no case has it; did you mean `unit`\n", slip.stderr)
        self.assertNotIn("--by", run(CASES, "--by", "unit").stderr)
        self.assertEqual(run("no-such-file.jsonl").returncode, 3)
        self.assertEqual(run(CASES, "--decisions", "no-such-file.csv").returncode, 3)
        empty = json.loads(run(self.file("none.jsonl", ""), "--format", "json").stdout)
        self.assertEqual(empty["babies"], 0)


class Year(unittest.TestCase):
    """By the built-in book: many babies, every reader, every number of threads."""

    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        cls.at = Path(cls.folder.name)
        invented_year.write(cls.at, 6000, 5)

    @classmethod
    def tearDownClass(cls):
        cls.folder.cleanup()

    def document(self, cases, *arguments):
        done = run(str(self.at / cases), "--decisions", str(self.at / "decisions.csv"), "--unlisted", "not-referred",
                   "--format", "json", *arguments, small=False)
        self.assertEqual((done.returncode, done.stderr), (0, ""))
        return json.loads(done.stdout)

    def test_threads_and_readers_agree(self):
        one = self.document("cases.jsonl", "--jobs", "1", "--by", "unit")
        self.assertEqual(one, self.document("cases.jsonl", "--jobs", "5", "--by", "unit"))
        self.assertEqual(one["babies"], 6000)
        packed = self.at / "cases.jsonl.gz"
        packed.write_bytes(gzip.compress((self.at / "cases.jsonl").read_bytes()))
        self.assertEqual(one, self.document("cases.jsonl.gz", "--by", "unit"))
        rows = self.document("cases.csv", "--by", "unit")
        for part in (rows["missed"]["listed"], rows["not_indicated"]["listed"]):
            for item in part:
                item["line"] -= 1  # the header
        self.assertEqual(one, rows)

    def test_verdicts_are_those_of_assess(self):
        done = subprocess.run([PROGRAM, "assess", "--batch", "--input", "jsonl", "-"], text=True, capture_output=True, check=True,
                              input=re.sub(r', "unit".*\}', "}", (self.at / "cases.jsonl").read_text()))
        counted = {}
        self.assertEqual(done.stdout.count("\n"), 6000)
        for line in done.stdout.splitlines():
            for referral in json.loads(line)["referrals"]:
                counted[referral["service"], referral["verdict"].replace("-", "_")] = \
                    counted.get((referral["service"], referral["verdict"].replace("-", "_")), 0) + 1
        for service in self.document("cases.jsonl")["services"]:
            for row in ("suggested", "unsettled"):  # a batch's line leaves out what is not suggested
                cell = service["table"][row]
                self.assertEqual(sum(cell.values()), counted.get((service["service"], row), 0), (service["service"], row))

    def test_each_baby_by_the_book_of_its_exam_day(self):
        text = (self.at / "cases.jsonl").read_text().splitlines()[:40]
        early = [re.sub('"born": "[^"]*", "examined-on": "[^"]*"', f'"examined-on": "{day}"', line)
                 for line, day in zip(text, ["2026-12-01", "2027-02-28", "2027-03-01", "2030-01-01"] * 10)]
        (self.at / "early.jsonl").write_text("\n".join(early))
        books = {b["version"]: b["babies"] for b in self.document("early.jsonl")["rulebooks"]}
        self.assertEqual((books["0.1.0"], sum(books.values())), (20, 40))
        fixed = self.document("early.jsonl", "--as-of", "2026-12-24")["rulebooks"]
        self.assertEqual([(b["version"], b["babies"]) for b in fixed], [("0.1.0", 40)])

    def test_suppressed_year_adds_up_to_nothing(self):
        """No hidden stratum can be had by subtraction: none, or at least two, are hidden of a shown service."""
        document = self.document("cases.jsonl", "--suppress-below", "5", "--by", "unit", "--by", "month")
        for strata in document["strata"]:
            for at, service in enumerate(document["services"]):
                hidden = [v for v in strata["values"] if v["services"][at]["table"]["suggested"]["referred"] is None]
                self.assertNotEqual(len(hidden), 1)
                if any(c is None for row in cells(service["table"]) for c in row):
                    self.assertEqual(len(hidden), len(strata["values"]))
        self.assertEqual((document["missed"], document["not_indicated"]),
                         ({"count": None, "listed": []}, {"count": None, "listed": []}))


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
