# SPDX-License-Identifier: MIT
"""The HTML pages as markup: well-formed, self-contained, inert, with structure and contrast."""

import re
import shutil
import subprocess
import sys
import unittest
from pathlib import Path

from browser import Program, written_pages
from markup import Reader, colour_schemes, contrast

FORBIDDEN = ("script", "link", "iframe", "object", "base", "form")
HOSTILE = ["<script>alert(1)</script>", "\"><svg onload=alert(1)>", "'><!--", "a\u202eb\u2066c",
           "*b* [l](http://x)"]


class Pages(unittest.TestCase):
    program: Program
    files: dict[str, Path]

    def each(self, check) -> None:
        for name, file in self.files.items():
            with self.subTest(name):
                text = file.read_text(encoding="utf-8")
                check(text, Reader(text))

    def test_well_formed(self):
        def check(text, page):
            self.assertTrue(text.startswith("<!DOCTYPE html>\n<html lang=\"en-GB\">"))
            self.assertEqual(page.problems, [])

        self.each(check)

    def test_self_contained(self):
        def check(text, page):
            self.assertEqual([tag for tag, _ in page.elements if tag in FORBIDDEN], [])
            for _, attrs in page.elements:
                self.assertEqual([n for n in attrs if n.startswith("on")], [])
                self.assertFalse({"href", "style", "action", "srcset"} & attrs.keys())
            for source in page.values("src"):
                self.assertTrue(source.startswith("data:image/svg+xml;base64,"))
            self.assertNotRegex(text, r"@import|url\((?!#)")
            policies = [m["content"] for m in page.all("meta")
                        if m.get("http-equiv") == "Content-Security-Policy"]
            self.assertEqual(len(policies), 1)
            self.assertIn("default-src 'none'", policies[0])
            self.assertNotIn("script-src", policies[0])

        self.each(check)

    def test_structure(self):
        def check(_, page):
            levels = [int(tag[1]) for tag, _ in page.elements if re.fullmatch("h[1-6]", tag)]
            self.assertEqual(levels.count(1), 1)
            self.assertEqual(levels[0], 1)
            for above, below in zip(levels, levels[1:]):
                self.assertLessEqual(below, above + 1)
            for landmark in ("header", "main", "footer", "title"):
                self.assertEqual(len(page.all(landmark)), 1, landmark)
            self.assertTrue(all("scope" in th for th in page.all("th")))
            self.assertTrue(all(img.get("alt") for img in page.all("img")))
            for svg in page.all("svg"):
                self.assertEqual(svg.get("role"), "img")
                self.assertTrue(svg.get("aria-label"))

        self.each(check)

    def test_ids_are_unique_and_meant(self):
        def check(_, page):
            ids = page.values("id")
            self.assertEqual(len(ids), len(set(ids)))
            self.assertLessEqual(set(page.values("aria-labelledby")), set(ids))

        self.each(check)

    def test_contrast_of_text(self):
        def check(text, _):
            schemes = colour_schemes(text)
            self.assertEqual(len(schemes), 3)
            for colours in schemes:
                for ink in {"ink", "soft", "red", "amber"} & colours.keys():
                    self.assertGreaterEqual(contrast(colours[ink], colours["paper"]), 4.5, ink)
                for ground in {"panel", "amber-ground", "mark"} & colours.keys():
                    self.assertGreaterEqual(contrast(colours["ink"], colours[ground]), 4.5, ground)
                    self.assertGreaterEqual(contrast(colours["soft"], colours[ground]), 4.5, ground)

        self.each(check)

    def test_safety_line_and_provenance(self):
        def check(_, page):
            words = " ".join(page.texts)
            self.assertIn("Nothing here is a diagnosis.", words)
            self.assertRegex(words, r"ontology (newborn-examination )?\d+\.\d+\.\d+")

        self.each(check)

    def test_hostile_words_stay_words(self):
        for word in HOSTILE:
            with self.subTest(word):
                text = self.program("assess", "--case", word, "--finding", "white pupil",
                                    "--format", "html")
                page = Reader(text)
                self.assertEqual(page.problems, [])
                self.assertEqual(page.all("script"), [])
                self.assertEqual(len(page.all("svg")), 1)
                self.assertNotRegex(text, "[\u202a-\u202e\u2066-\u2069\x1b]")
                shown = word.replace("\u202e", "\\u202e").replace("\u2066", "\\u2066")
                self.assertIn(shown, page.texts)

    def test_tidy_agrees(self):
        if not shutil.which("tidy"):
            print("note: tidy is not installed; only Python's own parser read the pages")
            return
        for name, file in self.files.items():
            with self.subTest(name):
                done = subprocess.run(
                    ["tidy", "-errors", "-quiet", "--drop-empty-elements", "no", str(file)],
                    capture_output=True, text=True, check=False)
                self.assertEqual(done.stderr, "")


if __name__ == "__main__":
    Pages.program = Program(sys.argv[1])
    Pages.files = written_pages(Pages.program, Path(sys.argv[2]) / "pages")
    unittest.main(argv=sys.argv[:1])
