#!/usr/bin/env python3
"""Puts single faults into the library, one at a time, and says which the tests catch.

Each fault of faults.py is one changed place; the tests named with it are built and run against a copy of the headers that
has it. Faults that are whole expressions are built into one program for each test, all at once, and switched on one by
one when it runs; without any of them it must pass. The others cost a build each. What was found is kept in results.md,
one row for each fault. A fault that no test catches, and that faults.py does not explain, is named again at the end, and
the exit status is 1. Not part of the ordinary run: it takes an hour or two.

    python3 tests/mutation/run.py                  # all
    python3 tests/mutation/run.py shared law/      # those whose name or header contains one of the words
    python3 tests/mutation/run.py --new            # those that results.md does not know as they stand
    python3 tests/mutation/run.py --check          # only whether each fault still has its one place, and its tests
"""
import datetime
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import zlib

from faults import EXPLAINED, FAULTS

ROOT = pathlib.Path(__file__).resolve().parents[2]
RESULTS = ROOT / "tests/mutation/results.md"
FLAGS = ["-std=c++20", "-O0", "-w", f'-DWELDLOOP_TEST_DATA="{ROOT}/tests/reference"',
         f'-DWELDLOOP_INCLUDE_DIR="{ROOT}/include"', "-DTOML_HEADER_ONLY=1"]
LONGEST_RUN = 600  # s, on a busy machine

# What the switched faults ask: which one is on. In a constant expression none is.
SWITCH = """#pragma once
#include <cstdlib>
#include <type_traits>
namespace seeded_fault {
inline int chosen()
{
    static const int found = [] {
        const char* word = std::getenv("WELDLOOP_FAULT");
        return word == nullptr ? -1 : std::atoi(word);
    }();
    return found;
}
constexpr bool on(int which) { return !std::is_constant_evaluated() && chosen() == which; }
}
"""


def text_of(header):
    return (ROOT / "include/weldloop" / header).read_text()


def top_level(expression):
    """The expression without what stands in brackets or quotes, or None if they do not match."""
    out, depth = [], 0
    for c in re.sub(r'"(\\.|[^"\\])*"', '""', expression).replace("->", ".."):
        if c in "([{":
            depth += 1
        elif c in ")]}":
            depth -= 1
            if depth < 0:
                return None
        elif depth == 0:
            out.append(c)
    return "".join(out) if depth == 0 else None


def is_switchable(text, was, became):
    """Whether the fault exchanges one whole expression, in a function, for another."""
    at = text.index(was)
    before, after = text[:at].rstrip(), text[at + len(was):].lstrip()
    line = text[text.rfind("\n", 0, at) + 1:at]
    tops = [top_level(x) for x in (was, became)]
    if None in tops or any(re.search(r"[;,]|[^=<>!]=[^=]|\breturn\b|::$|^\s*\.", t) for t in tops):
        return False
    if "constexpr" in line or line[:1] not in (" ", "") or re.match(r"    (static|inline|using)\b", line):
        return False
    if re.search(r"[<>]$", was.strip()) or not re.match(r"[\w(!*\-]", was) or not before or not after:
        return False
    low = re.compile(r"[<>?&|!]|==")      # binds less than sums
    sums = re.compile(r"[+-]")
    loose = any(low.search(t.replace("<double>", "").replace("!", "", 1)) for t in tops)
    is_sum = any(sums.search(t) for t in tops)
    ends = {"(", ",", "?", ":", "{", "["}
    prev = before[-1]
    if prev in ends or before.endswith("return") or before.endswith("&&") or before.endswith("||") or \
            (prev == "=" and before[-2] not in "=<>!"):
        good = True
    elif prev in "+-" and before[-2] == " ":
        good = not loose and not is_sum
    else:
        good = False
    if prev == ":" and before.endswith("::"):
        good = False
    if after[0] in "),;:?}]" or after.startswith("&&") or after.startswith("||"):
        return good
    if after[0] in "*/":
        return good and not loose and not is_sum
    if after[0] in "+-" and after[1] == " ":
        return good and not loose
    return False


def with_fault(text, header, was, became):
    if text.count(was) != 1:
        sys.exit(f"{header}: {text.count(was)} places hold {was!r}, one is wanted")
    return text.replace(was, became)


def check(faults):
    """Whether the table still fits the headers."""
    wrong = []
    for name, header, was, became, tests in faults:
        count = text_of(header).count(was)
        if count != 1 or was == became:
            wrong.append(f"{name}: {header}: {count} places hold {was!r}, one is wanted")
        wrong += [f"{name}: there is no tests/{t}_test.cpp" for t in tests
                  if not (ROOT / "tests" / f"{t}_test.cpp").exists()]
    names = [name for name, *_ in faults]
    wrong += [f"two faults of the name {n}" for n in set(names) if names.count(n) > 1]
    wrong += [f"explained, but no fault: {n}" for n in EXPLAINED.keys() - set(names)]
    if wrong:
        sys.exit("\n".join(wrong))


def mark_of(fault):
    """Tells whether a fault of the results is the one that stands here."""
    return f"{zlib.crc32(repr(fault[1:4]).encode()):08x}"


class Results:
    """results.md: what was found of each fault, and when."""

    HEAD = """# Seeded faults

One row a fault, written by `tests/mutation/run.py`: what the tests said of it when it was last put into the library.
Explained ones are no faults, or cannot be told from none: why stands in `tests/mutation/faults.py`.

| header | fault | found | by | commit | date | mark |
|---|---|---|---|---|---|---|
"""

    def __init__(self):
        self.rows = {}
        if RESULTS.exists():
            for line in RESULTS.read_text().splitlines():
                cells = [c.strip() for c in line.strip("|").split(" | ")]
                if len(cells) == 7 and cells[0] not in ("header", "---"):
                    self.rows[cells[1]] = cells
        git = ["git", "-C", str(ROOT)]
        self.commit = subprocess.run([*git, "log", "-1", "--format=%h"], capture_output=True, text=True).stdout.strip()
        self.day = datetime.date.today().isoformat()

    def knows(self, fault):
        row = self.rows.get(fault[0])
        return row is not None and row[6] == mark_of(fault) and row[2] != "missed"

    def note(self, fault, said, by):
        self.rows[fault[0]] = [fault[1], fault[0], said, by, self.commit, self.day, mark_of(fault)]
        order = {f[0]: i for i, f in enumerate(FAULTS)}
        rows = sorted((r for r in self.rows.values() if r[1] in order), key=lambda r: order[r[1]])
        RESULTS.write_text(self.HEAD + "".join("| " + " | ".join(r) + " |\n" for r in rows))


class Bench:
    """Two copies of the headers: one for all switched faults at once, one for single ones."""

    def __init__(self, folder):
        self.folder = pathlib.Path(folder)
        (self.folder / "seeded_fault.hpp").write_text(SWITCH)
        self.lines = (ROOT / "tests/support/pch.hpp").read_text().splitlines() + ['#include "seeded_fault.hpp"']
        self.flags = []
        self.linked = []

    def compiled(self, *words):
        """None, or what the compiler said."""
        made = subprocess.run(["g++", *FLAGS, *self.flags, f"-I{self.include}", f"-I{self.folder}", f"-I{ROOT}/tests",
                               *words], capture_output=True, text=True)
        return None if made.returncode == 0 else made.stderr

    def copy(self, name, lines):
        """A copy of the headers, and a header that is compiled once."""
        self.include = self.folder / name
        shutil.rmtree(self.include, ignore_errors=True)
        shutil.copytree(ROOT / "include", self.include)
        self.pch = self.folder / f"{name}_pch.hpp"
        self.pch.write_text("\n".join(lines) + "\n")

    def single(self):
        """From now on faults stand alone: what all tests include is compiled once, nothing of the library."""
        self.flags, self.linked = [], []
        self.copy("single", [line for line in self.lines if "weldloop" not in line])
        if said := self.compiled("-x", "c++-header", str(self.pch)):
            sys.exit(said)

    def together(self, faults):
        """All the faults behind switches, the library compiled once with them. Returns those that were left out, as
        they are no whole expressions after all."""
        self.flags = ["-DWELDLOOP_BODIES_APART"]
        left_out = []
        while True:
            self.copy("switched", [*self.lines, "#include <weldloop/weldloop.hpp>"])
            self.put(faults, switched=True)
            said = self.compiled("-x", "c++-header", str(self.pch))
            self.linked = []
            for unit in ("bodies", "io_bodies"):
                made = self.folder / f"{unit}.o"
                said = said or self.compiled("-include", str(self.folder / "seeded_fault.hpp"), "-c", str(ROOT / f"cmake/{unit}.cpp"), "-o",
                                             str(made))
                self.linked.insert(0, str(made))
            if said is None:
                return left_out
            blamed = self.blamed(faults, said)
            if not blamed:
                sys.exit(said[:4000])
            left_out += blamed
            faults = [fault for fault in faults if fault not in blamed]

    def blamed(self, faults, said):
        """The switched faults in whose lines the compiler found errors."""
        places = set(re.findall(r"switched/weldloop/([\w/.]+):(\d+):\d+: error", said))
        out = []
        for fault in faults:
            number, (_, header, *_) = fault
            for name, line in places:
                lines = (self.include / "weldloop" / header).read_text().splitlines()
                near = "\n".join(lines[max(0, int(line) - 4):int(line) + 3])
                if name == header and f"::seeded_fault::on({number})" in near:
                    out.append(fault)
                    break
        return out

    def put(self, faults, switched):
        """Writes the headers with faults: all of them behind switches, or a single one as it is."""
        texts = {}
        for number, (_, header, was, became, _) in faults:
            text = texts.get(header) or text_of(header)
            new = f"(::seeded_fault::on({number}) ? ({became}) : ({was}))" if switched else became
            texts[header] = with_fault(text, header, was, new)
        for header, text in texts.items():
            (self.include / "weldloop" / header).write_text(text)

    def restore(self, fault):
        (self.include / "weldloop" / fault[1][1]).write_text(text_of(fault[1][1]))

    def build(self, test):
        return self.compiled("-include", str(self.pch), str(ROOT / "tests" / f"{test}_test.cpp"), *self.linked,
                             "-lgmock_main", "-lgmock", "-lgtest", "-lpthread", "-o", str(self.folder / "program"))

    def run(self, test, number=None):
        """The test that failed, or None."""
        environment = dict(os.environ, GTEST_FAIL_FAST="1")
        if number is not None:
            environment["WELDLOOP_FAULT"] = str(number)
        try:
            ran = subprocess.run([str(self.folder / "program")], capture_output=True, timeout=LONGEST_RUN,
                                 env=environment, cwd=self.folder)
        except subprocess.TimeoutExpired:
            return f"{test}: no end"
        if ran.returncode == 0:
            return None
        failed = re.findall(r"\[  FAILED  \] ([\w/]+\.[\w/]+)", ran.stdout.decode(errors="replace"))
        return f"{test}: {failed[0] if failed else 'ends at once'}"

    def caught_alone(self, fault):
        """Which test fails with the fault, which is built in by itself."""
        for test in fault[1][4]:
            self.put([fault], switched=False)
            said = self.build(test)
            self.restore(fault)
            if said is not None:
                # a constant expression that a test asserts is a test too
                if "static assertion failed" in said:
                    return f"{test}: static assertion"
                sys.exit(f"{test} does not compile with the fault {fault[1][0]}:\n{said[:2000]}")
            if by := self.run(test):
                return by
        return None


def search(bench, chosen, tell):
    """Puts all the chosen faults in, and tells of each which test caught it."""
    switched = [f for f in chosen if is_switchable(text_of(f[1][1]), f[1][2], f[1][3])]
    alone = [f for f in chosen if f not in switched]
    if switched:
        left_out = bench.together(switched)
        waiting = {}
        for fault in switched:
            (alone if fault in left_out else waiting.setdefault(fault[1][4][0], [])).append(fault)
        while waiting:
            test = next(iter(waiting))
            faults = waiting.pop(test)
            if (said := bench.build(test)) is not None:
                print(f"{test} is built singly: {re.findall('error: (.*)', said)[:1]}", flush=True)
                alone += faults
                continue
            if by := bench.run(test):
                sys.exit(f"fails without a fault: {by}")
            for fault in faults:
                tests = fault[1][4]
                if by := bench.run(test, fault[0]):
                    tell(fault[1], by)
                elif test != tests[-1]:
                    waiting.setdefault(tests[tests.index(test) + 1], []).append(fault)
                else:
                    alone.append(fault)  # where the compiler works the place out beforehand the switch is off
    if alone:
        bench.single()
    for fault in alone:
        tell(fault[1], bench.caught_alone(fault))


def main():
    words = sys.argv[1:]
    check(FAULTS)
    if words == ["--check"]:
        print(f"{len(FAULTS)} faults, each has its place")
        return 0
    results = Results()
    if words == ["--new"]:
        chosen = [f for f in enumerate(FAULTS) if not results.knows(f[1])]
    else:
        chosen = [f for f in enumerate(FAULTS) if not words or any(w in f[1][0] or w in f[1][1] for w in words)]
    missed, counts = [], {}

    def tell(fault, by):
        said = "caught" if by else "explained" if fault[0] in EXPLAINED else "missed"
        print(f"{said}: {fault[1]}: {fault[0]}" + (f" ({by})" if by else ""), flush=True)
        counts[said] = counts.get(said, 0) + 1
        if said == "missed":
            missed.append(fault[0])
        results.note(fault, said, by or "")

    with tempfile.TemporaryDirectory() as folder:
        search(Bench(folder), chosen, tell)
    print(f"of {len(chosen)} faults " + ", ".join(f"{n} {said}" for said, n in sorted(counts.items())))
    for name in missed:
        print(f"not caught: {name}")
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
