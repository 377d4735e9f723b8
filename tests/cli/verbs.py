# SPDX-License-Identifier: MIT
"""Each verb once through, and what programs may rely on."""
from program import ProgramTest, main, run


class Help(ProgramTest):
    def test_every_verb_has_help_with_examples_first(self):
        overview = run("--help")
        self.assertEqual(overview.code, 0)
        verbs = [line.split()[0] for line in overview.out.split("Verbs", 1)[1].splitlines()[1:] if line.startswith("  ")]
        self.assertLessEqual({"assess", "lookup", "worksheet", "check"}, set(verbs))
        for verb in verbs:
            for flag in ("--help", "-h"):
                result = run(verb, flag)
                self.assertEqual(result.code, 0, verb)
                self.assertTrue(result.out.startswith("Examples"), verb)

    def test_version_prints_digests(self):
        result = run("--version")
        self.assertEqual(result.code, 0)
        self.assertRegex(result.out, r"rulebook newborn \S+ sha256 [0-9a-f]{64}\nontology \S+ \S+ sha256 [0-9a-f]{64}")


class AssessDocument(ProgramTest):
    def test_the_keys_of_the_contract(self):
        a = self.assess("-f", "low-set ears")
        self.assertEqual(a["schema"], "asterism.assessment/1")
        self.assertLessEqual({"engine", "rulebook", "ontology", "case", "urgency", "referrals", "measures", "set_aside", "tallies", "constellations",
                              "findings", "not_examined", "first_steps", "follow_up", "cautions"}, set(a))
        self.assertLessEqual({"service", "verdict", "if_rest_normal", "urgency", "reasons", "may_rise_to", "settled_by", "what_would_change"},
                             set(a["referrals"][0]))
        self.assertEqual([r["service"] for r in a["referrals"]],
                         ["senior", "genetics", "ophthalmology", "ent", "cardiology", "surgery", "urology", "orthopaedics", "neurosurgery", "plastics",
                          "neurology", "endocrinology", "audiology", "dermatology"])

    def test_the_same_input_gives_the_same_bytes(self):
        arguments = ("assess", "examples/first-light/case.yaml", "--format", "json")
        self.assertEqual(run(*arguments).out, run(*arguments).out)

    def test_a_file_json_and_flags_agree(self):
        flags = self.assess("-f", "low-set ears; right", "--sex", "female", "--gestation", "38w4d", "--examined", "all")
        text = "sex: female\ngestation: 38w4d\nexamined: all\nfindings: [{ finding: low-set ears, side: right }]\n"
        yaml = self.assess(self.file(text))
        json = self.assess("-", stdin='{"sex": "female", "gestation": "38w4d", "examined": "all", "findings": [{"finding": "low-set ears", "side": "right"}]}')
        self.assertEqual(flags["referrals"], yaml["referrals"])
        self.assertEqual(json["referrals"], yaml["referrals"])

    def test_every_text_carries_the_caution_and_no_diagnosis(self):
        text = run("assess", "examples/first-light/case.yaml").out
        self.assertIn("Nothing here is a diagnosis", " ".join(text.split()))

    def test_nothing_is_written_to_stderr_when_all_is_well(self):
        self.assertEqual(run("assess", "examples/first-light/case.yaml").err, "")

    def test_why_shows_a_rule_that_did_not_fire(self):
        result = run("assess", "-f", "low-set ears", "--examined", "all", "--why", "pupil-not-red")
        self.assertEqual(result.code, 0)
        self.assertIn("no", result.out)
        document = run("assess", "-f", "low-set ears", "--why", "three-independent-minor-variants", "--format", "json").json()
        self.assertEqual(document["conditions"][0]["value"], "unknown")
        self.assertTrue(document["conditions"][0]["place"].startswith("rules/newborn/referrals/counting.yaml:"))


class Lookup(ProgramTest):
    def test_by_label_synonym_and_hpo_id(self):
        by_label = run("lookup", "low-set", "ears", "--format", "json").json()
        by_hpo = run("lookup", "HP:0000369", "--format", "json").json()
        self.assertEqual(by_label["findings"][0]["finding"], "low-set-ears")
        self.assertIn("low-set-ears", [f["finding"] for f in by_hpo["findings"]])
        self.assertEqual(by_label["findings"][0]["class"], "minor-variant")
        self.assertIn("recognise", run("lookup", "LOW SET EARS").out)

    def test_unknown_names_exit_3(self):
        result = run("lookup", "palmer", "crease")
        self.assertEqual(result.code, 3)
        self.assertIn("did you mean", result.err)


class Worksheet(ProgramTest):
    def test_it_reads_back_in_as_a_case(self):
        sheet = run("worksheet").out
        self.assertIn("red-reflex", sheet)
        a = self.assess(self.file(sheet))
        self.assertIsNone(a["urgency"])
        filled = sheet.replace("  # - red-reflex\n", "  - red-reflex\n").replace("findings: []", "findings: [white pupil]")
        self.assertEqual(self.verdict(self.assess(self.file(filled)), "ophthalmology"), "suggested")


class Check(ProgramTest):
    def test_the_built_in_book_is_clean(self):
        result = run("check", "--format", "json")
        self.assertEqual(result.code, 0, result.err)
        counts = result.json()["counts"]
        self.assertEqual(set(counts), {"findings", "steps", "classes", "rules", "constellations", "vignettes", "sources"})
        self.assertGreaterEqual(counts["findings"], 450)
        self.assertGreaterEqual(counts["constellations"], 40)
        self.assertGreaterEqual(counts["vignettes"], 400)

    def test_the_files_on_disk_are_the_built_in_book(self):
        result = run("check", "rules/newborn", "--ontology", "ontology")
        self.assertEqual(result.code, 0, result.err)

    def test_a_broken_book_is_told_at_its_place(self):
        path = self.file("rulebook: { id: x, title: x, version: 1.0.0, effective: 2026-01-01, language: 2, ontology: y }\nrules: []\n", "book.yaml")
        result = run("check", path.rsplit("/", 1)[0])
        self.assertEqual(result.code, 3)
        self.assertIn("book.yaml:1:", result.err)


if __name__ == "__main__":
    main()
