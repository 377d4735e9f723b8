#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Makes the exported book ready for the peers. Usage: prepare.py BOOK.json > PREPARED.json

Every peer is two-valued: what nobody says is no. The baby of whom nothing is said is worked out once
(`base`); a case is then a set of nodes that differ from it. An input that differs adds its `delta`
to each gate that it feeds, and a gate differs when that takes its sum over the threshold or below.
"""
import json
import sys


def base_values(book):
    value, total = [False] * book["nodes"], {}
    for gate in book["gates"]:
        total[gate["node"]] = sum(w for n, negated, w in gate["inputs"] if value[n] != negated)
        value[gate["node"]] = total[gate["node"]] >= gate["threshold"]
    return value, total


def gates(book, value, total):
    level, result = {}, []
    for gate in book["gates"]:
        level[gate["node"]] = 1 + max((level.get(n, 0) for n, _, _ in gate["inputs"]), default=0)
        inputs = [[n, -w if value[n] != negated else w] for n, negated, w in gate["inputs"]]
        result.append({"node": gate["node"], "level": level[gate["node"]], "threshold": gate["threshold"],
                       "sum": total[gate["node"]], "inputs": inputs})
    return result


def facts(book):
    """By the findings' names, which nodes a statement sets; and the ranges of age and gestation."""
    result = {"present": {}, "left": {}, "right": {}, "familial": {}, "age": [], "gestation": [], "female": [], "male": []}
    kinds = {"finding": "present", "history_assumed": "present", "left": "left", "right": "right", "familial": "familial"}
    for fact in book["facts"]:
        kind = fact["kind"]
        if kind in kinds:
            finding = book["findings"][fact["finding"]]
            for name in {finding["id"], finding["label"]}:
                result[kinds[kind]].setdefault(name, []).append(fact["node"])
        elif kind in ("age", "gestation"):
            r = fact["range"]
            result[kind].append([fact["node"], r["low"], r["high"], r["low_open"], r["high_open"]])
        elif kind in ("female", "male"):
            result[kind].append(fact["node"])
    return result


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        book = json.load(file)
    value, total = base_values(book)
    rules = [{"node": r["node"], "holds": value[r["node"]] != r["negated"], "suggest": r["suggest"]} for r in book["rules"]]
    json.dump({"nodes": book["nodes"], "base": value, "gates": gates(book, value, total), "facts": facts(book),
               "rules": rules, "services": book["services"]}, sys.stdout)


if __name__ == "__main__":
    main()
