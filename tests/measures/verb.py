# SPDX-License-Identifier: MIT
"""`asterism measure` as a person runs it."""
import sys
from pathlib import Path
from xml.dom import minidom

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "cli"))
from program import ProgramTest, main, run  # noqa: E402

HEAD = ("measure", "head-circumference", "29.5cm", "--sex", "female", "--gestation", "37w3d")


class Answers(ProgramTest):
    def test_all_norms_that_apply_side_by_side(self):
        results = run(*HEAD, "--format", "json").json()["results"]
        self.assertEqual([r["norm"] for r in results], ["intergrowth-newborn", "olsen-2010"])
        self.assertAlmostEqual(results[0]["z"], -2.71, places=2)
        self.assertTrue(all({"norm", "z", "centile", "note"} <= r.keys() for r in results))

    def test_the_text_says_the_same(self):
        result = run(*HEAD)
        self.assertEqual(result.code, 0)
        self.assertIn("intergrowth-newborn (preferred): z -2.71", result.out)

    def test_one_norm(self):
        results = run(*HEAD, "--norm", "olsen-2010", "--format", "json").json()["results"]
        self.assertEqual([r["norm"] for r in results], ["olsen-2010"])

    def test_by_age(self):
        results = run(*HEAD, "--age", "14d", "--format", "json").json()["results"]
        self.assertEqual([r["norm"] for r in results], ["who-2006"])

    def test_name_and_value_in_any_words(self):
        by_words = run("measure", "head", "circumference", "29.5", "cm", *HEAD[3:], "--format", "json").json()
        by_sign = run("measure", "head circumference=29.5 cm", *HEAD[3:], "--format", "json").json()
        self.assertEqual(by_words["results"][0]["z"], by_sign["results"][0]["z"])

    def test_several_measures_bring_the_computed_ones(self):
        document = run("measure", "pre-ductal-saturation=96%", "post-ductal-saturation=94%", "--format", "json").json()
        self.assertEqual(document["measures"][-1]["measure"], "saturation-difference")
        self.assertEqual(document["measures"][-1]["value"], 2)


class Charts(ProgramTest):
    def test_a_well_formed_chart_without_script(self):
        path = self.file("", "chart.svg")
        self.assertEqual(run(*HEAD, "--chart", path).code, 0)
        svg = minidom.parse(path)
        self.assertEqual(svg.documentElement.tagName, "svg")
        self.assertEqual(len(svg.getElementsByTagName("script")), 0)
        words = " ".join(node.firstChild.data for node in svg.getElementsByTagName("text"))
        for part in ("INTERGROWTH-21st", "Population: eight countries", "(cm)", "(weeks)", "z -2.71"):
            self.assertIn(part, words)

    def test_no_chart_without_a_sex(self):
        path = self.file("", "chart.svg")
        result = run("measure", "weight", "3kg", "--gestation", "38w0d", "--chart", path)
        self.assertEqual(result.code, 3)
        self.assertIn("--sex", result.err)


class Slips(ProgramTest):
    def refused(self, part, *arguments):
        result = run("measure", *arguments)
        self.assertEqual(result.code, 3)
        self.assertIn(part, result.err)
        self.assertEqual(result.out, "")

    def test_bad_input(self):
        self.refused("did you mean `335 mm`", "head-circumference", "335 cm")
        self.refused("decimal weeks are ambiguous", *HEAD[1:3], "--gestation", "37.3")
        self.refused("did you mean `weight`", "wieght", "3kg")
        self.refused("has no unit", "weight", "3")

    def test_bad_input_as_json(self):
        result = run("measure", "head-circumference", "335 cm", "--format", "json")
        self.assertEqual(result.code, 3)
        self.assertEqual(result.json()["schema"], "asterism.measure/1")
        self.assertEqual(result.json()["diagnostics"][0]["code"], "implausible")

    def test_wrong_use(self):
        for arguments in (("weight",), (), ("weight", "3kg", "--norm", "olsen"), ("weight", "3kg", "--norm-table", "x")):
            self.assertEqual(run("measure", *arguments).code, 2, arguments)
        self.assertIn("did you mean `olsen-2010`", run("measure", "weight", "3kg", "--norm", "olsen").err)

    def test_a_table_that_is_no_table_or_of_no_norm(self):
        path = self.file("not,a,table\n1,2,3\n", "fenton.csv")
        result = run("measure", "weight", "3kg", "--norm-table", f"fenton-2013={path}")
        self.assertEqual(result.code, 3)
        self.assertIn("fenton-2013.csv:1:1", result.err)
        result = run("measure", "weight", "3kg", "--norm-table", f"fenton-2031={path}")
        self.assertEqual(result.code, 3)
        self.assertIn("no norm has a table called `fenton-2031.csv`", result.err)


if __name__ == "__main__":
    main()
