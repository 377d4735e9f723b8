# SPDX-License-Identifier: MIT
"""Every shipped YAML file that can still change names its schema in the first line, and the schema is there."""
import re
import sys
import unittest
from pathlib import Path

PROJECT = Path(__file__).resolve().parents[2]
LINE = re.compile(r"^# yaml-language-server: \$schema=(\S+)$")


def working_files():
    """Without released books, whose files never change, and working files that still equal a released one."""
    for folder in ("rules", "ontology", "examples"):
        for path in sorted((PROJECT / folder).rglob("*.yaml")):
            if re.search(r"/releases/[^/]+/", path.as_posix()):
                continue
            released = path.parent.glob(f"releases/*/{path.name}")
            if not any(copy.read_bytes() == path.read_bytes() for copy in released):
                yield path


class Modelines(unittest.TestCase):
    def test_every_file_names_a_schema_that_exists(self):
        seen = 0
        for path in working_files():
            match = LINE.match(path.read_text(encoding="utf-8").split("\n", 1)[0])
            self.assertTrue(match, path)
            schema = (path.parent / match[1]).resolve()
            self.assertTrue(schema.is_file(), f"{path}: {schema}")
            self.assertEqual(schema.name, f"{self.kind(path)}.schema.json", path)
            seen += 1
        self.assertGreaterEqual(seen, 100)

    @staticmethod
    def kind(path):
        name = path.as_posix()
        if path.name == "releases.yaml":
            return "releases"
        return "ontology" if "/ontology/" in name else "case" if path.name == "case.yaml" else "rulebook"


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
