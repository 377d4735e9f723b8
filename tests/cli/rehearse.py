# SPDX-License-Identifier: MIT
"""Vignettes, coverage and mutants from the command line."""
import pathlib
import xml.etree.ElementTree as ElementTree

from program import ProgramTest, main, run

BOOK = ("rules/newborn", "--ontology", "ontology")


class Rehearse(ProgramTest):
    def copied_book(self, change):
        """The shipped book; `change` gets each file's path and text and returns its text, or None to leave it out."""
        path = pathlib.Path(self.file("", "empty")).parent
        for name in pathlib.Path("rules/newborn").rglob("*.yaml"):
            text = None if "releases" in name.parts else change(name, name.read_text(encoding="utf-8"))
            if text is None:
                continue
            target = path / name.relative_to("rules/newborn")
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_text(text, encoding="utf-8")
        return str(path)

    def broken_book(self):
        """The shipped book with one urgency lowered."""
        lowered = ("service: genetics, urgency: urgent", "service: genetics, urgency: routine")
        return self.copied_book(lambda name, text: text.replace(*lowered) if name.name == "counting.yaml" else text)

    def bare_book(self):
        """The shipped book without the vignettes that restate single entries."""
        left_out = {"classes.yaml", "count-edges.yaml", "counts.yaml", "derived.yaml", "fields.yaml", "rule-edges.yaml"}
        return self.copied_book(lambda name, text: None if name.parts[-2] == "vignettes" and name.name in left_out else text)

    def test_the_shipped_vignettes_hold(self):
        result = run("rehearse", *BOOK, "--format", "json")
        self.assertEqual(result.code, 0, result.err)
        document = result.json()
        self.assertEqual(document["schema"], "asterism.rehearse/1")
        self.assertEqual(document["vignettes"]["failing"], 0)
        self.assertGreaterEqual(document["vignettes"]["total"], 1790)
        self.assertNotIn("mutants", document)

    def test_every_condition_is_covered_or_listed_with_its_place(self):
        coverage = run("rehearse", self.bare_book(), "--ontology", "ontology", "--format", "json").json()["coverage"]
        self.assertGreater(len(coverage["unreached"]), 0)
        self.assertEqual(coverage["nodes"] - coverage["covered"], len(coverage["unreached"]))
        for node in coverage["unreached"]:
            self.assertRegex(node["place"], r"\.yaml:\d+:\d+$")
            self.assertTrue(node["never"])

    def test_a_minimum_that_is_not_reached_exits_4(self):
        self.assertEqual(run("rehearse", *BOOK, "--min-coverage", "100").code, 0)
        bare = (self.bare_book(), "--ontology", "ontology")
        coverage = run("rehearse", *bare, "--format", "json").json()["coverage"]
        reached = 100 * coverage["covered"] / coverage["nodes"]
        self.assertEqual(run("rehearse", *bare, "--min-coverage", f"{reached - 0.1:.3f}").code, 0)
        self.assertEqual(run("rehearse", *bare, "--min-coverage", f"{reached + 0.1:.3f}").code, 4)

    def test_a_failing_vignette_is_named_at_its_place(self):
        result = run("rehearse", self.broken_book(), "--ontology", "ontology")
        self.assertEqual(result.code, 4)
        self.assertRegex(result.out, r"\.yaml:\d+:\d+: vignette `[^`]+`: genetics is routine, expected urgent")

    def test_junit_counts_what_it_lists(self):
        for book, code in ((BOOK, 0), ((self.broken_book(), "--ontology", "ontology"), 4)):
            result = run("rehearse", *book, "--format", "junit")
            self.assertEqual(result.code, code)
            [suite] = ElementTree.fromstring(result.out)
            cases = suite.findall("testcase")
            failures = [case for case in cases if case.find("failure") is not None]
            self.assertEqual(int(suite.get("tests")), len(cases))
            self.assertEqual(int(suite.get("failures")), len(failures))
            self.assertEqual(bool(failures), code == 4)

    def test_a_sample_of_mutants_adds_up_and_offers_vignettes(self):
        arguments = ("rehearse", self.bare_book(), "--ontology", "ontology", "--mutants", "--sample", "40", "--seed", "7", "--format", "json")
        result = run(*arguments)
        mutants = result.json()["mutants"]
        self.assertEqual(mutants["killed"] + mutants["equivalent"] + mutants["survived"], mutants["total"])
        self.assertEqual(mutants["total"] + mutants["refused"], 40)
        self.assertGreater(mutants["of"], 9000)
        self.assertGreater(mutants["survived"], 0)
        self.assertEqual(result.code, 4)
        for survivor in mutants["survivors"]:
            self.assertRegex(survivor["place"], r"\.yaml:\d+:\d+$")
            self.assertTrue(survivor["vignette"] or survivor["method"])
        for equivalent in mutants["equivalents"]:
            self.assertTrue(equivalent["method"])
        self.assertEqual(run(*arguments).out, result.out)

    def test_the_edits_of_one_part(self):
        mutants = run("rehearse", *BOOK, "--mutants", "--part", "low-set-ears", "--format", "json").json()["mutants"]
        self.assertEqual(mutants["survived"], 0)
        self.assertGreaterEqual(mutants["of"], 5)
        self.assertLess(mutants["of"], 20)
        wrong = run("rehearse", *BOOK, "--mutants", "--part", "low-set-eras")
        self.assertEqual(wrong.code, 2)
        self.assertIn("did you mean `low-set-ears`", wrong.err)

    def test_wrong_use(self):
        for arguments in (("--min-coverage", "101"), ("--part", "low-set-ears"), ("--min-coverage", "most"), ("--jobs", "2"), ("--mutants", "--jobs", "0"),
                          ("--mutants", "--sample", "-1"), ("--format", "xml")):
            self.assertEqual(run("rehearse", *BOOK, *arguments).code, 2, arguments)


if __name__ == "__main__":
    main()
