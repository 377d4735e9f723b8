# SPDX-License-Identifier: MIT
"""An invented year of babies and decisions: python3 invented_year.py FOLDER [BABIES] [SEED].

Writes cases.jsonl, cases.csv (the same babies) and decisions.csv. Everything is made up: the units,
the frequencies (far too high, so that small years have something to audit) and the decisions, which
follow the table below nine times out of ten and are now and then made for no reason.
"""

import csv
import json
import random
import sys
from datetime import date, timedelta
from pathlib import Path

FINDINGS = {  # finding: how often, and where most clinicians would refer
    "white pupil": (0.0004, ["ophthalmology"]), "cleft palate": (0.002, ["plastics", "genetics"]),
    "low-set ears": (0.02, []), "single transverse palmar crease": (0.03, []),
    "epicanthal folds": (0.03, []), "preauricular pit": (0.01, []),
    "undescended testis": (0.01, ["urology"]), "hypospadias": (0.003, ["urology"]),
    "supernumerary nipple": (0.02, []), "clubfoot": (0.002, ["orthopaedics"]),
    "postaxial polydactyly": (0.003, ["plastics"]), "heart murmur": (0.008, ["cardiology"]),
}
ONLY_BOYS = {"undescended testis", "hypospadias"}
UNITS = ["harbour ward", "hill ward", "lake ward"]
OTHER = ["cardiology", "orthopaedics", "genetics", "dermatology"]


def baby(number: int, chance: random.Random) -> dict:
    born = date(2031, 1, 1) + timedelta(days=chance.randrange(365))
    sex = chance.choice(["female", "male"])
    found = [name for name, (often, _) in FINDINGS.items()
             if chance.random() < often and (sex == "male" or name not in ONLY_BOYS)]
    examined = ["all"] if chance.random() < 0.9 else ["all", {"except": ["hips-ortolani-barlow"]}]
    return {"case": f"year-{number:06d}", "sex": sex, "gestation": "39w2d", "age": "26h",
            "born": born.isoformat(), "examined-on": (born + timedelta(days=1)).isoformat(),
            "examined": examined, "findings": found,
            "unit": chance.choice(UNITS), "examiner": f"E{chance.randrange(12):02d}"}


def decisions(case: dict, chance: random.Random) -> list[list[str]]:
    services = {service for name in case["findings"] for service in FINDINGS[name][1]
                if chance.random() < 0.9}
    if chance.random() < 0.003:
        services.add(chance.choice(OTHER))
    exam = date.fromisoformat(case["examined-on"])
    return [[case["case"], service, "yes",
             (exam + timedelta(days=int(chance.expovariate(0.3)))).isoformat()]
            for service in sorted(services)]


def csv_row(case: dict) -> list[str]:
    examined = "|".join(part if isinstance(part, str) else f"except={part['except'][0]}"
                        for part in case["examined"])
    return [*(case[key] for key in ("case", "sex", "gestation", "age", "born", "examined-on")),
            examined, "|".join(case["findings"]), case["unit"], case["examiner"]]


def write(folder: Path, babies: int, seed: int) -> None:
    chance = random.Random(seed)
    with (folder / "cases.jsonl").open("w") as lines, \
            (folder / "cases.csv").open("w", newline="") as rows, \
            (folder / "decisions.csv").open("w", newline="") as decided:
        table, outcome = csv.writer(rows), csv.writer(decided)
        table.writerow(["case", "sex", "gestation", "age", "born", "examined-on", "examined",
                        "findings", "unit", "examiner"])
        outcome.writerow(["case", "service", "referred", "at"])
        for number in range(1, babies + 1):
            case = baby(number, chance)
            lines.write(json.dumps(case) + "\n")
            table.writerow(csv_row(case))
            outcome.writerows(decisions(case, chance))


if __name__ == "__main__":
    numbers = [int(text) for text in sys.argv[2:]]
    write(Path(sys.argv[1]), *(numbers + [1000, 1][len(numbers):]))
