#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Times `assess --batch` and its peers on the same invented babies, in one run, and prints the ratios.

Usage: bench.py FOLDER PROGRAM SECONDS      FOLDER: where bench_export_book and bench_floor are

Every peer gets the shipped book's own rules as threshold gates (prepare.py) and judges as many cases as
it can in the time. What it says is compared case by case with what the program says; a difference fails
the run, a slow machine never does. A peer that is absent is said to be skipped.
"""
import json
import os
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

HERE = Path(__file__).resolve().parent
MODULES = HERE.parent / "npm" / "bench"
URGENCIES = ["routine", "urgent", "same-day", "emergency"]
GOALS = {"floor": ("at least 0.28 of it", lambda r: r >= 0.28), "two": ("at least 1.8 times one", lambda r: r >= 1.8),
         "index": ("at least 6 times", lambda r: r >= 6), "duckdb": ("at least 15 times", lambda r: r >= 15),
         "sets": ("at least 100 times", lambda r: r >= 100), "clips": ("at least 150 times", lambda r: r >= 150)}


def run(command, **keywords):
    """What a command printed, its seconds by the clock and of the processor, and its peak memory in MB."""
    start = time.perf_counter()
    with subprocess.Popen([str(c) for c in command], stdout=keywords.pop("stdout", subprocess.PIPE), **keywords) as process:
        out = process.stdout.read() if process.stdout else b""
        _, status, usage = os.wait4(process.pid, 0)
        process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode != 0:
        raise RuntimeError(f"{command[0]} ended with {process.returncode}")
    return out, time.perf_counter() - start, usage.ru_utime + usage.ru_stime, usage.ru_maxrss / 1024


class Bench:
    def __init__(self, tools, program, seconds, folder):
        self.tools, self.program, self.seconds, self.folder = Path(tools), program, seconds, Path(folder)
        self.differences = 0

    def prepare(self):
        self.book, self.prepared, self.cases = (self.folder / n for n in ("book.json", "prepared.json", "cases.jsonl"))
        with open(self.book, "wb") as out:
            run([self.tools / "bench_export_book"], stdout=out)
        with open(self.prepared, "wb") as out:
            run([sys.executable, "-B", HERE / "prepare.py", self.book], stdout=out)
        # Threads each learn the words of their cases, which few cases would not repay.
        count = int(100000 * max(1, self.seconds))
        with open(self.cases, "wb") as out:
            run([sys.executable, "-B", HERE / "make_cases.py", self.book, count], stdout=out)
        (self.folder / "empty.jsonl").write_bytes(b"")
        self.count = count
        self.size = self.cases.stat().st_size
        self.services = json.loads(self.book.read_text(encoding="utf-8"))["services"]

    def batch(self, jobs):
        """The best of three, by the clock and of the processor, without the start of the program, which a run
        without cases tells; and the peak memory."""
        clock, processor, peak = 1e9, 1e9, 0.0
        answers = self.folder / f"answers-{jobs}"
        for _ in range(3):
            command = [self.program, "assess", self.cases, "--batch", "--jobs", jobs]
            with open(answers, "wb") as out:
                _, wall, taken, memory = run(command, stdout=out, stderr=subprocess.DEVNULL)
            _, idle_wall, idle, _ = run([self.program, "assess", self.folder / "empty.jsonl", "--batch", "--jobs", jobs])
            clock, processor = min(clock, wall - idle_wall), min(processor, taken - idle)
            peak = max(peak, memory)
        return self.count / max(clock, 1e-3), self.count / max(processor, 1e-3), peak

    def floor(self):
        out, _, _, memory = run([self.tools / "bench_floor", self.cases, max(1.0, self.seconds / 4)])
        return float(out.split()[0]), memory

    def peer(self, name, command, tool=None, module=None):
        for needed, there in ((tool, shutil.which(tool or "")), (module, (MODULES / "node_modules" / (module or "")).exists())):
            if needed and not there:
                print(f"skipped: {name}: {needed} is not installed")
                return None
        said = self.folder / "said"
        out, _, _, memory = run([c if c != "OUT" else said for c in command])
        count, seconds = out.split()
        self.agree(name, said, int(count))
        return float(count) / float(seconds), memory, int(count)

    def agree(self, name, said, count):
        lines = said.read_text(encoding="utf-8").split("\n")[:count]
        with open(self.folder / "answers-1", encoding="utf-8") as answers:
            for number, (line, answer) in enumerate(zip(lines, answers), 1):
                theirs = {self.services[int(s)]: int(u) for s, u in (part.split(":") for part in line.split())}
                difference = differs(json.loads(answer), theirs)
                if difference:
                    self.differences += 1
                    if self.differences < 10:
                        print(f"{name} differs on line {number}: {difference}")


def differs(answer, theirs):
    """Why a two-valued peer, to whom what is not known is no, may not say this; empty when it may."""
    listed = {r["service"]: r for r in answer["referrals"]}
    for service, urgency in theirs.items():
        ours = listed.get(service)
        if ours is None:
            return f"{service}: only the peer suggests it"
        if ours["verdict"] == "unsettled":
            if ours["if_rest_normal"] == "not-suggested":
                return f"{service}: only the peer suggests it when the rest is normal"
        else:
            low = URGENCIES.index(ours["urgency"])
            if not low <= urgency <= URGENCIES.index(ours.get("may_rise_to", ours["urgency"])):
                return f"{service}: urgency {urgency}, not {ours['urgency']}"
    for service, ours in listed.items():
        if service not in theirs and "suggested" in (ours["verdict"], ours.get("if_rest_normal")):
            return f"{service}: the peer does not suggest it"
    return ""


def table(bench, seconds):
    one_wall, one, peak = bench.batch(1)
    two_wall, two, peak_two = bench.batch(2)
    same = (bench.folder / "answers-1").read_bytes() == (bench.folder / "answers-2").read_bytes()
    floor, _ = bench.floor()
    p, c, js = bench.prepared, bench.cases, "node"
    peers = [
        ("index", "Node, inverted index", [js, HERE / "peer_index.mjs", p, c, "OUT", seconds], "node", None),
        ("duckdb", "DuckDB (npm), one thread",
         [js, HERE / "peer_duckdb.mjs", p, c, "OUT", 1, MODULES], "node", "@duckdb/node-api"),
        ("sets", "Python, sets", [sys.executable, "-B", HERE / "peer_sets.py", p, c, "OUT", seconds], None, None),
        ("clips", "CLIPS",
         [sys.executable, "-B", HERE / "peer_clips.py", p, c, "OUT", int(200 * max(1, seconds)), "clips"], "clips", None),
        ("rules", "json-rules-engine (npm)", [js, HERE / "peer_rules.mjs", p, c, "OUT", seconds, MODULES], "node", "json-rules-engine")]
    rows = [("asterism, 1 thread", one, peak, bench.count, "", None),
            ("asterism, 2 threads", two, peak_two, bench.count, "two", two_wall / one_wall),
            ("simdjson, reading only", floor, None, bench.count, "floor", one / floor)]
    for key, name, command, tool, module in peers:
        got = bench.peer(name, command, tool, module)
        if got:
            rows.append((name, got[0], got[1], got[2], key, one / got[0]))
    print(f"\n{bench.count:,} cases of {bench.size // bench.count} bytes\n")
    print(f"{'engine':28}{'cases/cpu s':>13}{'MB':>6}{'compared':>10}{'ratio':>9}  goal")
    for name, rate, memory, count, key, ratio in rows:
        goal, met = GOALS.get(key, ("", None))
        verdict = f"{goal}: {'met' if met(ratio) else 'not met'}" if met else ""
        print(f"{name:28}{rate:13,.0f}{'' if memory is None else f'{memory:.0f}':>6}{count:10,}"
              f"{'' if ratio is None else f'{ratio:.2f}':>9}  {verdict}")
    print("cpu s: processor time, since others use the machine too; ratio: two threads over one by the clock, one thread\n"
          "over simdjson, one thread over each peer")
    print(f"--jobs 1 and --jobs 2 wrote {'the same bytes' if same else 'DIFFERENT bytes'}")
    print(f"{bench.differences} differences between the peers and asterism")
    return 0 if same and bench.differences == 0 else 1


def main():
    tools, program, seconds = sys.argv[1], sys.argv[2], float(sys.argv[3])
    with tempfile.TemporaryDirectory() as folder:
        bench = Bench(tools, program, seconds, folder)
        bench.prepare()
        return table(bench, seconds)


if __name__ == "__main__":
    sys.exit(main())
