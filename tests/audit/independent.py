# SPDX-License-Identifier: MIT
"""The audit's statistics against Debian's python3-statsmodels, which shares no code with us: Wilson
intervals, Cohen's kappa and its standard error, on the tables of an invented year."""
import json
import os
import subprocess
import sys
import tempfile
import warnings
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))
import invented_year  # noqa: E402

warnings.simplefilter("ignore")
DEBIAN = "/usr/bin/python3"

try:
    from statsmodels.stats.inter_rater import cohens_kappa
    from statsmodels.stats.proportion import proportion_confint
except ImportError:
    if sys.executable != DEBIAN and Path(DEBIAN).exists():  # the package is for Debian's own interpreter
        os.execv(DEBIAN, [DEBIAN, *sys.argv])
    print("skipped: python3-statsmodels is not installed")
    sys.exit(77)


def near(a, b):
    return abs(a - b) < 1e-9


def main():
    problems = checked = 0
    with tempfile.TemporaryDirectory() as name:
        invented_year.write(Path(name), 20000, 3)
        done = subprocess.run([sys.argv[1], "audit", f"{name}/cases.jsonl", "--decisions", f"{name}/decisions.csv",
                               "--unlisted", "not-referred", "--format", "json"], capture_output=True, check=True)
    for service in json.loads(done.stdout)["services"]:
        for figure in ("sensitivity", "specificity", "ppv", "npv"):
            share = service[figure]
            if share is None:
                continue
            low, high = proportion_confint(share["count"], share["total"], 0.05, "wilson")
            checked += 1
            problems += not (near(share["low"], max(low, 0)) and near(share["high"], min(high, 1)))
        kappa = service["agreement"] and service["agreement"]["kappa"]
        table = [[service["table"][row][column] for column in ("referred", "not_referred")]
                 for row in ("suggested", "not_suggested")]
        if kappa:
            other = cohens_kappa(table)
            checked += 1
            # A variance of nothing comes out of either as a rounding error of either sign: no root there.
            error = max(other.var_kappa, 0) ** 0.5
            same = near(kappa["value"], other.kappa) and abs(kappa["error"] - error) < 1e-7
            problems += not same
            if not same:
                print(service["service"], table, kappa, other.kappa, other.var_kappa)
    print(f"{checked} figures, {problems} problems")
    sys.exit(problems > 0 or checked < 40)


if __name__ == "__main__":
    main()
