# SPDX-License-Identifier: MIT
"""The booklet and the comparison as pages: judged by tidy, and by axe-core in a headless Chromium, light and dark.

What is not on the machine is said to be skipped; tests/npm/check.sh installs axe-core.
"""
import shutil
import subprocess
import sys
import unittest
from pathlib import Path

PROGRAM = str(Path(sys.argv.pop(1)).resolve())
FOLDER = Path(sys.argv.pop(1)).resolve()
PROJECT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(PROJECT / "tests/formats"))
from accessibility import AXE, FEWEST_RULES, results_of  # noqa: E402
from browser import NAMES, screenshot  # noqa: E402

PRACTICE = ["--rulebook", "examples/tutorial/book/rules", "--ontology", "examples/tutorial/book/ontology"]
PAGES = {
    "handbook-practice": ["handbook", *PRACTICE],
    "handbook-shipped": ["handbook"],
    "compare-shipped": ["compare", "0.1.0", "0.2.0", "--babies", "500", "--format", "html"],
    "compare-invented": ["compare", "tests/compare/books/before", "tests/compare/books/after", "--ontology",
                         "tests/cli/small/ontology", "--format", "html"],
}
BROWSER = any(shutil.which(name) for name in NAMES)


def written(name):
    FOLDER.mkdir(parents=True, exist_ok=True)
    done = subprocess.run([PROGRAM, *PAGES[name]], capture_output=True, text=True, encoding="utf-8", cwd=PROJECT,
                          timeout=120, check=False)
    assert done.returncode in (0, 4), done.stderr
    path = FOLDER / f"{name}.html"
    path.write_text(done.stdout, encoding="utf-8")
    return path


class Pages(unittest.TestCase):
    @unittest.skipUnless(shutil.which("tidy"), "no tidy on this machine (Debian: tidy)")
    def test_tidy_finds_nothing(self):
        for name in PAGES:
            with self.subTest(name):
                done = subprocess.run(["tidy", "-e", "-q", str(written(name))], capture_output=True, text=True, check=False)
                self.assertEqual((done.returncode, done.stderr[:1000]), (0, ""))

    @unittest.skipUnless(BROWSER and (PROJECT / AXE).exists(), "no Chromium or no axe-core on this machine")
    def test_axe_finds_nothing(self):
        for name in PAGES:
            for dark in (False, True):
                with self.subTest(name, dark=dark):
                    results = results_of(written(name), FOLDER, dark)
                    self.assertEqual(results["violations"], [])
                    self.assertGreaterEqual(results["checked"], FEWEST_RULES)

    @unittest.skipUnless(BROWSER, "no Chromium on this machine")
    def test_a_narrow_screen_shows_them(self):
        for name in ("handbook-practice", "compare-invented"):
            with self.subTest(name):
                picture = screenshot(written(name), FOLDER / f"{name}.png", 360, 900)
                self.assertGreater(picture.stat().st_size, 10_000)


if __name__ == "__main__":
    unittest.main()
