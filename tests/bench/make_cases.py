#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Invents babies for the benchmark, one JSON line each, always the same for one seed.

Usage: make_cases.py BOOK.json COUNT [SEED]     BOOK.json is what bench_export_book printed.

Nine in ten have two to six findings, most of them minor; three in four were examined in full and
have a history of nothing, so that two-valued readers can judge them too. No measures: peers would
need the norms. The mix is made up; it is no claim about newborns.
"""
import json
import random
import sys


class Maker:
    def __init__(self, book, seed):
        self.random = random.Random(seed)
        self.steps = [step["id"] for step in book["steps"] if step["exam"]]
        usable = [f for f in book["findings"] if not f["told"] and f["sex"] == "not given"]
        of = lambda *classes: [f for f in usable if f["class"] in classes]
        self.pools = [(0.25, of("normal-variant", None)), (0.80, of("minor-variant")),
                      (0.93, of("major-anomaly")), (1.0, of("red-flag"))]
        self.above = {}
        for index, finding in enumerate(book["findings"]):
            for below in finding["descendants"]:
                self.above.setdefault(book["findings"][below]["id"], set()).add(finding["id"])

    def statement(self, finding):
        name = finding["label"] if self.random.random() < 0.7 else finding["id"]
        statement = {"finding": name}
        if finding["paired"]:
            statement["side"] = self.random.choice(["left", "right", "both"])
        if finding["class"] == "minor-variant" and self.random.random() < 0.1:
            statement["familial"] = True
        return statement if len(statement) > 1 else name

    def pick(self):
        roll = self.random.random()
        return self.random.choice(next(pool for limit, pool in self.pools if roll < limit))

    def case(self, number):
        r = self.random
        chosen = {}
        for _ in range(0 if r.random() < 0.1 else r.randint(2, 6)):
            finding = self.pick()
            chosen[finding["id"]] = finding
        examined = "all"
        full = r.random() < 0.75
        if not full:
            examined = ["all", {"except": r.sample(self.steps, r.randint(1, 3))}]
        case = {"case": f"baby-{number:07d}", "sex": r.choice(["female", "male"]),
                "gestation": f"{r.randint(34, 41)}w{r.randint(0, 6)}d", "age": f"{r.randint(6, 72)}h",
                "born": f"2031-{r.randint(1, 12):02d}-{r.randint(1, 28):02d}", "examined": examined,
                "findings": [self.statement(f) for f in chosen.values()]}
        if r.random() < 0.3:
            self.add_absent(case, chosen)
        if full:
            case["history"] = "none"
        return case

    def add_absent(self, case, chosen):
        finding = self.pick()
        taken = set(chosen) | set().union(*(self.above.get(i, set()) for i in chosen), set())
        if finding["id"] not in taken and self.above.get(finding["id"], set()).isdisjoint(taken):
            case["absent"] = [finding["id"]]


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        book = json.load(file)
    maker = Maker(book, int(sys.argv[3]) if len(sys.argv) > 3 else 1)
    write = sys.stdout.write
    for number in range(int(sys.argv[2])):
        write(json.dumps(maker.case(number), ensure_ascii=False, separators=(",", ":")) + "\n")


if __name__ == "__main__":
    main()
