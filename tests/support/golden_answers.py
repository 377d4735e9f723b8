# SPDX-License-Identifier: MIT
"""What the program prints in each format, whole, against files of the test's own folder."""
import subprocess
import sys
from pathlib import Path

PROJECT = Path(__file__).resolve().parents[2]


def hold(folder, arguments, formats, code):
    """Ends the test: FORMATS maps a format to the ending of its file, CODE is the exit code of each run."""
    program, update = str(Path(sys.argv[1]).resolve()), "--update" in sys.argv
    problems = 0
    for form, suffix in formats.items():
        path = folder / "golden" / f"invented.{suffix}"
        done = subprocess.run([program, *arguments, "--format", form], capture_output=True, text=True,
                              encoding="utf-8", cwd=PROJECT, timeout=60, check=False)
        if update:
            path.parent.mkdir(exist_ok=True)
            path.write_text(done.stdout, encoding="utf-8")
        if (done.returncode, done.stderr) != (code, ""):
            problems += 1
            print(f"{form}: exit {done.returncode}, {done.stderr}")
        if done.stdout != path.read_text(encoding="utf-8"):
            problems += 1
            print(f"{form}: not as in {path.relative_to(PROJECT)}:\n{done.stdout}")
    print(f"{len(formats)} formats, {problems} problems")
    sys.exit(problems > 0)
