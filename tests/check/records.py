# SPDX-License-Identifier: MIT
"""Records and term files that are refused: the code and the place of each, marked by hand in records.yaml."""
import json
import re
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

import yaml

PROGRAM = str(Path(sys.argv.pop(1)).resolve())
HERE = Path(__file__).resolve().parent
BOOK = ["--rulebook", str(HERE / "base/rules"), "--ontology", str(HERE / "base/ontology")]
PACKET = '{"id": "p", "phenotypicFeatures": []}'


def assess(*arguments):
    return subprocess.run([PROGRAM, "assess", *BOOK, "--format", "json", *arguments], capture_output=True, text=True,
                          timeout=60, check=False)


def told(done):
    """From the envelope when the record is refused, from standard error when it is read with a warning."""
    if done.returncode:
        return [(d["code"], d.get("line"), d.get("column")) for d in json.loads(done.stdout)["diagnostics"]]
    return [(m[3], int(m[1]), int(m[2])) for m in re.finditer(r":(\d+):(\d+): warning: .* \[([a-z0-9-]+)\]", done.stderr)]


class Records(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)

    def write(self, name, text):
        path = self.folder / name
        path.write_bytes(text if isinstance(text, bytes) else text.encode("utf-8"))
        return str(path)

    def test_each_record_is_told_at_its_place(self):
        for one in yaml.safe_load((HERE / "records.yaml").read_text(encoding="utf-8")):
            with self.subTest(**one):
                text = one.get("text") or one["hpo"]
                offset = text.index("¦")
                text = text.replace("¦", "")
                line = text.count("\n", 0, offset) + 1
                column = offset - (text.rfind("\n", 0, offset) + 1) + 1
                if "hpo" in one:
                    done = assess("--input", "phenopacket", "--hpo", self.write("hp.obo", text), self.write("p.json", PACKET))
                else:
                    done = assess("--input", one["input"], self.write("record", text))
                self.assertIn((one["code"], line, column), told(done), done.stderr)

    def test_what_cannot_be_read(self):
        done = assess(str(self.folder / "nowhere.yaml"))
        self.assertEqual((done.returncode, told(done)[0][0]), (3, "cannot-read"))

    def test_a_packed_file_cut_short(self):
        done = assess("--input", "phenopacket", "--hpo", self.write("hp.obo.gz", b"\x1f\x8b\x08\x00cut"),
                      self.write("p.json", PACKET))
        self.assertEqual((done.returncode, told(done)[0][0]), (3, "bad-gzip"))


if __name__ == "__main__":
    unittest.main()
