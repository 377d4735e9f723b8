#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""What a start costs, as ratios within one run; `cmake --build build --target bench_start`.

Usage: ratios.py ASTERISM EMPTY READ

Prints one table and judges nothing: the goals stand beside the figures.
"""

import os
import statistics
import subprocess
import sys
import tempfile
import time

BABY = """case: bench
sex: female
gestation: 38w4d
examined: all
findings: [ low-set ears, single transverse palmar crease, white pupil ]
measures: { head-circumference: 31.0 cm, length: 47 cm, weight: 2610 g }
"""
TURNS = 60


def milliseconds(command: list[str]) -> tuple[float, float]:
    """One run from spawn to end, by the clock and by what the processor spent on it; its output is
    thrown away."""
    actions = [(os.POSIX_SPAWN_OPEN, 1, os.devnull, os.O_WRONLY, 0)]
    start = time.perf_counter()
    child = os.posix_spawn(command[0], command, os.environ, file_actions=actions)
    _, status, used = os.wait4(child, 0)
    elapsed = time.perf_counter() - start
    if status:
        sys.exit(f"{' '.join(command)} failed with status {status}")
    return elapsed * 1000, (used.ru_utime + used.ru_stime) * 1000


def in_turn(commands: dict[str, list[str]]) -> dict[str, tuple[float, float]]:
    """Medians of the commands, run one after the other in turn so that drift falls on all."""
    times: dict[str, list[tuple[float, float]]] = {name: [] for name in commands}
    for _ in range(TURNS):
        for name, command in commands.items():
            times[name].append(milliseconds(command))
    return {name: tuple(map(statistics.median, zip(*values))) for name, values in times.items()}


def main() -> None:
    asterism, empty, read = sys.argv[1:4]
    with tempfile.NamedTemporaryFile("w", suffix=".yaml") as case:
        case.write(BABY)
        case.flush()
        medians = in_turn({
            "empty process": [empty],
            "assess": [asterism, "assess", case.name],
            "assess --format json": [asterism, "assess", case.name, "--format", "json"],
            "lookup": [asterism, "lookup", "micrognathia"],
            "worksheet": [asterism, "worksheet"],
        })
    base = medians["empty process"]
    print(f"{'':<24}{'clock':>8}{'':12}{'processor':>9}  (goal: assess at most 2 x empty)")
    for name, (clock, used) in medians.items():
        print(f"{name:<24}{clock:8.2f} ms {clock / base[0]:6.2f} x"
              f" {used:8.2f} ms {used / base[1]:6.2f} x")
    parse, load = map(float, subprocess.run([read], check=True, text=True,
                                            capture_output=True).stdout.split())
    print(f"{'yaml-cpp parse':<24}{parse:8.2f} ms")
    print(f"{'book from YAML':<24}{load:8.2f} ms  {load / parse:6.2f} x parse (goal: at most 1.33)")


if __name__ == "__main__":
    main()
