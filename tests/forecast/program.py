# SPDX-License-Identifier: MIT
"""`asterism forecast` as people use it."""
import csv
import io
import json
import subprocess
import sys
import unittest

PROGRAM = sys.argv[1]


def run(*arguments):
    return subprocess.run([PROGRAM, "forecast", *arguments], capture_output=True, text=True, check=False)


class Forecast(unittest.TestCase):
    def test_same_seed_same_answer_other_seed_other(self):
        one, again, other = (run("--samples", "500", "--seed", s).stdout for s in ("3", "3", "4"))
        self.assertEqual(one, again)
        self.assertNotEqual(one, other)

    def test_formats_say_the_same(self):
        document = json.loads(run("--samples", "400", "--format", "json").stdout)
        rows = list(csv.DictReader(io.StringIO(run("--samples", "400", "--format", "csv").stdout)))
        self.assertEqual(document["schema"], "asterism.forecast/1")
        self.assertEqual([r["service"] for r in rows], ["any"] + [s["service"] for s in document["services"]])
        for row, service in zip(rows[1:], document["services"]):
            self.assertEqual(int(row["babies"]), service["suggested"]["count"])
            self.assertAlmostEqual(float(row["suggested"]), service["suggested"]["per_births"], places=3)
        self.assertIn("nothing here is a diagnosis", " ".join(document["cautions"]).lower())

    def test_births_only_scale(self):
        small, large = (json.loads(run("--samples", "400", "--births", n, "--format", "json").stdout)
                        for n in ("1000", "2500"))
        for a, b in zip(small["services"], large["services"]):
            self.assertEqual(a["suggested"]["count"], b["suggested"]["count"])
            for key in ("per_births", "low", "high"):
                self.assertAlmostEqual(a["suggested"][key] * 2.5, b["suggested"][key])

    def test_against_a_release(self):
        document = json.loads(run("--samples", "2000", "--against", "0.1.0", "--format", "json").stdout)
        self.assertEqual(document["against"]["version"], "0.1.0")
        for service in document["services"]:
            before, change = service["before"], service["change"]
            self.assertEqual(service["suggested"]["count"] - before["count"], change["gained"] - change["lost"])

    def test_wrong_use(self):
        for arguments, words in ((["--samples", "0"], "--samples"), (["--births", "x"], "--births"),
                                 (["no-such-book"], "neither a folder nor a version"),
                                 (["--format", "html"], "html"), (["--samples", "9" * 30], "--samples")):
            done = run(*arguments)
            self.assertEqual(done.returncode, 2, arguments)
            self.assertIn(words, done.stderr)
            self.assertEqual(done.stdout, "")

    def test_text_tells_what_it_is(self):
        done = run("--samples", "300")
        self.assertEqual((done.returncode, done.stderr), (0, ""))
        self.assertIn("per 1,000 births", done.stdout)
        self.assertIn("300 simulated newborns (seed 1)", done.stdout)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
