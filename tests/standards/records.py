# SPDX-License-Identifier: MIT
"""assess --input: phenopackets and FHIR Bundles, with and without HPO; bad records."""
import gzip
import json
import tempfile
import time
from pathlib import Path

from support import BABIES, FULL, HPO, PACKET, PROGRAM, ProgramTest, data, instrumented, main, run


class Phenopackets(ProgramTest):
    def test_the_report_says_how_each_term_was_mapped(self):
        result = run("assess", "--input", "phenopacket", self.file(PACKET, "p.json"),
                     "--hpo", self.file(HPO, "hp.obo"))
        self.assertEqual(result.code, 0, result.err)
        self.assertIn("HPO 2024-08-13", result.out)
        self.assertIn("HP:0002373 (Febrile seizure): a kind of seizures (HP:0001250)", result.out)
        self.assertIn("ophthalmology (same day)", result.out)
        self.assertIn("not read: diseases (never read", result.out)
        self.assertNotIn("an answer", result.out + result.err)

    def test_without_hpo_the_kind_is_listed_as_not_mapped(self):
        result = run("assess", "--input", "phenopacket", self.file(PACKET, "p.json"))
        self.assertIn("no HPO file was given", result.out)
        self.assertRegex(result.out, r"not mapped \(1\), and so not judged:\n +observed HP:0002373")

    def test_json_has_everything_under_import(self):
        answer = self.assess("--input", "phenopacket", self.file(PACKET, "p.json"),
                             "--hpo", self.file(HPO, "hp.obo"))
        report = answer["import"]
        self.assertEqual(report["format"], "phenopacket")
        self.assertEqual(report["hpo"]["file"], "2024-08-13")
        self.assertEqual(report["counts"]["exact"], 3)
        self.assertEqual(report["counts"]["by-ancestor"], 1)
        self.assertEqual([t["mapping"] for t in report["terms"]], ["exact", "exact", "by-ancestor", "exact"])
        self.assertEqual(report["terms"][2]["via"], "HP:0001250")
        self.assertTrue(report["terms"][0]["place"].endswith("p.json:3:41"))
        self.assertEqual(answer["case"], "p1")
        self.assertIn("white-pupil", self.evidence(answer, "ophthalmology"))
        self.assertNotIn("OMIM", json.dumps(answer))

    def test_the_same_packet_with_another_disease_gives_the_same_answer(self):
        other = PACKET.replace("OMIM:180200", "OMIM:1").replace("an answer", "another")
        hpo, path = self.file(HPO, "hp.obo"), Path(self.file("", "p.json"))
        answers = []
        for text in (PACKET, other, PACKET.replace('"diseases"', '"interpretations"')):
            path.write_text(text, encoding="utf-8")
            answer = self.assess("--input", "phenopacket", str(path), "--hpo", hpo)
            answer.pop("import")
            answers.append(answer)
        self.assertEqual(answers[0], answers[1])
        self.assertEqual(answers[0], answers[2])

    def test_gzip_and_json_forms_of_hpo(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        path = Path(folder.name) / "hp.obo.gz"
        path.write_bytes(gzip.compress(HPO.encode()))
        result = run("assess", "--input", "phenopacket", self.file(PACKET, "p.json"), "--hpo", str(path))
        self.assertIn("1 by-ancestor", result.out)

    def test_json_lines_and_a_folder(self):
        line = json.dumps(json.loads(PACKET))
        result = run("assess", "--input", "phenopacket", "--format", "json",
                     self.file(line + "\n" + line.replace("p1", "p2") + "\n", "p.jsonl"))
        answers = [json.loads(text) for text in result.out.splitlines()]
        self.assertEqual([a["case"] for a in answers], ["p1", "p2"])
        folder = Path(self.file(PACKET, "b.json")).parent
        (folder / "a.json").write_text(PACKET.replace("p1", "p0"))
        result = run("assess", "--input", "phenopacket", "--format", "json", str(folder))
        self.assertEqual([json.loads(t)["case"] for t in result.out.splitlines()], ["p0", "p1"])

    def test_a_bad_record_leaves_the_others_theirs(self):
        folder = Path(self.file(PACKET, "a.json")).parent
        (folder / "b.json").write_text(PACKET.replace('"id": "p1", ', ""))
        result = run("assess", "--input", "phenopacket", str(folder))
        self.assertEqual(result.code, 3)
        self.assertIn("== p1", result.out)
        self.assertIn("b.json:1:1: error: a phenopacket needs an `id`", result.err)
        self.assertIn("red flag: white pupil", result.out)

    def test_every_packet_of_the_collection_reads(self):
        packets, hpo = data("phenopackets"), data("hpo/hp-2024-08-13.json.gz")
        if not packets:
            self.skipTest("ASTERISM_DATA is not set")
        files = sorted(packets.rglob("*.json"))
        self.assertEqual(len(files), 380)
        if instrumented(PROGRAM):  # one in ten: each answer takes ten times as long
            files = files[::10]
        result = run("assess", "--input", "phenopacket", *map(str, files), "--hpo", str(hpo), "--format", "json")
        self.assertEqual(result.code, 0, result.err[-2000:])
        answers = [json.loads(text) for text in result.out.splitlines()]
        self.assertEqual(len(answers), len(files))
        for answer in answers:
            self.assertEqual(sum(answer["import"]["counts"].values()), len(answer["import"]["terms"]))


class BadRecords(ProgramTest):
    def test_usage(self):
        for arguments, words in (
                (["--input", "phenopackt", "x.json"], "did you mean `phenopacket`"),
                (["--input", "phenopacket"], "no file"),
                (["--hpo", "x", "-f", "white pupil"], "--input"),
                (["--input", "fhir", "x.json", "--format", "fihr"], "did you mean `fhir`")):
            result = run("assess", *arguments)
            self.assertEqual(result.code, 2, arguments)
            self.assertIn(words, result.err)

    def test_hpo_that_is_none(self):
        packet = self.file(PACKET, "p.json")
        for name, content, words in (
                ("hp.obo", "case: x\n", "neither OBO Graphs JSON nor OBO text"),
                ("hp.json", '{"graphs": [{"nodes": 5}]}', "not an OBO Graphs file"),
                ("hp.gz", b"\x1f\x8b nonsense", "gzip data are damaged"),
                ("hp.obo", HPO + "is_a: HP:0002373\n", "leads back to `HP:0002373`")):
            result = run("assess", "--input", "phenopacket", packet, "--hpo", self.file(content, name))
            self.assertEqual(result.code, 3, name)
            self.assertIn(words, result.err)
            self.assertRegex(result.err, rf"{name}:\d+:\d+: error:")
        result = run("assess", "--input", "phenopacket", packet, "--hpo", "no-such-file")
        self.assertEqual(result.code, 3)
        self.assertIn("no-such-file", result.err)

    def test_a_hundred_megabytes(self):
        huge = '{"id": "p", "phenotypicFeatures": [' + " " * (100 << 20) + "]}"
        path = self.file(huge, "huge.json")
        started = time.monotonic()
        result = run("assess", "--input", "phenopacket", path)
        self.assertEqual(result.code, 3)
        self.assertRegex(result.err, r"huge\.json:\d+:\d+: error: .* more than the 16777216 that are read")
        self.assertLess(time.monotonic() - started, 30)

    def test_deep_nesting_and_nonsense(self):
        for text in ('{"id": ' + "[" * 100000, "\x00", "\xff", "[1, 2", '"p"', "{}", "null"):
            for kind in ("phenopacket", "fhir"):
                result = run("assess", "--input", kind, self.file(text.encode("latin-1"), "x.json"))
                self.assertEqual(result.code, 3, (kind, text[:20], result.err))
                self.assertRegex(result.err, r"x\.json:\d+:\d+: error:")

    def test_a_label_cannot_drive_the_terminal(self):
        text = PACKET.replace("Febrile seizure", "\\u001b[31mred\\u202e")
        result = run("assess", "--input", "phenopacket", self.file(text, "p.json"))
        self.assertNotIn("\x1b", result.out + result.err)
        self.assertIn("\\x1b[31mred", result.out)


class Fhir(ProgramTest):
    def test_what_is_written_reads_back_as_the_same_findings(self):
        for name, text in BABIES.items():
            path = self.file(text)
            bundle = run("assess", path, "--format", "fhir")
            self.assertEqual(bundle.code, 0, bundle.err)
            back = self.assess("--input", "fhir", self.file(bundle.out, "b.json"))
            said = lambda answer: {(f["finding"], f["state"]) for f in answer["findings"]  # noqa: E731
                                   if f.get("how") == "stated"}
            self.assertEqual(said(back), said(self.assess(path)), name)

    def test_drafts_only_and_no_diagnosis(self):
        for name, text in BABIES.items():
            path = self.file(text)
            bundle = run("assess", path, "--format", "fhir").json()
            resources = [entry["resource"] for entry in bundle["entry"]]
            kinds = {resource["resourceType"] for resource in resources}
            self.assertLessEqual(kinds, {"Patient", "Observation", "ServiceRequest", "ClinicalImpression"})
            answer = self.assess(path)
            suggested = [r for r in answer["referrals"] if r["verdict"] == "suggested"]
            requests = [r for r in resources if r["resourceType"] == "ServiceRequest"]
            self.assertEqual(len(requests), len(suggested), name)
            for request in requests:
                self.assertEqual((request["status"], request["intent"]), ("draft", "proposal"))
                self.assertTrue(any("not a diagnosis" in note["text"] for note in request["note"]))
            text = json.dumps(bundle)
            cards = run("assess", path, "--format", "cds-hooks").out
            for constellation in answer["constellations"]:
                self.assertNotIn(constellation["label"], text)
                self.assertNotIn(constellation["label"], cards)
            self.assertNotIn("prognosis", text)

    def test_priority_follows_urgency(self):
        words = {"emergency": "stat", "same-day": "asap", "urgent": "urgent", "routine": "routine"}
        path = self.file(BABIES["majors"])
        requests = {e["resource"]["performerType"]["text"]: e["resource"]["priority"]
                    for e in run("assess", path, "--format", "fhir").json()["entry"]
                    if e["resource"]["resourceType"] == "ServiceRequest"}
        for referral in self.assess(path)["referrals"]:
            if referral["verdict"] == "suggested":
                self.assertEqual(requests[referral["label"]], words[referral["urgency"]])

    def test_the_same_bytes_twice(self):
        path = self.file(FULL)
        self.assertEqual(run("assess", path, "--format", "fhir").out, run("assess", path, "--format", "fhir").out)


class Cards(ProgramTest):
    """The card table of CDS Hooks: required members, lengths and words."""

    def test_cards(self):
        for name, text in BABIES.items():
            path = self.file(text)
            cards = run("assess", path, "--format", "cds-hooks").json()["cards"]
            self.assertTrue(cards, name)
            for card in cards:
                self.assertLess(len(card["summary"]), 140)
                self.assertIn(card["indicator"], ("info", "warning", "critical"))
                self.assertTrue(card["source"]["label"])
                self.assertIn("not a diagnosis", card["detail"])
                self.assertNotRegex(card["detail"], r"<(?!br)")
                self.assertEqual("suggestions" in card, "selectionBehavior" in card)
                for suggestion in card.get("suggestions", []):
                    self.assertTrue(suggestion["label"])
                    for action in suggestion["actions"]:
                        self.assertIn(action["type"], ("create", "update", "delete"))
                        self.assertTrue(action["description"])
                        self.assertEqual(action["resource"]["intent"], "proposal")
            answer = self.assess(path)
            suggested = sum(r["verdict"] == "suggested" for r in answer["referrals"])
            self.assertEqual(sum(len(c.get("suggestions", [])) for c in cards), suggested)

    def test_what_cannot_wait_is_critical_and_first(self):
        cards = run("assess", self.file(BABIES["emergency"]), "--format", "cds-hooks").json()["cards"]
        self.assertEqual(cards[0]["indicator"], "critical")

    def test_nothing_suggested_is_no_comfort(self):
        cards = run("assess", self.file(BABIES["nothing"]), "--format", "cds-hooks").json()["cards"]
        self.assertEqual([c["indicator"] for c in cards], ["info"])


if __name__ == "__main__":
    main()
