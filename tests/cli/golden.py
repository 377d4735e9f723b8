# SPDX-License-Identifier: MIT
"""Runs the program as each file of golden/ says and compares exit code, standard output and error.

A file is one run: the command after `$`, then sections `--- stdin`, `--- exit N`, `--- stdout`, `--- stderr`.
`{small}` in a command is the small book of this folder, `{file NAME}` a file of golden/. Names begin with
pass_ (exit 0) or fail_. After a change that is meant:

    python3 tests/cli/golden.py PROGRAM --update     # rewrites what differs; read the diff

Digests, versions and the compiler's name are left out of the comparison.
"""
import re
import shlex
import subprocess
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
PROJECT = HERE.parent.parent
SMALL = "--rulebook tests/cli/small/rules --ontology tests/cli/small/ontology"


class Golden:
    def __init__(self, path):
        self.path = path
        self.command, self.stdin, self.exit, self.out, self.err = "", "", 0, "", ""
        section, lines = "command", {}
        for line in path.read_text(encoding="utf-8").splitlines(keepends=True):
            if line.startswith("--- exit "):
                self.exit, section = int(line.split()[2]), "none"
            elif line.rstrip() in ("--- stdin", "--- stdout", "--- stderr"):
                section = line.split()[1]
            else:
                lines.setdefault(section, []).append(line)
        self.comment = [line for line in lines.get("command", []) if line.startswith("#")]
        self.command = "".join(line for line in lines.get("command", []) if not line.startswith("#"))
        self.stdin = "".join(lines.get("stdin", []))
        self.out, self.err = "".join(lines.get("stdout", [])), "".join(lines.get("stderr", []))

    def arguments(self):
        text = self.command.strip().removeprefix("$").replace("{small}", SMALL)
        text = re.sub(r"\{file ([^}]+)\}", lambda m: f"tests/cli/golden/{m.group(1)}", text)
        return shlex.split(text)

    def text(self, code, out, err):
        stdin = f"--- stdin\n{self.stdin}" if self.stdin else ""
        return "".join(self.comment) + self.command + stdin + f"--- exit {code}\n--- stdout\n{out}--- stderr\n{err}"


def neutral(text):
    """Without what changes from build to build."""
    text = re.sub(r"\b[0-9a-f]{64}\b", "<sha256>", text)
    text = re.sub(r"\(([0-9a-f]{8})\)", "(<digest>)", text)
    text = re.sub(r"asterism \d+\.\d+\.\d+( \(.*\))?", "asterism <version>", text)
    text = re.sub(r'"engine": "[^"]*"', '"engine": "<version>"', text)
    return text if not text or text.endswith("\n") else text + "\n"


def run(program, golden):
    done = subprocess.run([program, *golden.arguments()], input=golden.stdin, capture_output=True, text=True,
                          encoding="utf-8", cwd=PROJECT, timeout=120)
    return done.returncode, neutral(done.stdout), neutral(done.stderr)


def differences(golden, code, out, err):
    found = []
    if code != golden.exit:
        found.append(f"exit code {code}, expected {golden.exit}")
    for name, seen, expected in (("stdout", out, golden.out), ("stderr", err, golden.err)):
        if seen != expected:
            found.append(f"{name} differs:\n--- expected\n{expected}--- seen\n{seen}")
    wanted = "pass_" if golden.exit == 0 else "fail_"
    if not golden.path.name.startswith(wanted):
        found.append(f"a run that exits {golden.exit} is called {wanted}...")
    return found


def main():
    arguments = [a for a in sys.argv[1:] if a != "--update"]
    update = "--update" in sys.argv[1:]
    program = str(Path(arguments[0]).resolve())
    paths = sorted((HERE / "golden").glob("*.golden"))
    if not paths:
        sys.exit("no golden files")
    failed = 0
    for path in paths:
        golden = Golden(path)
        code, out, err = run(program, golden)
        if update:
            path.write_text(golden.text(code, out, err), encoding="utf-8")
            golden = Golden(path)
        for problem in differences(golden, code, out, err):
            failed += 1
            print(f"{path.relative_to(PROJECT)}: {problem}")
    print(f"{len(paths)} golden files, {failed} differences")
    sys.exit(failed > 0)


if __name__ == "__main__":
    main()
