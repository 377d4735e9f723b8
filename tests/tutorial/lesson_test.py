# SPDX-License-Identifier: MIT
"""The reader of lessons itself: a lesson that is wrong must not pass for one that is right."""
import tempfile
import unittest
from pathlib import Path

from lesson import Command, Edit, LessonError, agrees, steps


class Reading(unittest.TestCase):
    def test_commands_with_their_output(self):
        read = list(steps("Text.\n\n```console\n$ one\na\n...\n$ two\n```\n"))
        self.assertEqual(read, [Command(4, "one", ["a", "..."]), Command(7, "two", [])])

    def test_edits(self):
        text = ("Well. Write the file `a.yaml`:\n\n```yaml\nx: 1\n```\n\nAnd then add... Add at the end of\n`a.yaml`:\n\n```yaml\ny: 2\n```\n"
                "\nIn `a.yaml`, change\n\n```diff\n-x: 1\n+x: 3\n```\n")
        self.assertEqual([(e.kind, e.file) for e in steps(text)], [("write", "a.yaml"), ("add", "a.yaml"), ("change", "a.yaml")])
        with tempfile.TemporaryDirectory() as folder:
            for edit in steps(text):
                edit.apply(Path(folder))
            self.assertEqual((Path(folder) / "a.yaml").read_text(encoding="utf-8"), "x: 3\ny: 2\n")

    def test_what_cannot_be_carried_out_is_an_error(self):
        for text in ("```yaml\nx\n```\n", "Write the file `a`:\n\n```diff\n-x\n```\n", "```console\noutput\n```\n", "```console\n$ x\n"):
            with self.assertRaises(LessonError, msg=text):
                list(steps(text))
        with tempfile.TemporaryDirectory() as name:
            folder = Path(name)
            (folder / "a").write_text("x\nx\n", encoding="utf-8")
            for edit in (Edit(1, "write", "a", "y\n"), Edit(1, "change", "a", "-x\n+y\n"), Edit(1, "change", "a", "-z\n+y\n"),
                         Edit(1, "add", "b", "y\n")):
                with self.assertRaises(LessonError):
                    edit.apply(folder)


class Comparing(unittest.TestCase):
    def test_dots_stand_for_any_lines(self):
        self.assertTrue(agrees(["..."], []))
        self.assertTrue(agrees(["a", "...", "c"], ["a", "b", "b", "c"]))
        self.assertTrue(agrees(["...", "c", "..."], ["c"]))
        self.assertTrue(agrees([], []))
        self.assertTrue(agrees(["a...c"], ["a b c"]))
        self.assertTrue(agrees(["...(b)..."], ["a (b) c"]))

    def test_a_difference_is_seen(self):
        self.assertFalse(agrees([], ["a"]))
        self.assertFalse(agrees(["a"], []))
        self.assertFalse(agrees(["a", "...", "c"], ["a", "b"]))
        self.assertFalse(agrees(["a"], ["a", "b"]))
        self.assertFalse(agrees(["a...c"], ["a b"]))
        self.assertFalse(agrees(["a.c"], ["abc"]))


if __name__ == "__main__":
    unittest.main()
