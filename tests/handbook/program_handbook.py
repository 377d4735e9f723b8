# SPDX-License-Identifier: MIT
"""The booklet of the shipped book: well-formed, self-contained, complete, readable in print."""
import re
import subprocess
import sys
import unittest
from pathlib import Path

PROGRAM = str(Path(sys.argv.pop(1)).resolve())
FOLDER = Path(sys.argv.pop(1)).resolve()
PROJECT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(PROJECT / "tests/formats"))
from browser import NAMES, pages_when_printed  # noqa: E402
from markup import Reader, colour_schemes, contrast  # noqa: E402


def run(*arguments):
    return subprocess.run([PROGRAM, "handbook", *arguments], capture_output=True, text=True, cwd=PROJECT, timeout=120, check=False)


def ids(pattern, *folders):
    """Ids as they stand in the YAML files: the booklet is compared with its source."""
    found = set()
    for folder in folders:
        for path in sorted((PROJECT / folder).rglob("*.yaml")):
            if "/releases/" not in path.as_posix() and "/vignettes/" not in path.as_posix():
                found |= set(re.findall(pattern, path.read_text(encoding="utf-8"), re.M))
    return found


INKS = ("ink", "soft", "red", "amber", "link")


class Page(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.text = run().stdout
        cls.page = Reader(cls.text)

    def test_it_is_well_formed_and_fetches_nothing(self):
        self.assertEqual(self.page.problems, [])
        tags = {tag for tag, _ in self.page.elements}
        self.assertFalse(tags & {"script", "link", "iframe", "object", "form"})
        self.assertFalse([v for v in self.page.values("src") if not v.startswith("data:")])
        self.assertTrue(all(v.startswith("#") for v in self.page.values("href")))
        policy = [attrs["content"] for attrs in self.page.all("meta") if attrs.get("http-equiv") == "Content-Security-Policy"]
        self.assertTrue(policy and "default-src 'none'" in policy[0])

    def test_every_id_is_there_once_and_every_link_leads_to_one(self):
        anchors = self.page.values("id")
        self.assertEqual(len(anchors), len(set(anchors)))
        self.assertEqual({v[1:] for v in self.page.values("href")} - set(anchors), set())
        self.assertEqual(set(self.page.values("aria-labelledby")) - set(anchors), set())

    def test_headings_never_skip_a_level(self):
        levels = [int(tag[1]) for tag, _ in self.page.elements if re.fullmatch("h[1-6]", tag)]
        self.assertEqual((levels[0], levels.count(1)), (1, 1))
        self.assertFalse([(a, b) for a, b in zip(levels, levels[1:]) if b > a + 1])

    def test_every_finding_rule_pattern_and_source_of_the_files_is_in_it(self):
        anchors = set(self.page.values("id"))
        for kind, found in (("finding", ids(r"^  - finding: (\S+)$", "ontology/findings")),
                            ("rule", ids(r"^  - rule: (\S+)$", "rules/newborn/referrals")),
                            ("constellation", ids(r"^  - constellation: (\S+)$", "rules/newborn/constellations")),
                            ("source", ids(r"^  - source: (\S+)$", "ontology"))):
            self.assertGreater(len(found), 50, kind)
            self.assertEqual({f"{kind}-{name}" for name in found} - anchors, set())

    def test_colours_can_be_read(self):
        schemes = colour_schemes(self.text)
        for scheme in schemes:
            # In print a link has the colour of the text around it.
            for ink in INKS[:-1] if scheme is schemes[-1] else INKS:
                self.assertGreaterEqual(contrast(scheme[ink], scheme["paper"]), 4.5, ink)

    def test_it_prints(self):
        import shutil
        if not any(shutil.which(name) for name in NAMES):
            self.skipTest("no Chromium on this machine")
        FOLDER.mkdir(parents=True, exist_ok=True)
        path = FOLDER / "handbook.html"
        path.write_text(self.text, encoding="utf-8")
        pages = pages_when_printed(path, FOLDER / "handbook.pdf")
        self.assertTrue(50 < pages < 260, pages)


class Versions(unittest.TestCase):
    def test_markdown_has_every_chapter(self):
        text = run("--format", "markdown").stdout
        chapters = re.findall(r"^## (.*)$", text, re.M)
        for chapter in ("Findings, head to toe", "Counting", "Constellations", "Rules, by service", "Sources", "Changes", "Index"):
            self.assertIn(chapter, chapters)
        self.assertEqual(re.findall(r".{30}(?<!\.)\.\.(?!\.).{10}", text), [])

    def test_an_earlier_book_has_its_own_changes(self):
        then, now = run("--as-of", "2026-12-24").stdout, run().stdout
        self.assertTrue("Rulebook newborn 0.1.0" in then)
        versions = lambda page: re.findall(r'id="version-([0-9.]+)"', page)
        self.assertEqual(versions(then), ["0.1.0"])
        self.assertEqual(versions(now)[-2:], ["0.2.0", "0.1.0"])

    def test_wrong_use(self):
        self.assertEqual(run("--format", "pdf").returncode, 2)
        self.assertEqual(run("--as-of", "2020-01-01").returncode, 3)

    def test_the_same_book_gives_the_same_bytes(self):
        self.assertTrue(run().stdout == run("--rulebook", "rules/newborn", "--ontology", "ontology").stdout)


if __name__ == "__main__":
    unittest.main()
