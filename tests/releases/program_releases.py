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

    def test_without_it_no_release_is_read(self):
        """The log names how many files were read; in each case they are those of one book."""
        def count(folder, vignettes):
            names = [p.relative_to(PROJECT / folder).as_posix() for p in (PROJECT / folder).rglob("*.yaml")]
            return len([n for n in names if not n.startswith("releases/") and (vignettes or not n.startswith("vignettes/"))])
        of_one_book = f"rulebook: {count('rules/newborn', True)} files"
        log = run("assess", *MARKS, "--log", "info").stderr
        if "image: " in log:
            # The shipped book comes from its image: no file is read at all.
            self.assertNotIn(" files", log)
            self.assertNotIn("release", log)
        else:
            self.assertIn(of_one_book, log)
        self.assertIn(of_one_book, run("check", "--log", "info").stderr)
        log = run("assess", *MARKS, "--log", "info", "--rulebook", "rules/newborn").stderr
        self.assertIn(f"rulebook: {count('rules/newborn', True)} files", log)
        self.assertIn("version 0.1.0", run("assess", *MARKS, "--log", "info", "--as-of", "2026-12-24").stderr)

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


class Releasing(unittest.TestCase):
    """Releases are made in a copy of the small book of the tutorial."""

    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        shutil.copytree(PROJECT / "examples/tutorial/book", folder.name, dirs_exist_ok=True)
        self.rules, self.ontology = Path(folder.name) / "rules", str(Path(folder.name) / "ontology")

    def release(self, *more):
        return run("release", str(self.rules), "--ontology", self.ontology, *more)

    def edit(self, name, before, after):
        path = self.rules / name
        text = path.read_text(encoding="utf-8")
        self.assertEqual(text.count(before), 1)
        path.write_text(text.replace(before, after), encoding="utf-8")

    def raise_version(self):
        self.edit("book.yaml", "version: 1.0.0", "version: 1.1.0")
        self.edit("book.yaml", "effective: 2031-01-01", "effective: 2031-07-01")
        self.edit("CHANGELOG.md", "## 1.0.0", "## 1.1.0\n- More.\n\n## 1.0.0")

    def files(self):
        return {path.relative_to(self.rules).as_posix(): path.read_bytes() for path in self.rules.rglob("*") if path.is_file()}

    def test_a_release_freezes_every_file_but_the_vignettes(self):
        self.raise_version()
        done = self.release("--format", "json")
        self.assertEqual(done.returncode, 0, done.stderr)
        answer, files = json.loads(done.stdout), self.files()
        self.assertEqual((answer["schema"], answer["released"], answer["version"]), ("asterism.release/1", True, "1.1.0"))
        frozen = {name.removeprefix("releases/1.1.0/") for name in files if name.startswith("releases/1.1.0/")}
        self.assertEqual(frozen, {"book.yaml", "classes.yaml", "referrals.yaml", "CHANGELOG.md"})
        self.assertTrue(all(files[f"releases/1.1.0/{name}"] == files[name] for name in frozen))
        lines = files["releases/releases.yaml"].decode().splitlines()
        self.assertEqual(lines[-1], f"  - {{ version: 1.1.0, effective: 2031-07-01, sha256: {answer['sha256']} }}")
        self.assertEqual(len([line for line in lines if line.startswith("  - ")]), 2)

    def test_a_dry_run_writes_nothing(self):
        self.raise_version()
        before = self.files()
        self.assertEqual(self.release("--dry-run").returncode, 0)
        self.assertEqual(self.files(), before)

    def test_what_is_not_ready_is_not_released(self):
        for spoil, code in ((lambda: None, "already-released"),
                            (lambda: self.edit("classes.yaml", "One organ.", "One eye."), "already-released"),
                            (lambda: (self.raise_version(), self.edit("referrals.yaml", "at-least: 3", "at-least: 2")), "vignette-fails"),
                            (lambda: self.edit("CHANGELOG.md", "## 1.1.0", "## 1.1.1"), "missing-notes")):
            spoil()
            before, done = self.files(), self.release()
            self.assertEqual((done.returncode, done.stdout), (4, ""), code)
            self.assertIn(f"[{code}]", done.stderr)
            self.assertEqual(self.files(), before)

    def test_a_book_files_of_book_gets_its_first(self):
        shutil.rmtree(self.rules / "releases")
        self.assertEqual(self.release().returncode, 0)
        self.assertEqual(self.files()["releases/releases.yaml"].decode().count("version:"), 1)

    def test_a_list_without_a_last_line_end_is_not_spoilt(self):
        self.raise_version()
        path = self.rules / "releases/releases.yaml"
        path.write_text(path.read_text(encoding="utf-8").rstrip("\n"), encoding="utf-8")
        self.assertEqual(self.release().returncode, 0)
        listing = run("release", "--rulebook", str(self.rules), "--format", "json")
        self.assertEqual([v["version"] for v in json.loads(listing.stdout)["versions"]], ["1.0.0", "1.1.0"])

    def test_the_shipped_versions_are_listed(self):
        versions = json.loads(run("release", "--format", "json").stdout)["versions"]
        self.assertEqual([(v["version"], v["sha256"]) for v in versions if v["released"]], [(r["version"], r["sha256"]) for r in listed()])


if __name__ == "__main__":
    unittest.main()
