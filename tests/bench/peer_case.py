# SPDX-License-Identifier: MIT
"""What a case says, as the set of nodes that it changes; for the peers written in Python."""
import re

GESTATION = re.compile(r"(\d+)w(\d)d")


def inside(value, node_range):
    _, low, high, low_open, high_open = node_range
    if low is not None and (value < low or (low_open and value == low)):
        return False
    return high is None or not (value > high or (high_open and value == high))


def changed_facts(case, facts):
    nodes = set()
    for statement in case["findings"]:
        name, more = statement, {}
        if not isinstance(statement, str):
            name, more = statement["finding"], statement
        nodes.update(facts["present"].get(name, ()))
        side = more.get("side")
        if side in ("left", "both"):
            nodes.update(facts["left"].get(name, ()))
        if side in ("right", "both"):
            nodes.update(facts["right"].get(name, ()))
        if more.get("familial"):
            nodes.update(facts["familial"].get(name, ()))
    age = int(case["age"][:-1])
    weeks, days = GESTATION.match(case["gestation"]).groups()
    nodes.update(r[0] for r in facts["age"] if inside(age, r))
    nodes.update(r[0] for r in facts["gestation"] if inside(int(weeks) * 7 + int(days), r))
    nodes.update(facts[case["sex"]])
    return nodes


def answer(holds, prepared):
    """`service:urgency` of every service that a rule suggests, by service."""
    best = {}
    for rule in prepared["rules"]:
        if holds(rule):
            for service, urgency in rule["suggest"]:
                best[service] = max(urgency, best.get(service, -1))
    return " ".join(f"{s}:{u}" for s, u in sorted(best.items()))
