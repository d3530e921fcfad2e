#!/usr/bin/env python3
"""Puts single faults into the library, one at a time, and says which the tests catch.

Each fault of faults.py is one changed place; the tests named with it are built and run against a copy of the headers that
has it. A fault that no test catches, and that faults.py does not explain, is named again at the end, and the exit status is 1. Not part of the ordinary run: it
takes 10 s to a minute a fault.

    python3 tests/mutation/run.py                  # all
    python3 tests/mutation/run.py shared law/      # those whose name or header contains one of the words
    python3 tests/mutation/run.py --check          # only whether each fault still has its one place, and its tests
"""
import pathlib
import shutil
import subprocess
import sys
import tempfile

from faults import EXPLAINED, FAULTS

ROOT = pathlib.Path(__file__).resolve().parents[2]
FLAGS = ["-std=c++20", "-O1", f'-DWELDLOOP_TEST_DATA="{ROOT}/tests/reference"',
         f'-DWELDLOOP_INCLUDE_DIR="{ROOT}/include"', "-DTOML_HEADER_ONLY=1"]


def faulty(text, header, was, became):
    """The text with the fault in its one place."""
    if text.count(was) != 1:
        sys.exit(f"{header}: {text.count(was)} places hold {was!r}, one is wanted")
    return text.replace(was, became)


def check(faults):
    """Whether the table still fits the headers."""
    for _, header, was, became, tests in faults:
        faulty((ROOT / "include/weldloop" / header).read_text(), header, was, became)
        for test in tests:
            if not (ROOT / "tests" / f"{test}_test.cpp").exists():
                sys.exit(f"{header}: there is no tests/{test}_test.cpp")
    names = [name for name, *_ in faults]
    if len(set(names)) != len(names):
        sys.exit("two faults of one name")
    if unknown := EXPLAINED.keys() - set(names):
        sys.exit(f"explained, but no fault: {unknown}")


class Bench:
    """A copy of the headers, and what all tests include compiled once: nothing of the library."""

    def __init__(self, folder):
        self.folder = pathlib.Path(folder)
        self.include = self.folder / "include"
        shutil.copytree(ROOT / "include", self.include)
        lines = (ROOT / "tests/support/pch.hpp").read_text().splitlines()
        (self.folder / "pch.hpp").write_text("\n".join(line for line in lines if "weldloop" not in line) + "\n")
        subprocess.run(["g++", *FLAGS, "-w", "-x", "c++-header", str(self.folder / "pch.hpp")], check=True)

    def fails(self, test):
        """Whether a test fails as the headers are now."""
        program = self.folder / "program"
        made = subprocess.run(
            ["g++", *FLAGS, "-include", str(self.folder / "pch.hpp"), f"-I{self.include}", f"-I{ROOT}/tests",
             str(ROOT / "tests" / f"{test}_test.cpp"), "-lgmock_main", "-lgmock", "-lgtest", "-lpthread", "-o",
             str(program)], capture_output=True, text=True)
        if made.returncode != 0:
            # a constant expression that a test asserts is a test too
            if "static assertion failed" in made.stderr:
                return True
            sys.exit(f"{test} does not compile with the fault:\n{made.stderr[:2000]}")
        try:
            return subprocess.run([str(program)], capture_output=True, timeout=600).returncode != 0
        except subprocess.TimeoutExpired:
            return True

    def caught(self, header, was, became, tests):
        """Whether some of the tests fails with the fault."""
        path = self.include / "weldloop" / header
        sound = path.read_text()
        path.write_text(faulty(sound, header, was, became))
        try:
            return any(self.fails(test) for test in tests)
        finally:
            path.write_text(sound)


def main():
    words = sys.argv[1:]
    check(FAULTS)
    if words == ["--check"]:
        print(f"{len(FAULTS)} faults, each has its place")
        return 0
    chosen = [f for f in FAULTS if not words or any(word in f[0] or word in f[1] for word in words)]
    missed, counts = [], {}
    with tempfile.TemporaryDirectory() as folder:
        bench = Bench(folder)
        for name, header, was, became, tests in chosen:
            found = bench.caught(header, was, became, tests)
            said = "caught" if found else "explained" if name in EXPLAINED else "MISSED"
            print(f"{said}: {header}: {name}", flush=True)
            counts[said] = counts.get(said, 0) + 1
            if said == "MISSED":
                missed.append(name)
    print(f"of {len(chosen)} faults " + ", ".join(f"{n} {said}" for said, n in sorted(counts.items())))
    for name in missed:
        print(f"not caught: {name}")
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
