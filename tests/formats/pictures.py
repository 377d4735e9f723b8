# SPDX-License-Identifier: MIT
"""Pictures of the pages at phone, desktop and print size, by a headless Chromium. They stay in the
build folder (tests/formats/pictures) to be looked at; here only what a machine can see is checked."""

import sys
import unittest
from pathlib import Path

from browser import (Program, as_printed, chromium, pages_when_printed, run_browser, screenshot,
                     without_policy, written_pages)
from png import Picture

SIZES = {"phone": (500, 1600), "desktop": (1280, 1600), "print": (794, 1123)}
PAPER = (255, 255, 255)

# Reads how wide the page wants to be; a page that is wider than its window scrolls sideways.
PROBE = """<script>addEventListener('load', () => {
  const root = document.documentElement;
  document.title = 'width ' + root.scrollWidth + ' of ' + root.clientWidth; });</script></head>"""


class Pictures(unittest.TestCase):
    pages: dict[str, Path]
    folder: Path

    def picture(self, name: str, size: str, dark: bool = False) -> Picture:
        page = self.pages[name]
        if size == "print":
            printed = self.folder / f"{name}-as-printed.html"
            printed.write_text(as_printed(page.read_text(encoding="utf-8")), encoding="utf-8")
            page = printed
        to = self.folder / f"{name}-{size}{'-dark' if dark else ''}.png"
        return Picture(screenshot(page, to, *SIZES[size], dark))

    def title_after_probe(self, name: str, text: str, width: int) -> str:
        probe = self.folder / f"{name}-probe.html"
        probe.write_text(text.replace("</head>", PROBE), encoding="utf-8")
        dom = run_browser([f"--window-size={width},1600", "--dump-dom", probe.as_uri()])
        return dom[dom.index("<title>") + 7:dom.index("</title>")]

    def test_every_page_has_ink_at_every_size(self):
        for name in self.pages:
            for size, (width, height) in SIZES.items():
                with self.subTest(f"{name} {size}"):
                    picture = self.picture(name, size)
                    self.assertEqual((picture.width, picture.height), (width, height))
                    inked = sum(not picture.is_blank_row(y) for y in range(height))
                    self.assertGreater(inked, height // 5)
                    self.assertEqual(picture.pixel(width - 2, 2), PAPER)

    def test_dark_is_dark(self):
        for name in ("assess-many", "worksheet"):
            picture = self.picture(name, "desktop", dark=True)
            self.assertLess(sum(picture.pixel(2, 2)), 150, name)

    def test_no_page_scrolls_sideways(self):
        for name, page in self.pages.items():
            for size in ("phone", "desktop"):
                with self.subTest(f"{name} {size}"):
                    text = without_policy(page.read_text(encoding="utf-8"))
                    title = self.title_after_probe(name, text, SIZES[size][0])
                    wants, has = map(int, title.replace("width ", "").split(" of "))
                    self.assertLessEqual(wants, has)

    def test_the_policy_lets_no_script_in(self):
        text = self.pages["assess-many"].read_text(encoding="utf-8")
        self.assertNotIn("width", self.title_after_probe("assess-many", text, 1280))

    def test_the_sheet_prints_on_one_page(self):
        pdf = self.folder / "worksheet.pdf"
        self.assertEqual(pages_when_printed(self.pages["worksheet"], pdf), 1)

    def test_an_answer_prints_on_few_pages(self):
        for name in ("assess-quiet", "assess-first-light", "assess-many"):
            pages = pages_when_printed(self.pages[name], self.folder / f"{name}.pdf")
            self.assertLessEqual(pages, 8, name)


if __name__ == "__main__":
    chromium()
    Pictures.folder = Path(sys.argv[2]).resolve() / "pictures"
    Pictures.pages = written_pages(Program(sys.argv[1]), Pictures.folder)
    unittest.main(argv=sys.argv[:1])
