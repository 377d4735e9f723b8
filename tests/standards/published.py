# SPDX-License-Identifier: MIT
"""What the program writes under the published definitions: FHIR R4 resources by the npm package `fhir` (built
from the R4 definitions), phenopackets by a JSON Schema of the version 2 messages that we write, through `ajv`.
tests/npm/check.sh installs both; without them the check says that it was skipped."""
import json
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from support import BABIES, SKIPPED, run

HERE = Path(__file__).resolve().parent
MODULES = HERE.parent / "npm" / "node_modules"


def write_all(folder: Path) -> int:
    """Every document to be validated, named KIND-BABY.json."""
    for name, text in BABIES.items():
        case = folder / "case.yaml"
        case.write_text(text, encoding="utf-8")
        bundle = run("assess", str(case), "--format", "fhir")
        cards = run("assess", str(case), "--format", "cds-hooks")
        packet = run("convert", str(case), "--to", "phenopacket", "--created", "2031-04-03T00:00:00Z")
        assert (bundle.code, cards.code, packet.code) == (0, 0, 0), bundle.err + cards.err + packet.err
        (folder / f"fhir-{name}.json").write_text(bundle.out, encoding="utf-8")
        (folder / f"packet-{name}.json").write_text(packet.out, encoding="utf-8")
        drafts = [action["resource"] for card in json.loads(cards.out)["cards"]
                  for suggestion in card.get("suggestions", []) for action in suggestion["actions"]]
        for number, draft in enumerate(drafts):
            (folder / f"fhir-{name}-card-{number}.json").write_text(json.dumps(draft), encoding="utf-8")
    case.unlink()
    return len(list(folder.glob("*.json")))


def main() -> int:
    if not shutil.which("node") or not (MODULES / "fhir").exists() or not (MODULES / "ajv").exists():
        print("skipped: Node.js or the packages of tests/npm are not installed (tests/npm/check.sh)")
        return SKIPPED
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        written = write_all(folder)
        done = subprocess.run(["node", str(HERE / "validate.cjs"), str(folder)], text=True, capture_output=True,
                              timeout=300)
    print(done.stdout + done.stderr)
    if f"{written} documents valid" not in done.stdout:
        print(f"expected {written} valid documents")
        return 1
    return done.returncode


if __name__ == "__main__":
    sys.exit(main())
