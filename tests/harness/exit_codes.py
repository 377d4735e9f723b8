#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Runs single cases of the sample program and expects the exit code and the words for each.

Usage: exit_codes.py PROGRAM
"""

import os
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

PASSED, FAILED, SKIPPED = 0, 1, 77


class ExitCodes(unittest.TestCase):
    program = ""

    def expect(self, cases: str, code: int, words: str = "", **variables: str) -> None:
        """Runs the cases with no reference data but what `variables` name."""
        environment = {name: value for name, value in os.environ.items()
                       if not name.startswith("ASTERISM_")}
        run = subprocess.run([self.program, f"--test-case={cases}"], text=True,
                             capture_output=True, env={**environment, **variables}, check=False)
        self.assertEqual(run.returncode, code, run.stdout + run.stderr)
        self.assertIn(words, run.stdout + run.stderr)

    def test_a_plain_pass_and_a_plain_failure(self):
        self.expect("passes", PASSED)
        self.expect("fails", FAILED)
        self.expect("passes,fails", FAILED)

    def test_a_filter_that_matches_nothing_fails(self):
        self.expect("no such case", FAILED, "no test case matches")

    def test_a_case_without_an_assertion_fails(self):
        self.expect("passes,asserts nothing", FAILED, "`asserts nothing` asserts nothing")

    def test_a_skip_is_reported_with_its_reason_and_hides_no_failure(self):
        self.expect("passes,skips", SKIPPED, "skipped: no reason at all")
        self.expect("skips and fails", FAILED)
        self.expect("skips,fails", FAILED)

    def test_absent_data_skip_only_while_the_variable_is_not_set(self):
        self.expect("needs data", SKIPPED, "skipped: ASTERISM_DATA is not set")
        self.expect("needs absent facts", SKIPPED, "skipped: ASTERISM_FACTS is not set")
        with tempfile.TemporaryDirectory() as folder:
            Path(folder, "present.txt").touch()
            self.expect("needs data", PASSED, ASTERISM_DATA=folder)
            self.expect("needs absent facts", FAILED, "there is no", ASTERISM_FACTS=folder)


if __name__ == "__main__":
    ExitCodes.program = sys.argv.pop(1)
    unittest.main()
