#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""CLIPS: gates as rules. `and` and `or` are conditions; weights are summed, since conditions cannot. CLIPS
reads no JSON, so its facts are written beforehand, outside the time that is taken.

Usage: peer_clips.py PREPARED CASES OUT COUNT PROGRAM
"""
import json
import resource
import subprocess
import sys
import tempfile
from pathlib import Path

from peer_case import changed_facts


def gate_rules(gate, base):
    node, least = gate["node"], gate["threshold"] - gate["sum"]
    deltas = [d for _, d in gate["inputs"]]
    salience = f"(declare (salience {-gate['level']}))"
    facts = [f"(n{n})" for n, _ in gate["inputs"]]
    if not base and min(deltas) >= least:
        some = facts[0] if len(facts) == 1 else f"(or {' '.join(facts)})"
        return [f"(defrule g{node} {salience} {some} (not (n{node})) => (assert (n{node})))"]
    if not base and min(deltas) > 0 and sum(deltas) - min(deltas) < least <= sum(deltas):
        return [f"(defrule g{node} {salience} {' '.join(facts)} => (assert (n{node})))"]
    rules = [f"(defglobal ?*s{node}* = 0)"]
    for n, delta in gate["inputs"]:
        rules.append(f"(defrule g{node}-{n} {salience} (n{n}) => (bind ?*s{node}* (+ ?*s{node}* {delta})))")
    crossed = f"(< ?*s{node}* {least})" if base else f"(>= ?*s{node}* {least})"
    rules.append(f"(defrule h{node} {salience} (last {gate['level']}) => (if {crossed} then (assert (n{node}))))")
    return rules


def rules_program(prepared):
    """Two priorities a level: first the sums, then what hangs on them."""
    lines = []
    for gate in prepared["gates"]:
        for rule in gate_rules(gate, prepared["base"][gate["node"]]):
            early, late = f"(salience {-2 * gate['level']})", f"(salience {-2 * gate['level'] - 1})"
            is_late = rule.startswith("(defrule h")
            rule = rule.replace(f"(salience {-gate['level']})", late if is_late else early)
            lines.append(rule.replace(f"(last {gate['level']})", "(start)"))
    lines.append("(deffacts start (start))")
    last = -2 * max(g["level"] for g in prepared["gates"]) - 2
    for i, rule in enumerate(prepared["rules"]):
        says = "".join(f'(printout t " {s}:{u}")' for s, u in rule["suggest"])
        when = f"(start) (not (n{rule['node']}))" if rule["holds"] else f"(n{rule['node']})"
        lines.append(f"(defrule r{i} (declare (salience {last})) {when} => {says})")
    return "\n".join(lines) + "\n"


def spent():
    usage = resource.getrusage(resource.RUSAGE_CHILDREN)
    return usage.ru_utime + usage.ru_stime


def best(line):
    said = {}
    for part in line.split():
        service, urgency = map(int, part.split(":"))
        said[service] = max(urgency, said.get(service, -1))
    return " ".join(f"{s}:{u}" for s, u in sorted(said.items()))


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        prepared = json.load(file)
    used = {n for g in prepared["gates"] for n, _ in g["inputs"]} | {r["node"] for r in prepared["rules"]}
    count = int(sys.argv[4])
    with tempfile.TemporaryDirectory() as folder:
        book, batch = Path(folder) / "book.clp", Path(folder) / "batch.clp"
        book.write_text(rules_program(prepared), encoding="utf-8")
        with open(sys.argv[2], encoding="utf-8") as cases, open(batch, "w", encoding="utf-8") as out:
            for _, line in zip(range(count), cases):
                nodes = sorted(changed_facts(json.loads(line), prepared["facts"]) & used)
                facts = " ".join(f"(n{n})" for n in nodes)
                out.write("(reset)\n" + (f"(assert {facts})\n" if facts else "") + '(run)\n(printout t crlf "=")\n')
        load = f'(load* "{book}")\n'
        times = []
        for text in (load + "(exit)\n", load + f'(batch* "{batch}")\n(exit)\n'):
            script = Path(folder) / "go.clp"
            script.write_text(text, encoding="utf-8")
            start = spent()
            done = subprocess.run([sys.argv[5], "-f2", str(script)], capture_output=True, text=True, check=True)
            times.append(spent() - start)
    lines = [best(part) for part in done.stdout.split("=")[:-1]]
    Path(sys.argv[3]).write_text("".join(line + "\n" for line in lines), encoding="utf-8")
    print(len(lines), times[1] - times[0])


if __name__ == "__main__":
    main()
