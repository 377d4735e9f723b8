# SPDX-License-Identifier: MIT
"""Runs the program and compares; used by every script of this folder."""
import json
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

PROGRAM = sys.argv[1] if len(sys.argv) > 1 else "build/cli/asterism"


class Result:
    def __init__(self, done):
        self.code, self.out, self.err = done.returncode, done.stdout, done.stderr

    def json(self):
        return json.loads(self.out)


def run(*arguments, stdin=""):
    """The program's exit code, standard output and standard error, as text."""
    done = subprocess.run([PROGRAM, *arguments], input=stdin, text=True, capture_output=True, timeout=1200,
                          encoding="utf-8", errors="surrogateescape")
    return Result(done)


def run_bytes(*arguments, stdin=b""):
    done = subprocess.run([PROGRAM, *arguments], input=stdin, capture_output=True, timeout=1200)
    done.stdout = done.stdout.decode("utf-8", "replace")
    done.stderr = done.stderr.decode("utf-8", "replace")
    return Result(done)


class ProgramTest(unittest.TestCase):
    def assess(self, *arguments, **keywords):
        """The assessment as JSON; the case must be valid."""
        result = run("assess", *arguments, "--format", "json", **keywords)
        self.assertEqual(result.code, 0, result.err)
        return result.json()

    @staticmethod
    def referral(assessment, service):
        return next(r for r in assessment["referrals"] if r["service"] == service)

    def verdict(self, assessment, service):
        return self.referral(assessment, service)["verdict"]

    def rules(self, assessment, service):
        return [reason["rule"] for reason in self.referral(assessment, service)["reasons"]]

    def evidence(self, assessment, service):
        return {e.get("finding") for reason in self.referral(assessment, service)["reasons"] for e in reason["evidence"]} - {None}

    def file(self, text, name="case.yaml"):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        path = Path(folder.name) / name
        path.write_bytes(text if isinstance(text, bytes) else text.encode())
        return str(path)


def main():
    unittest.main(argv=[sys.argv[0]], verbosity=1)
