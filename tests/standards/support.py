# SPDX-License-Identifier: MIT
"""The program, and invented babies, for the scripts of this folder."""
import os
import sys
from pathlib import Path

TESTS = Path(__file__).resolve().parent.parent
sys.path[:0] = [str(TESTS / "cli"), str(TESTS / "support")]
from instrumented import instrumented  # noqa: E402,F401
from program import PROGRAM, ProgramTest, main, run, run_bytes  # noqa: E402,F401

SKIPPED = 77

FULL = """case: demo-017
sex: female
gestation: 38w4d
age: 26h
examined: [all, except: [hips, red-reflex]]
findings: [ low-set ears, { finding: single transverse palmar crease, side: right },
  { finding: epicanthal folds, familial: true }, white pupil ]
absent: [ cleft palate ]
measures: { head-circumference: 31.0 cm, length: 47 cm, weight: 2610 g, foot-length: 75 mm }
history: [ breech presentation ]
unsure: [ smooth philtrum ]
born: 2031-04-02
examined-on: 2031-04-03
decisions: { referred: [ genetics ], on: 2031-04-03 }
"""

# Cases that touch every corner of the exporters.
BABIES = {
    "full": FULL,
    "nothing": "case: nobody\n",
    "normal": "case: n\nsex: male\ngestation: 39w\nage: 30h\nexamined: all\nhistory: none\n",
    "emergency": "case: e\nfindings: [cyanosis, grunting]\n",
    "undetermined": "sex: undetermined\nfindings: [ambiguous genitalia]\n",
    "odd-id": "case: 'baby <b>\"one\"</b>; =1+1'\nfindings: [white pupil]\n",
    "majors": "case: m\nfindings: [cleft lip, polydactyly, omphalocele]\nmeasures: {weight: 6 lb 4 oz}\n",
}

PACKET = """{"id": "p1", "subject": {"id": "s", "sex": "FEMALE",
 "timeAtLastEncounter": {"age": {"iso8601duration": "P2D"}}},
 "phenotypicFeatures": [{"type": {"id": "HP:0000369", "label": "Low-set ears"}},
  {"type": {"id": "HP:0000555", "label": "Leukocoria"}, "modifiers": [{"id": "HP:0012835", "label": "Left"}]},
  {"type": {"id": "HP:0002373", "label": "Febrile seizure"}},
  {"type": {"id": "HP:0000175", "label": "Cleft palate"}, "excluded": true}],
 "diseases": [{"term": {"id": "OMIM:180200", "label": "an answer"}}],
 "metaData": {"phenopacketSchemaVersion": "2.0"}}"""

# Real ids and is-a pairs (release 2024-08-13).
HPO = """format-version: 1.2
data-version: hp/releases/2024-08-13
[Term]
id: HP:0000369
name: Low-set ears
[Term]
id: HP:0000555
name: Leukocoria
[Term]
id: HP:0000175
name: Cleft palate
[Term]
id: HP:0001250
name: Seizure
[Term]
id: HP:0002373
name: Febrile seizure
is_a: HP:0001250 ! Seizure
"""


def data(name):
    """A file or folder below $ASTERISM_DATA, or None where the variable is not set."""
    root = os.environ.get("ASTERISM_DATA")
    if not root:
        return None
    path = Path(root) / name
    assert path.exists(), f"{path} is missing"
    return path
