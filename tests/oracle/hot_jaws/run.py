#!/usr/bin/env python3
"""Solves every case of the deck beside this script with gmsh and getdp.
    run.py FILE        writes the results to FILE, as outputs.csv is kept
    run.py --check     solves again and compares with outputs.csv: every rise and heat within 0.5 %
"""
import csv, os, shutil, subprocess, sys, tempfile

here = os.path.dirname(os.path.abspath(__file__))
HALF = 0.5  # of the jaw: the deck is one side of its mirror
PAD = 0.01095  # m, side of the pad of 120 mm2
# gap mm, W/K of the pad of one jaw, W/(m2 K) across the air beside it, W/K of the rest of the clamp by one jaw, K of the work
CASES = [(gap, pad, air, rest, 230.0) for gap, air in ((0.5, 80.0), (1.5, 32.0), (3.0, 20.0))
         for pad in (0.05, 0.09, 0.2) for rest in (0.05, 0.15)]
COLUMNS = ["gap_mm", "pad_W_K", "air_W_m2K", "rest_W_K", "work_K"]


def numbers(settings):
    return [word for k, v in settings.items() for word in ("-setnumber", k, repr(float(v)))]


def last(name):
    return float(open(name).read().split()[-1])


def solve(case, fine):
    gap, pad, air, rest, hot = case
    gap *= 1e-3
    subprocess.run(["gmsh", "-3", "-format", "msh22", "-v", "1", *numbers({"Gap": gap, "Pad": PAD, "Fine": fine}),
                    os.path.join(here, "jaw.geo"), "-o", "m.msh"], check=True, stdout=subprocess.DEVNULL)
    run = lambda more, *words: subprocess.run(["getdp", "heat.pro", "-msh", "m.msh", "-v", "1", *numbers(more), *words],
                                              check=True, stdout=subprocess.DEVNULL)
    run({}, "-solve", "R", "-pos", "sizes")
    run({"Hot": hot, "PadK": pad * gap / PAD**2, "AirK": air * gap, "Rest": HALF * rest, "EndFace": last("size.txt")},
        "-solve", "R", "-pos", "out")
    jaw, taken, lost = last("jaw.txt") / last("volume.txt"), last("taken.txt") / HALF, last("lost.txt") / HALF
    return [f"{jaw:.5g}", f"{taken:.5g}", f"{lost / taken - 1.0:.2g}"]


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    work = tempfile.mkdtemp()
    shutil.copy(os.path.join(here, "heat.pro"), work)
    os.chdir(work)
    try:
        rows = [[*case, "usual", *solve(case, 0.0015)] for case in CASES]
        rows.append([*CASES[8], "fine", *solve(CASES[8], 0.001)])  # what the mesh leaves
    finally:
        os.chdir(here)
        shutil.rmtree(work)
    out = [[str(x) for x in row] for row in rows]
    if sys.argv[1] != "--check":
        with open(sys.argv[1], "w", newline="") as f:
            csv.writer(f, lineterminator="\n").writerows([[*COLUMNS, "mesh", "jaw_K", "heat_W", "energy"], *out])
        return
    with open("outputs.csv") as f:
        kept = {tuple(r[:6]): r for r in csv.reader(f)}
    bad = 0
    for row in out:
        old = kept[tuple(row[:6])]
        if max(abs(float(row[i]) / float(old[i]) - 1.0) for i in (6, 7)) > 0.005:
            print("differs:", row, "was", old)
            bad = 1
    print(len(out), "cases solved again")
    sys.exit(bad)


main()
