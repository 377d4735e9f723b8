# SPDX-License-Identifier: MIT
"""`--as-of`: the program judges by the book in force on a day."""
import json
import shutil
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

PROGRAM = str(Path(sys.argv.pop(1)).resolve())
PROJECT = Path(__file__).resolve().parents[2]
MARKS = ("-f", "earlobe creases", "-f", "nevus simplex", "--examined", "all", "--history", "none")


def run(*arguments):
    return subprocess.run([PROGRAM, *arguments], capture_output=True, text=True, cwd=PROJECT, timeout=120, check=False)


def judged(*arguments):
    done = run("assess", *MARKS, "--format", "json", *arguments)
    assert done.returncode == 0, done.stderr
    answer = json.loads(done.stdout)
    verdict = {r["service"]: r["verdict"] for r in answer["referrals"]}["genetics"]
    return answer["rulebook"]["version"], answer["rulebook"]["sha256"], verdict


def listed():
    """Version, day and digest of each release, from the text of the list itself."""
    lines = (PROJECT / "rules/newborn/releases/releases.yaml").read_text(encoding="utf-8").splitlines()
    return [dict(part.strip().split(": ") for part in line.strip(" -{}").split(",")) for line in lines if line.startswith("  - ")]


class AsOf(unittest.TestCase):
    def test_the_book_in_force_judges(self):
        first = listed()[0]
        self.assertEqual(judged("--as-of", "2026-12-01"), (first["version"], first["sha256"], "suggested"))
        self.assertEqual(judged("--as-of", "2027-02-28")[0], "0.1.0")
        version, _, verdict = judged("--as-of", "2027-03-01")
        self.assertEqual((version, verdict), ("0.2.0", "not-suggested"))

    def test_without_it_the_newest_book_judges(self):
        self.assertEqual(judged(), judged("--as-of", "2099-01-01"))

    def test_a_folder_has_its_own_releases(self):
        for folder in ("rules/newborn", "rules/newborn/"):
            self.assertEqual(judged("--rulebook", folder, "--as-of", "2026-12-01"), judged("--as-of", "2026-12-01"))
        self.assertEqual(judged("--rulebook", "rules/newborn/releases/0.1.0")[0], "0.1.0")

    def test_a_day_before_the_first_book_and_a_day_that_is_none(self):
        for day, code in (("2026-11-30", "no-book-in-force"), ("2027-02-29", "bad-date"), ("soon", "bad-date")):
            done = run("assess", *MARKS, "--as-of", day)
            self.assertEqual((done.returncode, done.stdout), (3, ""))
            self.assertIn(f"[{code}]", done.stderr)

    def test_a_touched_release_is_refused(self):
        with tempfile.TemporaryDirectory() as folder:
            book = Path(folder) / "book"
            shutil.copytree(PROJECT / "rules/newborn", book, ignore=shutil.ignore_patterns("vignettes"))
            touched = book / "releases/0.1.0/tallies.yaml"
            touched.write_text(touched.read_text(encoding="utf-8") + "\n", encoding="utf-8")
            done = run("assess", *MARKS, "--rulebook", str(book), "--as-of", "2026-12-01")
            self.assertEqual((done.returncode, done.stdout), (3, ""))
            self.assertIn("[release-changed]", done.stderr)
            self.assertEqual(run("assess", *MARKS, "--rulebook", str(book)).returncode, 0)


if __name__ == "__main__":
    unittest.main()
