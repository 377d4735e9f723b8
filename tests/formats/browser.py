# SPDX-License-Identifier: MIT
"""The program's pages, and a headless Chromium to look at them."""

import os
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

SKIPPED = 77
NAMES = ("chromium", "chromium-browser", "google-chrome", "chrome")
FLAGS = ["--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--disable-extensions",
         "--no-first-run", "--disable-background-networking", "--force-color-profile=srgb"]
DARK = "--blink-settings=preferredColorScheme=0"


def skip(reason: str) -> None:
    print(f"skipped: {reason}")
    sys.exit(SKIPPED)


def chromium() -> str:
    """The browser's path; ends the test as skipped where there is none."""
    for name in NAMES:
        if path := shutil.which(name):
            return path
    return skip("no Chromium on this machine (Debian: chromium)") or ""


def run_browser(arguments: list[str]) -> str:
    """One run, with a profile of its own: two browsers never share one."""
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile:
        done = subprocess.run(
            [chromium(), *FLAGS, f"--user-data-dir={profile}", *arguments],
            capture_output=True, text=True, timeout=180, check=False,
            env={**os.environ, "HOME": profile, "DBUS_SESSION_BUS_ADDRESS": "disabled:"})
    if done.returncode != 0:
        raise RuntimeError(f"the browser ended with {done.returncode}: {done.stderr[-2000:]}")
    return done.stdout


def screenshot(page: Path, picture: Path, width: int, height: int, dark: bool = False) -> Path:
    picture.unlink(missing_ok=True)
    run_browser([*([DARK] if dark else []), f"--window-size={width},{height}",
                 f"--screenshot={picture}", page.as_uri()])
    return picture


def pages_when_printed(page: Path, pdf: Path) -> int:
    pdf.unlink(missing_ok=True)
    run_browser(["--no-pdf-header-footer", f"--print-to-pdf={pdf}", page.as_uri()])
    return len(re.findall(rb"/Type\s*/Page\b(?!s)", pdf.read_bytes()))


def as_printed(html: str) -> str:
    """The page with its print style in force on the screen, for a picture of it."""
    return html.replace("@media print", "@media all").replace(
        "@media (prefers-color-scheme: dark)", "@media not all")


def without_policy(html: str) -> str:
    """The page without its policy, so that a probe of ours may run in a copy of it."""
    text, found = re.subn(r'<meta http-equiv="Content-Security-Policy"[^>]*>', "", html)
    if found != 1:
        raise ValueError("the page has no policy")
    return text


class Program:
    """Asterism as built."""

    def __init__(self, path: str):
        self.path = path

    def __call__(self, *arguments: str) -> str:
        done = subprocess.run([self.path, *arguments], capture_output=True, text=True, check=False)
        if done.returncode != 0:
            raise RuntimeError(f"{arguments}: exit {done.returncode}\n{done.stderr}")
        return done.stdout


CASES = {
    "first-light": ["examples/first-light/case.yaml"],
    "bare": ["--finding", "webbed neck", "--sex", "female"],
    "quiet": ["--finding", "single transverse palmar crease; right", "--sex", "female",
              "--examined", "all", "--history", "none"],
    "many": ["--finding", "white pupil; right", "--finding", "cleft palate",
             "--finding", "choanal atresia", "--finding", "absent femoral pulses",
             "--finding", "low-set ears", "--finding", "hypospadias",
             "--finding", "supernumerary nipple; left; familial", "--sex", "male",
             "--examined", "all", "--examined", "except=red-reflex", "--born", "2031-04-02",
             "--gestation", "36w2d", "--age", "30h",
             "--measure", "head-circumference=29.5 cm", "--measure", "weight=2310 g"],
}


def written_pages(program: Program, folder: Path) -> dict[str, Path]:
    """Every HTML page that the formats offer, written to the folder."""
    folder.mkdir(parents=True, exist_ok=True)
    texts = {f"assess-{name}": program("assess", *case, "--format", "html")
             for name, case in CASES.items()}
    texts["worksheet"] = program("worksheet", "--format", "html")
    pages = {}
    for name, text in texts.items():
        pages[name] = (folder / f"{name}.html").resolve()
        pages[name].write_text(text, encoding="utf-8")
    return pages
