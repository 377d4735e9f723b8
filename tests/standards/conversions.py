# SPDX-License-Identifier: MIT
"""convert: round trips lose nothing that both sides can say, and say what one side cannot; the tables of
readers and writers make help and completion."""
import json
import subprocess
from pathlib import Path

from support import BABIES, FULL, HPO, PACKET, ProgramTest, data, main, run

OWN = ("yaml", "json", "jsonl", "csv")
CREATED = ("--created", "2031-04-03T00:00:00Z")


class RoundTrips(ProgramTest):
    def convert(self, text, come, go, *more):
        result = run("convert", self.file(text, f"case.{come}" if come in OWN else "case.json"),
                     "--from", come, "--to", go, *CREATED, *more)
        self.assertEqual(result.code, 0, result.err)
        return result

    def test_our_own_formats_lose_nothing(self):
        for name, text in BABIES.items():
            first = self.convert(text, "yaml", "json").out
            for path in (OWN, OWN[::-1]):
                here, come = first, "json"
                for step in (*path, "json"):
                    result = self.convert(here, come, step)
                    self.assertEqual(result.err, "", (name, path))
                    here, come = result.out, step
                self.assertEqual(here, first, (name, path))

    def test_the_answer_is_the_same_whatever_the_format(self):
        path = self.file(FULL)
        expected = self.assess(path)
        for form in ("yaml", "json", "csv"):
            copy = self.file(self.convert(FULL, "yaml", form).out, f"copy.{form}")
            answer = self.assess(copy) if form != "csv" else self.assess("--input", "csv", copy)
            for referral, other in zip(expected["referrals"], answer["referrals"], strict=True):
                self.assertEqual((referral["verdict"], referral["urgency"]), (other["verdict"], other["urgency"]))
            self.assertEqual(answer["measures"], expected["measures"])

    def test_through_a_phenopacket_all_is_kept_or_listed(self):
        there = self.convert(FULL, "yaml", "phenopacket")
        back = self.convert(there.out, "phenopacket", "json")
        kept, first = json.loads(back.out), json.loads(self.convert(FULL, "yaml", "json").out)
        for key in ("case", "sex", "gestation", "age", "born", "absent", "history"):
            self.assertEqual(kept[key], first[key], key)
        self.assertEqual(kept["findings"],
                         ["low-set-ears", {"finding": "single-transverse-palmar-crease", "side": "right"},
                          "epicanthal-folds", "white-pupil"])
        self.assertEqual(kept["measures"], {"head-circumference": "31.0 cm", "length": "47 cm", "weight": "2610 g"})
        for loss in ("examined-on", "familial of present `epicanthal-folds`", "examined (", "decisions",
                     "unsure `smooth-philtrum`", "measure `foot-length`"):
            self.assertIn(loss, there.err)

    def test_a_phenopacket_of_ours_is_stable(self):
        for name in ("full", "majors", "normal"):
            once = self.convert(BABIES[name], "yaml", "phenopacket").out
            case = self.convert(once, "phenopacket", "json").out
            twice = json.loads(self.convert(case, "json", "phenopacket").out)
            once = json.loads(once)
            once["metaData"].pop("created"), twice["metaData"].pop("created")
            self.assertEqual(once, twice)

    def test_every_finding_that_a_packet_can_say_comes_back(self):
        hpo = data("hpo/hp-2024-08-13.json.gz")
        more = ["--hpo", str(hpo)] if hpo else []
        names = []
        for path in sorted(Path("ontology/findings").glob("*.yaml")):
            for line in path.read_text(encoding="utf-8").splitlines():
                if line.startswith("  - finding: "):
                    names.append(line.split(": ")[1].strip())
        self.assertGreater(len(names), 300)
        lines = "".join(json.dumps({"case": name, key: [name]}) + "\n" for key in ("findings", "absent") for name in names)
        report = Path(self.file("", "r.json"))
        packets = self.convert(lines, "jsonl", "phenopacket", "--report", str(report), *more)
        lost = {loss["case"] for loss in json.loads(report.read_text())["not_said"] if loss["what"].startswith("present")}
        lost_absent = {loss["case"] for loss in json.loads(report.read_text())["not_said"] if loss["what"].startswith("absent")}
        back = self.convert(packets.out, "phenopacket", "jsonl", *more).out.splitlines()
        self.assertEqual(len(back), 2 * len(names))
        for name, line in zip(names, back, strict=False):
            case = json.loads(line)
            present = case.get("findings", []) + case.get("history", [])
            if name not in lost:
                self.assertEqual(present, [name])
        for name, line in zip(names, back[len(names):], strict=True):
            self.assertEqual(json.loads(line).get("absent", []), [] if name in lost_absent else [name])
        print(f"a packet says {len(names) - len(lost)} of {len(names)} findings present "
              f"and {len(names) - len(lost_absent)} absent; the rest is listed")

    def test_the_report_as_json(self):
        report = Path(self.file("", "r.json"))
        self.convert(PACKET, "phenopacket", "csv", "--hpo", self.file(HPO, "hp.obo"), "--report", str(report))
        document = json.loads(report.read_text())
        self.assertEqual(document["schema"], "asterism.convert/1")
        self.assertEqual(document["read"][0]["counts"]["by-ancestor"], 1)
        self.assertEqual(document["read"][0]["left_out"][0]["what"], "diseases")
        self.assertEqual(document["cases"], 1)

    def test_no_disease_is_ever_written(self):
        for name, text in BABIES.items():
            packet = json.loads(self.convert(text, "yaml", "phenopacket").out)
            self.assertFalse({"diseases", "interpretations", "medicalActions"} & packet.keys(), name)


class Refusals(ProgramTest):
    def test_usage(self):
        path = self.file(FULL)
        for arguments, words in (
                ([path], "no --to"), ([path, "--to", "yml"], "did you mean `yaml`"),
                (["--to", "json"], "no files"), ([path, "--to", "json", "--from", "cvs"], "did you mean `csv`"),
                ([self.file("x", "x.txt"), "--to", "json"], "cannot tell the format"),
                ([path, path, "--to", "yaml"], "holds one case")):
            result = run("convert", *arguments)
            self.assertEqual((result.code, result.out), (2, ""), arguments)
            self.assertIn(words, result.err)

    def test_a_wrong_case_is_not_converted(self):
        result = run("convert", self.file("findings: [white pupl]\n"), "--to", "json")
        self.assertEqual((result.code, result.out), (3, ""))
        self.assertIn("case.yaml:1:12: error", result.err)


class Tables(ProgramTest):
    def test_help_lists_every_format(self):
        text = run("convert", "--help").out
        for name in (*OWN, "phenopacket", "fhir"):
            self.assertRegex(text, rf"(?m)^    {name} ")
        text = run("assess", "--help").out
        self.assertIn("phenopacket, fhir", " ".join(text.split()))
        self.assertIn("cds-hooks", text)

    def complete(self, *words):
        script = f"""source <({Path(PROGRAM).resolve()} completion bash)
COMP_WORDS=({' '.join(words)}); COMP_WORDS[0]={Path(PROGRAM).resolve()}; COMP_CWORD={len(words) - 1}
_asterism; echo "${{COMPREPLY[@]}}" """
        return subprocess.run(["bash", "-c", script.replace('""', "''")], capture_output=True, text=True,
                              check=True).stdout.split()

    def test_completion(self):
        self.assertEqual(self.complete("asterism", "conv"), ["convert"])
        self.assertEqual(self.complete("asterism", "convert", "--to", "phen"), ["phenopacket"])
        self.assertEqual(self.complete("asterism", "assess", "--format", "cds"), ["cds-hooks"])
        self.assertEqual(self.complete("asterism", "assess", "--input", "f"), ["fhir"])
        self.assertIn("--gestation", self.complete("asterism", "assess", "--ges"))
        result = run("completion", "tcsh")
        self.assertEqual(result.code, 2)


if __name__ == "__main__":
    from program import PROGRAM
    main()
