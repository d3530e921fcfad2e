#!/usr/bin/env python3
"""Puts single faults into the code between laws and verdicts, one at a time, and says which the tests catch.

Each fault is one changed place; the tests named with it are built and run against a copy of the headers that has it. A
fault that no test catches exits with 1. Not part of the ordinary run: it takes half a minute a fault.

    python3 tests/faults/middle.py            # all
    python3 tests/faults/middle.py shared     # those whose name contains the word
"""
import pathlib
import shutil
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parents[2]

# name, header below include/weldloop, was, became, tests below tests/ (without _test.cpp)
FAULTS = [
    ("shared face: the worse one", "circuit/loop_network.hpp",
     "std::max(back.face, front.face)", "std::min(back.face, front.face)", ["circuit/loop_march"]),
    ("peak of a place: its mean", "circuit/loop_body.hpp",
     "peak = at(found.peak[p.node])", "peak = at(found.mean[p.node])", ["circuit/loop_march"]),
    ("swing of a lead: a tenth less", "circuit/lead_cells.hpp",
     "metre.metal.value() * p.metal_left", "1.1 * metre.metal.value() * p.metal_left", ["circuit/loop_march"]),
    ("gas through a torch: 12 l/min", "circuit/head_cooling.hpp",
     "0.008 / 60.0", "0.012 / 60.0", ["circuit/loop_march"]),
    ("draw-down of a damaged length: its whole length", "circuit/cable_heating.hpp",
     "0.5 * lead.damaged_length.value()", "1.0 * lead.damaged_length.value()", ["circuit/loop"]),
    ("close to a limit from 0.95", "rating/part_verdict.hpp",
     "close_share = 0.9;", "close_share = 0.95;", ["rating/part_verdict"]),
    ("close to a limit: never said", "rating/part_verdict.hpp",
     "if (deciding->used > close_share)", "if (deciding->used > 1e9)", ["rating/part_verdict"]),
    ("may exceed from one case in ten", "rating/part_verdict.hpp",
     "may_exceed_share = 0.05;", "may_exceed_share = 0.10;", ["rating/part_verdict"]),
    ("high end of the total: the low one", "rating/assess_body.hpp",
     "drop.quantile(high)", "drop.quantile(low)", ["rating/part_verdict"]),
    ("air above a limit: nothing used", "rating/part_verdict.hpp",
     "past_any_limit = 100.0;", "past_any_limit = 0.0;", ["rating/part_verdict"]),
    ("spots yield from 1.5 times the softening drop", "rating/part_verdict.hpp",
     "if (usual.softening_used > 1.0)", "if (usual.softening_used > 1.5)", ["rating/part_verdict"]),
    ("pull above the least value", "rating/joint/termination_acceptance.hpp",
     "pulled >= least,", "pulled > least,", ["rating/termination_acceptance"]),
    ("density of a reading with one spread", "field/diagnose_body.hpp",
     "2.0 / (below + above)", "1.0 / sigma", ["field/diagnose"]),
    ("clamp between two of its family: the larger", "part/work_clamp.hpp",
     "return x + share * (y - x);", "return y + 0.0 * (x + share);", ["part/work_clamp"]),
    ("lower bound of the first hour: not widened", "law/stress_relaxation.hpp",
     "in_all(fast_stress, slow_stress, fast_kelvin, slow_kelvin, fast_decades, slow_decades)",
     "in_all(fast_stress, slow_stress, fast_kelvin, slow_kelvin, 1e9, slow_decades)", ["law/stress_relaxation"]),
    ("cycles counted from 2", "law/joint_ageing.hpp",
     "std::log10(1.0 + cycles)", "std::log10(2.0 + cycles)", ["law/joint_ageing"]),
    ("scatter bent the other way", "circuit/loop_scatter.hpp",
     "(over > 1.0 ? over - 1.0 : 1.0 - 1.0 / over)", "-(over > 1.0 ? over - 1.0 : 1.0 - 1.0 / over)",
     ["circuit/loop_scatter"]),
    ("neck of a head twice as long", "circuit/head_cooling.hpp",
     "in_si<length>(0.15)", "in_si<length>(0.30)", ["circuit/loop_march"]),
    ("half of the contact's heat to the work: all of it to the jaws", "circuit/clamp_nodes.hpp",
     ".share = each_side,\n                 .also_to", ".share = 1.0,\n                 .also_to",
     ["circuit/loop_march"]),
]


def caught(header, was, became, tests):
    """Whether some of the tests fails, or does not compile, with the fault."""
    with tempfile.TemporaryDirectory() as folder:
        include = pathlib.Path(folder) / "include"
        shutil.copytree(ROOT / "include", include)
        path = include / "weldloop" / header
        text = path.read_text()
        if text.count(was) != 1:
            sys.exit(f"{header}: {text.count(was)} places hold {was!r}, one is wanted")
        path.write_text(text.replace(was, became))
        for test in tests:
            program = pathlib.Path(folder) / "program"
            made = subprocess.run(
                ["g++", "-std=c++20", "-O1", f'-DWELDLOOP_TEST_DATA="{ROOT}/tests/reference"', f"-I{include}",
                 f"-I{ROOT}/tests", str(ROOT / "tests" / f"{test}_test.cpp"), "-lgmock_main", "-lgmock", "-lgtest",
                 "-lpthread", "-o", str(program)], capture_output=True, text=True)
            if made.returncode != 0:
                sys.exit(f"{test} does not compile with the fault:\n{made.stderr[:2000]}")
            if subprocess.run([str(program)], capture_output=True).returncode != 0:
                return True
    return False


def main():
    word = sys.argv[1] if len(sys.argv) > 1 else ""
    chosen = [f for f in FAULTS if word in f[0]]
    missed = []
    for name, header, was, became, tests in chosen:
        found = caught(header, was, became, tests)
        print(f"{'caught' if found else 'MISSED'}: {header}: {name}", flush=True)
        if not found:
            missed.append(name)
    print(f"{len(chosen) - len(missed)} of {len(chosen)} faults caught")
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
