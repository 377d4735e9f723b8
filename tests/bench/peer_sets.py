#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Python sets: every gate looked at in turn. Usage: peer_sets.py PREPARED CASES OUT SECONDS"""
import json
import sys
import time

from peer_case import answer, changed_facts


def judge(case, prepared):
    changed = changed_facts(case, prepared["facts"])
    for node, inputs, by_node, least, base in prepared["plan"]:
        hit = inputs & changed
        if hit and (sum(by_node[n] for n in hit) >= least) != base:
            changed.add(node)
    return answer(lambda rule: rule["holds"] != (rule["node"] in changed), prepared)


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        prepared = json.load(file)
    prepared["plan"] = [(g["node"], {n for n, _ in g["inputs"]}, dict(g["inputs"]), g["threshold"] - g["sum"],
                         prepared["base"][g["node"]]) for g in prepared["gates"]]
    count, start = 0, time.process_time()
    with open(sys.argv[2], encoding="utf-8") as cases, open(sys.argv[3], "w", encoding="utf-8") as out:
        for line in cases:
            out.write(judge(json.loads(line), prepared) + "\n")
            count += 1
            if time.process_time() - start > float(sys.argv[4]):
                break
    print(count, time.process_time() - start)


if __name__ == "__main__":
    main()
