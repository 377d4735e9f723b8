#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""`assess --batch` on everything that goes wrong with files, pipes, disks and signals.

Each file below is judged with one thread and with three: the same bytes, an exit code of 0 or 3 and
never a signal; every line of output is JSON; each refused line is listed with its number and reason.
The small book beside this file starts at once; ASTERISM_SHIPPED_BOOK=1 judges by the shipped one.
"""
import gzip
import json
import os
import resource
import signal
import subprocess
import sys
import tempfile
import threading
import time
import unittest
import zlib
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "support"))
from instrumented import instrumented  # noqa: E402

PROGRAM = sys.argv.pop(1) if len(sys.argv) > 1 else "build/cli/asterism"
# The address sanitizer keeps up to 256 MiB of what was freed; the line is four times as long.
MOST_MEMORY = (512 if instrumented(PROGRAM) else 64) << 10
SMALL = Path(__file__).resolve().parent / "small"
SHIPPED = os.environ.get("ASTERISM_SHIPPED_BOOK", "0") != "0"
BOOK = [] if SHIPPED else ["--rulebook", str(SMALL / "rules"), "--ontology", str(SMALL / "ontology")]


def case(number, **more):
    return json.dumps({"case": f"c{number}", "findings": ["cleft palate"], **more}).encode()


GOOD = case(1)
LINES = [case(n) for n in range(1, 6)]
FIVE = b"\n".join(LINES) + b"\n"
CSV = b"case,findings\nc1,cleft palate\nc2,cleft palate\n"
LONG = b"case,finding,state\nc1,cleft palate,present\nc1,seizures,absent\nc2,cleft palate,\n"
LONG_DAYS = b"case,sex,examined-on,finding\nc1,female,2031-01-05,cleft palate\nc1,,,seizures\nc2,male,,\n"
MANY = b"\n".join(case(n) for n in range(20000)) + b"\n"
PACKED = gzip.compress(FIVE)


def with_line(bad, at=2):
    lines = LINES[:]
    lines[at - 1] = bad
    return b"\n".join(lines) + b"\n"


def long_line(size):
    return b'{"case":"big","findings":["' + b"x" * size + b'"]}'


# name: (bytes, suffix, good cases, [(refused line, code or None)], words on stderr or "")
FILES = {
    "five good lines": (FIVE, ".jsonl", 5, [], ""),
    "no line end at the end": (FIVE[:-1], ".jsonl", 5, [], ""),
    "empty file": (b"", ".jsonl", 0, [], ""),
    "only blank lines": (b"\n\n \t\n", ".jsonl", 0, [], ""),
    "blank lines between": (GOOD + b"\n\n\n" + case(2) + b"\n", ".jsonl", 2, [], ""),
    "CRLF": (FIVE.replace(b"\n", b"\r\n"), ".jsonl", 5, [], ""),
    "byte order mark": (b"\xef\xbb\xbf" + FIVE, ".jsonl", 5, [], ""),
    "torn last line": (FIVE + b'{"case":"c6","find', ".jsonl", 5, [(6, "json-syntax")], ""),
    "torn inside a text": (FIVE + b'{"case":"c6', ".jsonl", 5, [(6, "json-syntax")], ""),
    "torn inside a character": (FIVE + b'{"case":"\xc3', ".jsonl", 5, [(6, "not-utf8")], ""),
    "no JSON": (with_line(b"hello"), ".jsonl", 4, [(2, "json-syntax")], ""),
    "a list": (with_line(b"[1,2]"), ".jsonl", 4, [(2, None)], ""),
    "a number": (with_line(b"17"), ".jsonl", 4, [(2, None)], ""),
    "null": (with_line(b"null"), ".jsonl", 4, [(2, None)], ""),
    "an empty object": (with_line(b"{}"), ".jsonl", 5, [], ""),
    "two values on a line": (with_line(GOOD + GOOD), ".jsonl", 4, [(2, "json-syntax")], ""),
    "a trailing comma": (with_line(b'{"case":"c2",}'), ".jsonl", 4, [(2, "json-syntax")], ""),
    "a key twice": (with_line(b'{"case":"c2","case":"c3"}'), ".jsonl", 4, [(2, None)], ""),
    "an unknown key": (with_line(case(2, wieght="2 kg")), ".jsonl", 4, [(2, None)], "wieght"),
    "an unknown finding": (with_line(b'{"findings":["cleft palat"]}'), ".jsonl", 4, [(2, "unknown-finding")], "cleft palate"),
    "a contradiction": (with_line(case(2, absent=["cleft palate"])), ".jsonl", 4, [(2, "contradiction")], ""),
    "a wrong type": (with_line(case(2, sex=["female"])), ".jsonl", 4, [(2, None)], ""),
    "a huge number": (with_line(b'{"case":' + b"9" * 400 + b',"age":"1d"}'), ".jsonl", 4, [(2, "json-syntax")], ""),
    "a number too large": (with_line(case(2, measures={"weight": "1e999 g"})), ".jsonl", 4, [(2, None)], ""),
    "NUL in a line": (with_line(GOOD.replace(b"cleft", b"cl\0ft")), ".jsonl", 4, [(2, "nul-byte")], ""),
    "a line of NULs": (with_line(b"\0" * 100), ".jsonl", 4, [(2, "nul-byte")], ""),
    "an escaped NUL": (with_line(b'{"case":"a\\u0000b"}'), ".jsonl", None, None, ""),
    "bad UTF-8": (with_line(GOOD.replace(b"c1", b"c\xff")), ".jsonl", 4, [(2, "not-utf8")], ""),
    "overlong UTF-8": (with_line(GOOD.replace(b"c1", b"\xc0\xaf")), ".jsonl", 4, [(2, "not-utf8")], ""),
    "a lone surrogate": (with_line(b'{"case":"\\ud800"}'), ".jsonl", 4, [(2, None)], ""),
    "a control character": (with_line(b'{"case":"a\x01"}'), ".jsonl", 4, [(2, None)], ""),
    "terminal escapes": (with_line(b'{"findings":["\\u001b[2J"]}'), ".jsonl", 4, [(2, "unknown-finding")], ""),
    "deep nesting": (with_line(b'{"findings":' + b"[" * 50000 + b"]" * 50000 + b"}"), ".jsonl", 4, [(2, None)], ""),
    "a huge id": (with_line(b'{"case":"' + b"i" * 500000 + b'"}'), ".jsonl", 5, [], ""),
    "ids of escapes": (with_line(b'{"case":"\\"\\\\\\n\\u00e9"}'), ".jsonl", 5, [], ""),
    "the same id twice": (FIVE + FIVE, ".jsonl", 10, [], ""),
    "a line of 1 MiB and a bit": (with_line(long_line(1 << 20)), ".jsonl", 4, [(2, "too-long")], ""),
    "a long line first": (with_line(long_line(3 << 20), 1), ".jsonl", 4, [(1, "too-long")], ""),
    "a long line last, torn": (FIVE + long_line(3 << 20), ".jsonl", 5, [(6, "too-long")], ""),
    "two long lines": (FIVE + long_line(2 << 20) + b"\n" + long_line(2 << 20) + b"\n" + FIVE, ".jsonl", 10,
                       [(6, "too-long"), (7, "too-long")], ""),
    "only line feeds, many": (b"\n" * (3 << 20), ".jsonl", 0, [], ""),
    "every line bad": (b"x\n" * 500, ".jsonl", 0, [(n, "json-syntax") for n in range(1, 501)], ""),
    "a bad line far behind": (MANY + b"x\n" + MANY, ".jsonl", 40000, [(20001, "json-syntax")], ""),
    "gzip": (PACKED, ".jsonl.gz", 5, [], ""),
    "gzip without its name": (PACKED, ".jsonl", 5, [], ""),
    "gzip, two members": (PACKED + gzip.compress(case(6) + b"\n"), ".gz", 6, [], ""),
    "gzip, a line over two members": (gzip.compress(FIVE[:-20]) + gzip.compress(FIVE[-20:]), ".gz", 5, [], ""),
    "gzip, an empty member": (gzip.compress(b"") + PACKED, ".gz", 5, [], ""),
    "gzip cut short": (gzip.compress(MANY)[:-2000], ".gz", None, None, "ends too early"),
    "gzip cut in its last bytes": (PACKED[:-3], ".gz", None, None, "ends too early"),
    "gzip cut in its head": (PACKED[:5], ".gz", 0, None, "ends too early"),
    "gzip, a wrong sum": (PACKED[:-8] + b"\0\0\0\0" + PACKED[-4:], ".gz", None, None, "damaged"),
    "gzip, damaged inside": (gzip.compress(MANY)[:3000] + b"\xff" * 64 + gzip.compress(MANY)[3064:], ".gz", None, None, "damaged"),
    "gzip, rubbish behind": (PACKED + b"rubbish", ".gz", None, None, "damaged"),
    "gzip of gzip": (gzip.compress(PACKED), ".gz", 0, None, None),
    "zlib, not gzip": (zlib.compress(FIVE), ".jsonl", 0, None, None),
    "random bytes": (bytes((n * n * 31 + n // 7) % 256 for n in range(20000)), ".jsonl", None, None, None),
    "CSV": (CSV, ".csv", 2, [], ""),
    "CSV, gzip": (gzip.compress(CSV), ".csv.gz", 2, [], ""),
    "CSV, CRLF and BOM": (b"\xef\xbb\xbf" + CSV.replace(b"\n", b"\r\n"), ".csv", 2, [], ""),
    "CSV, quoted header behind a BOM": (b'\xef\xbb\xbf"case",findings\nc1,cleft palate\n', ".csv", 1, [], ""),
    "CSV, empty": (b"", ".csv", 0, None, "the file is empty"),
    "CSV, a header alone": (b"case,findings\n", ".csv", 0, None, "has no rows"),
    "CSV, an unknown column": (b"case,fidnings\nc1,x\n", ".csv", 0, None, "findings"),
    "CSV, a column twice": (b"case,case\nc1,c1\n", ".csv", 0, None, "named twice"),
    "CSV, a cell too many": (CSV + b"c3,seizures,x\nc4,seizures\n", ".csv", 3, [(4, "bad-csv")], ""),
    "CSV, a stray quote": (b'case,findings\nc1,cleft "palate\nc2,seizures\n', ".csv", 1, [(2, "bad-csv")], ""),
    "CSV, a quote left open": (CSV + b'c3,"seizures\nc4,seizures\n', ".csv", 3, [(4, "bad-csv")], ""),
    "CSV, a quote open for long": (CSV + b'c3,"' + b"seizures\n" * 20000, ".csv", None, None, ""),
    "CSV, a cell of many lines": (b'case,findings\n"a\nb\nc",seizures\n', ".csv", 1, [], ""),
    "CSV, a row of 2 MiB": (CSV + b"c3," + b"x" * (2 << 20) + b"\nc4,seizures\n", ".csv", 3, [(4, "bad-csv")], ""),
    "CSV, NUL": (CSV + b"c\0,seizures\n", ".csv", 2, [(4, "nul-byte")], ""),
    "CSV, bad UTF-8": (CSV + b"c\xff,seizures\n", ".csv", 2, [(4, "not-utf8")], ""),
    "CSV, torn": (CSV + b"c3", ".csv", 2, [(4, "bad-csv")], ""),
    "long form": (LONG, ".csv", 2, [], ""),
    "long form, rows apart": (LONG + b"c1,seizures,\n", ".csv", 2, [(5, "rows-apart")], ""),
    "long form, a state unknown": (LONG + b"c3,cleft palate,maybe\n", ".csv", 2, [(5, "unknown-state"), (5, "bad-csv")], ""),
    "long form, no case": (LONG + b",seizures,\n", ".csv", 2, [(5, "missing-case"), (5, "bad-csv")], ""),
    "long form, what is said of the baby": (LONG_DAYS, ".csv", 2, [], ""),
    "long form, rows disagree": (LONG_DAYS + b"c3,male,2031-01-05,\nc3,female,2031-01-05,seizures\n", ".csv", 2,
                                 [(5, "bad-csv"), (6, "rows-disagree")], "in an earlier row"),
    "long form, a day that is none": (LONG_DAYS + b"c3,male,2031-02-30,seizures\n", ".csv", 2, [(5, "bad-date")], ""),
    "long form, a state of no finding": (LONG + b"c3,,absent\n", ".csv", 2, [(5, "missing-finding"), (5, "bad-csv")], ""),
    "long form, a broken row": (LONG + b'c2,"x\n', ".csv", 1, [(4, "bad-csv"), (5, "bad-csv")], ""),
}


class Faults(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)

    def file(self, data, suffix=".jsonl"):
        path = self.folder / f"cases{suffix}"
        path.write_bytes(data)
        return str(path)

    def batch(self, *arguments, jobs=1, book=None, **keywords):
        return subprocess.run([PROGRAM, "assess", *arguments, *(BOOK if book is None else book), "--batch", "--jobs",
                               str(jobs)], capture_output=True, timeout=120, check=False, **keywords)

    def judge(self, path, jobs):
        rejects = self.folder / f"rejects-{jobs}"
        done = self.batch(path, "--rejects", str(rejects), jobs=jobs)
        self.assertIn(done.returncode, (0, 3), done.stderr[-500:])
        return done, rejects.read_bytes()

    def check(self, data, suffix, good, refused, words):
        path = self.file(data, suffix)
        done, rejects = self.judge(path, 1)
        other, other_rejects = self.judge(path, 3)
        self.assertEqual(done.stdout, other.stdout)
        self.assertEqual(rejects, other_rejects)
        self.assertEqual(done.returncode, other.returncode)
        answers = [json.loads(line) for line in done.stdout.splitlines()]
        records = [json.loads(line) for line in rejects.splitlines()]
        for answer in answers:
            self.assertIn("referrals", answer)
        for record in records:
            self.assertTrue(record["problems"] and all(p["message"] for p in record["problems"]))
        if good is not None:
            self.assertEqual(len(answers), good)
        if refused is not None:
            self.assertEqual([r["line"] for r in records], [line for line, _ in refused])
            for record, (_, code) in zip(records, refused):
                self.assertIn(code or record["problems"][0]["code"], [p["code"] for p in record["problems"]])
        stderr = done.stderr.decode()
        incomplete = "incomplete" in stderr
        self.assertEqual(done.returncode, 3 if records or incomplete else 0, stderr)
        if words and refused is None:
            self.assertIn(words, stderr)
            self.assertTrue(incomplete)
        elif words:
            self.assertIn(words, rejects.decode())
        elif words == "":
            self.assertFalse(incomplete, stderr)
        self.assertNotIn("\x1b", stderr)


def add_tests():
    for name, row in FILES.items():
        def test(self, row=row):
            self.check(*row)
        setattr(Faults, "test_file_" + "".join(c if c.isalnum() else "_" for c in name), test)


class Streams(Faults):
    """What goes wrong around the files."""

    def test_a_line_of_a_gigabyte_in_bounded_memory(self):
        size = 1 << 30
        program = subprocess.Popen([PROGRAM, "assess", "-", *BOOK, "--batch", "--jobs", "2"], stdin=subprocess.PIPE,
                                   stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        piece = b"x" * (1 << 20)
        program.stdin.write(GOOD + b"\n")
        for _ in range(size // len(piece)):
            program.stdin.write(piece)
        status = Path(f"/proc/{program.pid}/status").read_text().split()
        peak = int(status[status.index("VmHWM:") + 1])
        out, err = program.communicate(b"\n" + case(2) + b"\n", timeout=60)
        self.assertEqual(program.returncode, 3, err)
        self.assertEqual([json.loads(line)["case"] for line in out.splitlines()], ["c1", "c2"])
        self.assertIn(b"<stdin>:2:", err)
        self.assertLess(peak, MOST_MEMORY, "KiB")

    def test_a_full_disk(self):
        with open("/dev/full", "wb") as full:
            done = subprocess.run([PROGRAM, "assess", self.file(FIVE), *BOOK, "--batch"], stdout=full,
                                  stderr=subprocess.PIPE, check=False)
        self.assertEqual(done.returncode, 1)
        self.assertIn(b"No space left", done.stderr)
        self.assertIn(b"incomplete", done.stderr)

    def test_a_full_disk_for_the_rejects(self):
        done = self.batch(self.file(with_line(b"x")), "--rejects", "/dev/full")
        self.assertEqual(done.returncode, 1)
        self.assertIn(b"/dev/full cannot be written: No space left", done.stderr)

    def test_a_file_size_limit(self):
        def limit():
            signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
            resource.setrlimit(resource.RLIMIT_FSIZE, (1 << 16, 1 << 16))
        path = self.file(MANY)
        with open(self.folder / "out", "wb") as out:
            done = subprocess.run([PROGRAM, "assess", path, *BOOK, "--batch"], stdout=out, stderr=subprocess.PIPE,
                                  preexec_fn=limit, check=False)
        self.assertEqual(done.returncode, 1)
        self.assertIn(b"incomplete", done.stderr)

    def closed_pipe(self, **keywords):
        program = subprocess.Popen([PROGRAM, "assess", self.file(MANY * 5), *BOOK, "--batch", "--jobs", "2"],
                                   stdout=subprocess.PIPE, stderr=subprocess.PIPE, **keywords)
        program.stdout.read(100)
        program.stdout.close()
        err = program.stderr.read()
        program.stderr.close()
        return program.wait(timeout=60), err

    def test_a_closed_pipe(self):
        """As other programs do, it ends by SIGPIPE without a word."""
        self.assertEqual(self.closed_pipe(), (-signal.SIGPIPE, b""))

    def test_a_closed_pipe_whose_signal_is_ignored(self):
        code, err = self.closed_pipe(restore_signals=False,
                                     preexec_fn=lambda: signal.signal(signal.SIGPIPE, signal.SIG_IGN))
        self.assertEqual(code, 1)
        self.assertIn(b"incomplete", err)

    def test_no_standard_output(self):
        done = subprocess.run(["/bin/sh", "-c", 'exec "$0" assess "$@" --batch >&-', PROGRAM, self.file(FIVE), *BOOK],
                              capture_output=True, check=False)
        self.assertEqual(done.returncode, 1, done.stderr)

    def test_files_that_cannot_be_opened(self):
        good = self.file(FIVE)
        for arguments in ((str(self.folder / "none.jsonl"),), (str(self.folder),),
                          (good, "--rejects", str(self.folder / "no" / "rejects")),
                          (good, "--rejects", str(self.folder))):
            done = self.batch(*arguments)
            self.assertEqual(done.returncode, 3, arguments)
            self.assertEqual(done.stdout, b"")
            self.assertIn(arguments[-1].encode(), done.stderr)

    @unittest.skipIf(os.geteuid() == 0, "root reads everything")
    def test_an_unreadable_file(self):
        path = self.file(FIVE)
        os.chmod(path, 0)
        done = self.batch(path)
        self.assertEqual((done.returncode, done.stdout), (3, b""))
        self.assertIn(b"Permission denied", done.stderr)

    def test_a_directory_reads_as_an_error(self):
        done = self.batch(str(self.folder))
        self.assertIn(b"Is a directory", done.stderr)

    def test_files_are_not_mixed_up(self):
        path = self.file(with_line(b"x"))
        for arguments in ((path, "--rejects", path), (path, "--rejects", "-")):
            self.assertEqual(self.batch(*arguments).returncode, 2, arguments)
        with open(path, "ab") as out:
            done = subprocess.run([PROGRAM, "assess", path, *BOOK, "--batch"], stdout=out, stderr=subprocess.PIPE,
                                  check=False)
        self.assertEqual(done.returncode, 2)
        self.assertEqual(Path(path).read_bytes(), with_line(b"x"))

    def test_options_that_do_not_fit_are_refused(self):
        path = self.file(FIVE)
        for arguments in ((path, path), (), (path, "--jobs", "0"), (path, "--jobs", "1000"), (path, "--jobs", "x"),
                          (path, "--input", "fhir"), (path, "--input", "yaml"), (path, "--hpo", "hp.obo"),
                          (path, "--finding", "seizures"), (path, "--why", "x"), (path, "--format", "text"),
                          (path, "--detail", "x")):
            done = subprocess.run([PROGRAM, "assess", *arguments, "--batch"], capture_output=True, check=False)
            self.assertEqual(done.returncode, 2, (arguments, done.stderr))
            self.assertEqual(done.stdout, b"")

    def test_input_names_the_format(self):
        path = self.file(CSV, ".txt")
        self.assertEqual(len(self.batch(path, "--input", "csv").stdout.splitlines()), 2)
        done = self.batch(path, "--input", "jsonl")
        self.assertEqual((done.returncode, done.stdout), (3, b""))

    def test_as_of_is_honoured(self):
        path = self.file(FIVE)
        done = self.batch(path, "--as-of", "1999-01-01", book=[])
        self.assertEqual((done.returncode, done.stdout), (3, b""))
        self.assertIn(b"no-book-in-force", done.stderr)
        single = subprocess.run([PROGRAM, "assess", "--finding", "cleft palate", "--format", "json", "--as-of",
                                 "2027-01-01"], capture_output=True, check=True)
        old = self.batch(path, "--as-of", "2027-01-01", "--detail", "full", book=[])
        self.assertEqual(old.returncode, 0, old.stderr)
        self.assertEqual(json.loads(old.stdout.splitlines()[0])["rulebook"], json.loads(single.stdout)["rulebook"])

    def test_an_interrupt_leaves_whole_lines(self):
        for number in (signal.SIGINT, signal.SIGTERM):
            for jobs in ("1", "2", "2", "4"):
                self.interrupt(number, jobs)

    def interrupt(self, number, jobs):
        program = subprocess.Popen([PROGRAM, "assess", "-", *BOOK, "--batch", "--jobs", jobs], stdin=subprocess.PIPE,
                                   stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        got = []
        reader = threading.Thread(target=lambda: got.append(program.stdout.read()))
        reader.start()
        for _ in range(3):
            program.stdin.write(MANY)
        program.stdin.write(b'{"case":"not wh')  # the stream stays open in the middle of a line
        program.stdin.flush()
        time.sleep(0.3)
        program.send_signal(number)
        try:
            code = program.wait(timeout=60)
        finally:
            program.kill()
        err = program.stderr.read()
        reader.join()
        for stream in (program.stdin, program.stdout, program.stderr):
            stream.close()
        self.assertEqual(code, 130, err)
        self.assertIn(b"interrupted: the result is incomplete", err)
        self.assertTrue(got[0].endswith(b"\n"))
        cases = [json.loads(line)["case"] for line in got[0].splitlines()]
        self.assertEqual(cases, [f"c{n}" for n in range(20000)] * (len(cases) // 20000) +
                         [f"c{n}" for n in range(len(cases) % 20000)])

    def test_slow_input_is_no_end(self):
        program = subprocess.Popen([PROGRAM, "assess", "-", *BOOK, "--batch"], stdin=subprocess.PIPE, stdout=subprocess.PIPE)
        for part in (FIVE[:30], FIVE[30:31], FIVE[31:]):
            program.stdin.write(part)
            program.stdin.flush()
            time.sleep(0.05)
        out, _ = program.communicate(timeout=60)
        self.assertEqual((program.returncode, len(out.splitlines())), (0, 5))

    def test_many_refused_lines_are_not_all_printed(self):
        done = self.batch(self.file(b"x\n" * 5000))
        self.assertEqual(done.returncode, 3)
        self.assertLess(len(done.stderr.splitlines()), 40)
        self.assertIn(b"--rejects FILE for the whole list", done.stderr)

    def test_a_red_flag_in_a_refused_line_is_not_lost(self):
        line = b'{"case":"c2","findings":["seizures","low-set eers"]}'
        rejects = self.folder / "rejects"
        done = self.batch(self.file(with_line(line)), "--rejects", str(rejects))
        self.assertIn(b"red flag", done.stderr)
        self.assertTrue(json.loads(rejects.read_bytes())["recognised_red_flags"])

    def test_full_detail_says_what_assess_says(self):
        done = self.batch(self.file(GOOD + b"\n"), "--detail", "full", jobs=2)
        single = subprocess.run([PROGRAM, "assess", self.file(GOOD, ".json"), *BOOK, "--format", "json"],
                                capture_output=True, check=True)
        answer, expected = json.loads(done.stdout), json.loads(single.stdout)
        self.assertEqual(answer["referrals"], expected["referrals"])
        self.assertEqual(answer["rulebook"], expected["rulebook"])


add_tests()
Streams.check = None  # it inherits helpers only
for inherited in [n for n in dir(Faults) if n.startswith("test_file_")]:
    setattr(Streams, inherited, None)

if __name__ == "__main__":
    unittest.main(verbosity=1)
