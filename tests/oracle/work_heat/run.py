#!/usr/bin/env python3
"""Solves every case of the decks beside this script with gmsh and getdp.
    run.py FILE        writes the results to FILE, as outputs.csv is kept
    run.py --check     solves again and compares with outputs.csv: every rise within 0.5 %
"""
import csv, os, shutil, subprocess, sys, tempfile

here = os.path.dirname(os.path.abspath(__file__))
HALF = 0.5  # of the piece, its weld and its clamp
# deck, distance mm, arc W into the work while it burns, s on, s period, s stay, W/(m2 K), W/K that the clamp takes
CASES = [("plate", a, 1600.0, 36, 60, 240, 10.0, g) for a in (40, 60, 80) for g in (0.0, 0.2, 0.5)]
CASES += [("plate", 60, 1600.0, 36, 60, 960, 10.0, 0.2)]
CASES += [("tube", a, 1500.0, 12, 60, 180, 10.0, g) for a in (50, 100) for g in (0.0, 0.2, 0.5)]
CASES += [("tube", 100, 1500.0, 12, 60, 900, 10.0, 0.2), ("tube", 200, 1500.0, 12, 60, 900, 10.0, 0.2)]
# at the ends of what the picture bears: a very short stay, hardly any heat there yet, a clamp that takes much for long
CASES += [("plate", 60, 1600.0, 36, 60, 60, 10.0, 0.5), ("tube", 50, 1500.0, 12, 60, 60, 10.0, 0.5),
          ("tube", 200, 1500.0, 12, 60, 180, 10.0, 0.2), ("plate", 60, 1600.0, 36, 60, 960, 10.0, 0.5)]
COLUMNS = ["deck", "away_mm", "arc_W", "on_s", "period_s", "stay_s", "h_W_m2K", "grip_W_K"]


def numbers(settings):
    return [word for k, v in settings.items() for word in ("-setnumber", k, repr(float(v)))]


def last(name):
    return float(open(name).read().split()[-1])


def solve(case, fine, step):
    deck, away, watts, on, period, stay, h, grip = case
    size = {"Fine": fine, "Coarse": 2 * fine}
    subprocess.run(["gmsh", "-3", "-format", "msh22", "-v", "1", *numbers({"Away": away * 1e-3, **size}),
                    os.path.join(here, deck + ".geo"), "-o", "m.msh"], check=True, stdout=subprocess.DEVNULL)
    given = {"H": h, "On": on, "Period": period, "Stay": stay, "Step": step, "Watts": HALF * watts, "Grip": HALF * grip}
    run = lambda more, *words: subprocess.run(
        ["getdp", "heat.pro", "-msh", "m.msh", "-v", "1",
         *numbers({**given, **more}), *words], check=True, stdout=subprocess.DEVNULL)
    run({"Stay": step}, "-solve", "R", "-pos", "sizes")
    run({"WeldFace": last("weld.txt"), "GripFace": last("size.txt")}, "-solve", "R", "-pos", "out")
    read = lambda name: [float(line.split()[1]) for line in open(name)]
    rise, stored, lost = read("grip.txt"), read("stored.txt"), read("lost.txt")
    mean = sum(a + b for a, b in zip(rise, rise[1:])) / 2 / (len(rise) - 1)
    share = sum(1 for i in range(int(stay / step)) if (i * step + step / 2) % period < on) * step / stay
    energy = (stored[-1] + step * sum(lost[1:])) / (HALF * watts * share * stay) - 1.0
    return [f"{mean:.5g}", f"{rise[-1]:.5g}", f"{max(rise):.5g}", f"{energy:.2g}", len(rise) - 1]


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    work = tempfile.mkdtemp()
    shutil.copy(os.path.join(here, "heat.pro"), work)
    os.chdir(work)
    try:
        rows = [[*case, *solve(case, 0.004, 1.5)] for case in CASES]
        # finer meshes and steps: what the others leave
        finer = [[*c, *solve(c, 0.003, 0.75)] for c in (CASES[4], CASES[14])]
    finally:
        os.chdir(here)
        shutil.rmtree(work)
    head = [*COLUMNS, "mean_K", "end_K", "peak_K", "energy", "steps"]
    out = [[str(x) for x in row] for row in rows + finer]
    if sys.argv[1] != "--check":
        with open(sys.argv[1], "w", newline="") as f:
            csv.writer(f, lineterminator="\n").writerows([head, *out])
        return
    with open("outputs.csv") as f:
        kept = {tuple(r[:8] + [r[12]]): r for r in csv.reader(f)}
    bad = 0
    for row in out:
        old = kept[tuple(row[:8] + [row[12]])]
        off = max(abs(float(row[i]) / float(old[i]) - 1.0) for i in (8, 9, 10))
        if off > 0.005:
            print("differs:", row, "was", old)
            bad = 1
    print(len(out), "cases solved again")
    sys.exit(bad)


main()
