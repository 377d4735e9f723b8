# SPDX-License-Identifier: MIT
"""The SARIF log against what the standard requires of the parts used (OASIS SARIF 2.1.0, sections 3.13, 3.14, 3.19,
3.20, 3.27, 3.29, 3.30, 3.49, from memory): the published schema is not in Debian, so required keys, closed sets
of words and the bounds of regions are checked here."""
import json
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path
from urllib.parse import unquote

import broken
from broken import HERE, breaks, materialise

PROGRAM = broken.PROGRAM


def sarif(folder):
    done = broken.check(folder, "--format", "sarif")
    return done.returncode, json.loads(done.stdout)


class Log:
    def __init__(self, test, log):
        self.test, self.log = test, log

    def keys(self, part, required, optional=()):
        self.test.assertLessEqual(set(required), set(part))
        self.test.assertLessEqual(set(part), set(required) | set(optional))

    def check(self):
        self.keys(self.log, ["version", "runs"], ["$schema"])
        self.test.assertEqual(self.log["version"], "2.1.0")
        run, = self.log["runs"]
        self.keys(run, ["tool", "results", "columnKind", "invocations"])
        self.test.assertIn(run["columnKind"], ["utf16CodeUnits", "unicodeCodePoints"])
        driver = run["tool"]["driver"]
        self.keys(driver, ["name"], ["semanticVersion", "rules"])
        ids = [rule["id"] for rule in driver["rules"]]
        self.test.assertEqual(len(ids), len(set(ids)))
        for rule in driver["rules"]:
            self.keys(rule, ["id", "shortDescription", "fullDescription", "help"])
            for part in ("shortDescription", "fullDescription", "help"):
                self.test.assertTrue(rule[part]["text"])
        for result in run["results"]:
            self.result(result, ids)
        invocation, = run["invocations"]
        self.keys(invocation, ["executionSuccessful"], ["toolExecutionNotifications"])
        self.test.assertIs(type(invocation["executionSuccessful"]), bool)
        return run

    def result(self, result, ids):
        self.keys(result, ["message", "ruleId", "level", "partialFingerprints"], ["locations", "relatedLocations"])
        self.test.assertIn(result["level"], ["none", "note", "warning", "error"])
        self.test.assertIn(result["ruleId"], ids)
        self.test.assertTrue(result["message"]["text"])
        self.test.assertTrue(all(isinstance(v, str) for v in result["partialFingerprints"].values()))
        for location in result.get("locations", []) + result.get("relatedLocations", []):
            self.keys(location, ["physicalLocation"], ["message"])
            physical = location["physicalLocation"]
            self.keys(physical, ["artifactLocation", "region"])
            self.test.assertNotRegex(physical["artifactLocation"]["uri"], r"[ \\]")
            region = physical["region"]
            start, end = (region["startLine"], region["startColumn"]), (region["endLine"], region["endColumn"])
            self.test.assertGreaterEqual(min(start), 1)
            self.test.assertLessEqual(start, end)


class Sarif(unittest.TestCase):
    def test_a_clean_book(self):
        code, log = sarif(HERE / "base")
        run = Log(self, log).check()
        self.assertEqual((code, run["results"], run["invocations"]), (0, [], [{"executionSuccessful": True}]))

    def test_every_broken_book_gives_a_whole_log(self):
        for number, one in enumerate(breaks()):
            with self.subTest(number=number, code=one["code"]), tempfile.TemporaryDirectory() as folder:
                folder = Path(folder)
                name, line, column = materialise(one, folder)
                code, log = sarif(folder)
                run = Log(self, log).check()
                self.assertEqual(run["invocations"][0]["executionSuccessful"], code != 3)
                places = [(r["ruleId"], Path(unquote(p["artifactLocation"]["uri"])).relative_to(folder).as_posix(),
                           p["region"]["startLine"], p["region"]["startColumn"])
                          for r in run["results"] for p in [r["locations"][0]["physicalLocation"]] if r.get("locations")]
                self.assertIn((one["code"], name, line, column), places)

    def test_a_fingerprint_survives_a_moved_line(self):
        one = next(b for b in breaks() if b["code"] == "unknown-service")
        prints = []
        for lead in ("", "# a line more\n"):
            with tempfile.TemporaryDirectory() as folder:
                materialise(one, Path(folder))
                path = Path(folder) / "rules/book.yaml"
                path.write_text(lead + path.read_text(encoding="utf-8"), encoding="utf-8")
                done = subprocess.run([PROGRAM, "check", "rules", "--ontology", "ontology", "--format", "sarif"],
                                      cwd=folder, capture_output=True, check=False)
                prints.append([r["partialFingerprints"] for r in json.loads(done.stdout)["runs"][0]["results"]])
        self.assertEqual(*prints)


if __name__ == "__main__":
    unittest.main()
