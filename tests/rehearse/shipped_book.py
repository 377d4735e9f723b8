# SPDX-License-Identifier: MIT
"""The shipped book: every condition seen met and not met, and every single edit noticed or proven to change nothing.

    shipped_book.py PROGRAM [SAMPLE]      with SAMPLE only so many edits are tried, drawn by a fixed seed

The same by hand: asterism rehearse rules/newborn --ontology ontology --min-coverage 100 --mutants --jobs 2
"""
import json
import re
import subprocess
import sys
import unittest

PROGRAM = sys.argv[1]
SAMPLE = int(sys.argv[2]) if len(sys.argv) > 2 else 0
COMMAND = [PROGRAM, "rehearse", "rules/newborn", "--ontology", "ontology", "--min-coverage", "100", "--mutants", "--jobs", "2",
           "--format", "json"]


class ShippedBook(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        sample = ["--sample", str(SAMPLE), "--seed", "11"] if SAMPLE else []
        done = subprocess.run(COMMAND + sample, text=True, capture_output=True, check=False)
        cls.code, cls.document = done.returncode, json.loads(done.stdout)
        cls.mutants = cls.document["mutants"]

    def test_every_vignette_holds(self):
        self.assertEqual(self.document["failures"], [])
        self.assertGreaterEqual(self.document["vignettes"]["total"], 3200)

    def test_every_condition_is_seen_met_and_not_met(self):
        coverage = self.document["coverage"]
        self.assertEqual(coverage["unreached"], [])
        self.assertEqual(coverage["covered"], coverage["nodes"])
        self.assertGreater(coverage["nodes"], 2700)

    def test_no_edit_survives(self):
        self.assertEqual([(one["place"], one["part"], one["edit"]) for one in self.mutants["survivors"]], [])
        self.assertEqual(self.mutants["survived"], 0)
        self.assertEqual(self.code, 0)

    def test_every_edit_was_tried(self):
        mutants = self.mutants
        self.assertEqual(mutants["killed"] + mutants["equivalent"], mutants["total"])
        self.assertEqual(mutants["total"] + mutants["refused"], SAMPLE or mutants["of"])
        self.assertGreater(mutants["of"], 9500)
        # Refused edits are books that do not load, not a place to hide: they stay the few they are.
        self.assertLess(mutants["refused"], 0.06 * (SAMPLE or mutants["of"]))

    def test_what_changes_nothing_is_proven(self):
        self.assertLess(self.mutants["equivalent"], 40)
        for one in self.mutants["equivalents"]:
            self.assertRegex(one["method"], r"(a solver found no baby|one and the same circuit).*within \d+ conflicts", one)
            self.assertTrue(re.fullmatch(r"rules/newborn/.+\.yaml:\d+:\d+", one["place"]), one)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
